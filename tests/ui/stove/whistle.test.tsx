// @vitest-environment happy-dom
import { type Signal, signal } from '@preact/signals'
import { describe, expect, it } from 'vitest'
import type { Kitchen, KitchenWhistle } from '../../../src/ui/kitchen.ts'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import type { FixtureKitchen } from './fixtures.ts'
import { atTheStove, call, type Journal, key, openWith, sent, settle, sheet, text } from './hands.tsx'
import * as made from './pots.ts'

atTheStove()

type Heard = KitchenWhistle['heard']['value']

async function stove(...journals: Journal[]): Promise<{
  kitchen: FixtureKitchen
  back: string[]
  whistle(kind: 'rise' | 'fall', beganAgoMs?: number): Promise<void>
}> {
  const heard = signal<Heard>(null)
  const back: string[] = []
  const kitchen = await openWith((each) => {
    const whistle = each.whistle as Signal<Kitchen['whistle']['value']>
    const ear = signal({ open: true, ok: true, say: 'Listening' })
    whistle.value = { ear, heard, sayBack: (words) => back.push(words), try: () => {} }
  }, journals)
  let no = 0
  return {
    kitchen,
    back,
    async whistle(kind, beganAgoMs = 0) {
      no += 1
      forgetTaps()
      heard.value = { no, kind, beganMs: Date.now() - beganAgoMs, semitones: 7, lengthMs: 500 }
      await settle()
    }
  }
}

const viaOf = (kitchen: FixtureKitchen): string | undefined =>
  kitchen.sent.filter(({ command }) => command.type !== 'ShowCaution').at(-1)?.via

describe('a whistle at the Stove', () => {
  it('rising does the act that calls, says it back, and is written down as a whistle', async () => {
    const { kitchen, back, whistle } = await stove(made.mossLate())
    await whistle('rise')
    expect(sent(kitchen)).toMatchObject([{ type: 'MarkDone' }])
    expect(viaOf(kitchen)).toBe('whistle')
    expect(back).toEqual([expect.stringMatching(/^Moss: /)])
  })

  it('falling does nothing but say it again', async () => {
    const { kitchen, whistle } = await stove(made.mossLate())
    let again = 0
    kitchen.sayAgain = () => {
      again += 1
    }
    await whistle('fall')
    expect([sent(kitchen), again]).toEqual([[], 1])
  })

  it('that began before the call stood does nothing', async () => {
    const { kitchen, whistle } = await stove(made.mossLate())
    await whistle('rise', 60_000)
    expect(sent(kitchen)).toEqual([])
  })

  it('where nothing calls writes nothing down, and says so', async () => {
    const { kitchen, back, whistle } = await stove(made.moss())
    await whistle('rise')
    expect(sent(kitchen)).toEqual([])
    expect(back).toEqual([expect.stringContaining('nothing calls')])
  })

  it('at the end turns the heat off once, asks what becomes of the bath, and does not end the pot', async () => {
    const { kitchen, whistle } = await stove(made.done())
    for (let times = 0; times < 6; times++) await whistle('rise')
    expect(text(sheet())).toMatch(/bath/i)
    expect(sent(kitchen).map(({ type }) => type)).toEqual(['ChangeHeat'])
  })

  it('brings up a call beside a pot that has hands in it, and does it with the next', async () => {
    const { kitchen, back, whistle } = await stove(made.mossLate(), made.plum())
    const shown = (): string | null => document.querySelector('.bath[data-shown]')?.getAttribute('aria-label') ?? null
    for (const no of ['1', '2']) if (shown() !== 'Plum') await key(no)
    expect(shown()).toBe('Plum')
    await whistle('rise')
    expect(sent(kitchen)).toEqual([])
    expect([shown(), back.length]).toEqual(['Moss', 1])
    await whistle('rise')
    expect(sent(kitchen)).toMatchObject([{ type: 'MarkDone' }])
    expect(viaOf(kitchen)).toBe('whistle')
  })

  it('moves among the answers of a question with falls, says each, and takes one with a rise', async () => {
    const { kitchen, back, whistle } = await stove(made.slateChooses())
    expect(text(call())).not.toBe('')
    await whistle('rise')
    expect(sent(kitchen)).toEqual([])
    await whistle('fall')
    expect(back).toHaveLength(2)
    const chosen = document.activeElement as HTMLElement
    expect(back.at(-1)).toBe(chosen.getAttribute('aria-label') ?? chosen.textContent)
    await whistle('rise')
    expect(sent(kitchen)).toHaveLength(1)
    expect(viaOf(kitchen)).toBe('whistle')
  })
})
