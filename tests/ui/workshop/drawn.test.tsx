// @vitest-environment happy-dom
// What a letter draws, counted and not timed: every part that is gone through, drawn anew or looked at, is one.
import { cleanup, screen, waitFor } from '@testing-library/preact'
import { options } from 'preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { area, open, type, wide } from './opened.tsx'

const head = 'strandline: 1\ntitle: Mine\nmaterials:\n  acid: {kind: acid, strength: 5 %}\nsteps:\n'
const ofSteps = (count: number): string =>
  `# mine\n${head}${Array.from({ length: count }, (_, i) => `  - add: {id: a${i}, amount: ${i + 1} mL of acid}\n`).join('')}`

beforeEach(() => {
  forgetTaps()
  wide(1280)
})
afterEach(cleanup)

/** Of a protocol that was worked out: then nothing is left to be drawn but what the letter asks for. */
async function partsDrawn(text: string, after: string): Promise<number> {
  await open(text)
  await screen.findByText(/On the clock/)
  const before = options.diffed
  let parts = 0
  options.diffed = (node) => {
    parts++
    before?.(node)
  }
  try {
    type(area(), after)
    await waitFor(() => expect(parts).toBeGreaterThan(0))
  } finally {
    options.diffed = before
    cleanup()
  }
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
      expect(await partsDrawn(long, change(long))).toBe(await partsDrawn(short, change(short)))
    })
  }

  it('a letter in a step goes through the rows, and draws one of them', async () => {
    const [short, long] = [ofSteps(5), ofSteps(40)]
    const change = (text: string): string => text.replace('3 mL', '33 mL')
    const more = (await partsDrawn(long, change(long))) - (await partsDrawn(short, change(short)))
    expect(more).toBe(40 - 5)
  })
})
