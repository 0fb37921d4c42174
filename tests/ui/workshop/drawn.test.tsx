// @vitest-environment happy-dom
// What a letter draws, counted and not timed: every part that is gone through, drawn anew or looked at, is one.
import { cleanup, screen, waitFor } from '@testing-library/preact'
import { options } from 'preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { area, open, type, wide } from './opened.tsx'

const many = (count: number, line: (no: number) => string): string =>
  Array.from({ length: count }, (_, i) => line(i)).join('')
/** As many materials as steps: what is to be set out grows too. */
const ofSteps = (count: number): string =>
  `# mine\nstrandline: 1\ntitle: Mine\nmaterials:\n${many(count, (no) => `  m${no}: powder\n`)}steps:\n${many(count, (no) => `  - add: ${no + 1} g of m${no}\n`)}`

beforeEach(() => {
  forgetTaps()
  wide(1280)
})
afterEach(cleanup)

/** How many while something is done, until it shows. */
async function partsDrawn(act: () => void, shows: (parts: number) => void): Promise<number> {
  const before = options.diffed
  let parts = 0
  options.diffed = (node) => {
    parts++
    before?.(node)
  }
  try {
    act()
    await waitFor(() => shows(parts))
  } finally {
    options.diffed = before
  }
  return parts
}

const clock = async (): Promise<string> => (await screen.findByText('On the clock')).parentElement?.textContent ?? ''
const some = (parts: number): void => expect(parts).toBeGreaterThan(0)

/** By a letter typed into a protocol that was worked out: nothing else is left to be drawn. */
async function byLetter(text: string, after: string): Promise<number> {
  await open(text)
  await clock()
  const parts = await partsDrawn(() => type(area(), after), some)
  cleanup()
  return parts
}

const letters: [string, (text: string) => string][] = [
  ['a letter in the title', (text) => text.replace('title: Mine', 'title: Miner')],
  ['a letter in a comment', (text) => text.replace('# mine', '# miner')],
  ['an empty line at the top', (text) => `\n${text}`]
]

describe('what is typed', () => {
  for (const [what, change] of letters) {
    it(`${what} draws as much of a long protocol as of a short one`, async () => {
      const [short, long] = [ofSteps(5), ofSteps(40)]
      expect(await byLetter(long, change(long))).toBe(await byLetter(short, change(short)))
    })
  }

  it('a letter in a step goes through the rows, and draws one of them', async () => {
    const [short, long] = [ofSteps(5), ofSteps(40)]
    const change = (text: string): string => text.replace('- add: 3 g', '- add: 33 g')
    const more = (await byLetter(long, change(long))) - (await byLetter(short, change(short)))
    expect(more).toBe(40 - 5)
  })

  it('goes through no row when it is worked out at last what the protocol comes to', async () => {
    const later = async (count: number): Promise<number> => {
      const text = `strandline: 1\ntitle: Mine\nsteps:\n${many(count, (no) => `  - hold: ${no + 2} min\n`)}`
      await open(text)
      const was = await clock()
      await partsDrawn(() => type(area(), text.replace('hold: 2 min', 'hold: 222 min')), some)
      const parts = await partsDrawn(
        () => {},
        () => expect(screen.getByText('On the clock').parentElement?.textContent).not.toBe(was)
      )
      cleanup()
      return parts
    }
    expect(await later(40)).toBe(await later(5))
  })
})
