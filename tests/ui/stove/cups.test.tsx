// @vitest-environment happy-dom
// The bath beside cups of its start liquor, with a knuckle and with a foot.
import { render, screen, waitFor } from '@testing-library/preact'
import { describe, expect, it } from 'vitest'
import { AskPanel } from '../../../src/ui/screens/stove/ask/ask-panel.tsx'
import { fixtureKitchen, noon } from './fixtures.ts'
import { atTheStove, call, key, open, sent, settle, tap, text } from './hands.tsx'
import * as made from './pots.ts'

atTheStove()

const ladder = [100, 50, 25, 12, 6, 3, 0]
const cups = (...like: number[]) => ({ like, ladder })

async function besideCups(): Promise<Awaited<ReturnType<typeof open>>> {
  const kitchen = await open(made.slateAsks())
  await tap(/cups/)
  await screen.findByText('how to make them')
  await settle()
  return kitchen
}

describe('a bath beside cups', () => {
  it('is like one of them, and the hue of what is left is asked as ever', async () => {
    const kitchen = await besideCups()
    await tap('Like the cup of 12 %')
    expect(text(call())).toContain('tint. What hue is left?')
    await tap('green')
    expect(sent(kitchen)).toEqual([
      {
        type: 'AnswerStep',
        path: 'clear[1]/ask',
        answer: { kind: 'grade', grade: 'tint', hue: 'green', cups: cups(12) }
      }
    ])
  })

  it('lies between two of them, counts as the deeper, and like water asks no hue', async () => {
    const kitchen = await besideCups()
    await tap('between')
    await tap('Between 3 – 0 %')
    await tap('can’t tell')
    expect(sent(kitchen)).toMatchObject([{ answer: { grade: 'trace', hue: null, cups: cups(3, 0) } }])
  })

  it('like water is clear, with no hue to name', async () => {
    const kitchen = await besideCups()
    await tap('Like the cup of 0 % water')
    expect(sent(kitchen)).toMatchObject([{ answer: { grade: 'clear', hue: null, cups: cups(0) } }])
  })

  it('says how the cups are made, and goes back to them, to the eye, and to another cup', async () => {
    const kitchen = await besideCups()
    await tap('how to make them')
    expect(text(call())).toContain('Half a cup of it, filled up with water, is 50 %')
    await tap('Back to the cups')
    await tap('Like the cup of 50 %')
    await tap('other cup')
    await tap('by eye')
    await tap(/strong/)
    await tap('other grade')
    await tap(/clear/)
    expect(sent(kitchen)).toEqual([
      { type: 'AnswerStep', path: 'clear[1]/ask', answer: { kind: 'grade', grade: 'clear', hue: null } }
    ])
  })

  it('is answered by two pedals alone', async () => {
    const kitchen = await open(made.slateAsks())
    const on = async (words: RegExp): Promise<void> => {
      const now = (): string => document.activeElement?.getAttribute('aria-label') ?? text(document.activeElement)
      for (let i = 0; i < 20 && !words.test(now()); i++) await key('PageUp')
      await key('PageDown')
    }
    await on(/^cups/)
    await screen.findByText('how to make them')
    await on(/cup of 0 %/)
    await waitFor(() => expect(sent(kitchen)).toMatchObject([{ answer: { grade: 'clear', cups: cups(0) } }]))
  })
})

it.each([
  ['bath', 1],
  ['bath in J1', 1],
  ['rinse', 0]
])('only what began as a dyebath stands beside cups: %s', (of, pads) => {
  const kitchen = fixtureKitchen([], noon)
  render(
    <AskPanel
      question={{ kind: 'grade', of, enough: null }}
      expectedC={20}
      settings={kitchen.settings.value}
      look="plain"
      layoutKey="one"
      onAnswer={() => undefined}
    />
  )
  expect(screen.getAllByRole('button').filter((pad) => text(pad).startsWith('cups'))).toHaveLength(pads)
})
