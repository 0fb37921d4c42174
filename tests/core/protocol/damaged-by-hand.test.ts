import { describe, expect, it } from 'vitest'
import { slips } from './damage.ts'
import { builtInTexts, damageAll, dense, slowMs, wordsOf } from './damage-all.ts'
import { readSafely } from './read-safely.ts'

it('the texts that are damaged are good ones before', () => {
  for (const text of [dense, ...builtInTexts]) {
    const read = readSafely(text)
    expect(read.ok ? [] : read.problems).toEqual([])
  }
})

describe('a built-in protocol with a slip of the hand in it', () => {
  it(`never throws, is answered within ${slowMs} ms, and has every problem placed in the text: 4,000 times (seed 20310614)`, async ({
    annotate
  }) => {
    const tallies = damageAll(20310614, 4000, slips)
    await annotate(wordsOf(tallies))
    const all = [...tallies.values()]
    expect(all.reduce((sum, { read }) => sum + read, 0)).toBe(4000)
    expect(all.flatMap(({ slow }) => slow)).toEqual([])
    // Each way shows in most texts or in some: a slip in a sentence is no mistake.
    for (const [way, { refused, read }] of tallies) expect([way, refused > read / 20]).toEqual([way, true])
  }, 180_000)
})
