import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { losses, noise } from './damage.ts'
import { damageAll, slowMs, wordsOf } from './damage-all.ts'
import { readSafely } from './read-safely.ts'

describe('a built-in protocol of which something got lost', () => {
  it(`never throws, is answered within ${slowMs} ms, and has every problem placed in the text: 6,000 times (seed 20310615)`, async ({
    annotate
  }) => {
    const tallies = damageAll(20310615, 6000, losses)
    await annotate(wordsOf(tallies))
    const all = [...tallies.values()]
    expect(all.reduce((sum, { read }) => sum + read, 0)).toBe(6000)
    expect(all.flatMap(({ slow }) => slow)).toEqual([])
    for (const [way, { refused, read }] of tallies) expect([way, refused > read / 2]).toEqual([way, true])
  }, 180_000)
})

describe('what never was a protocol', () => {
  it('is refused, every problem placed: 2,000 texts of random bytes and signs (seed 1)', async ({ annotate }) => {
    const tallies = damageAll(1, 2000, noise)
    await annotate(wordsOf(tallies))
    for (const { read, refused, slow } of tallies.values()) expect([refused, slow]).toEqual([read, []])
  }, 60_000)

  it('is answered when it is random YAML (seed 2)', () => {
    const yaml = fc.json().map((json) => `strandline: 1\ntitle: T\nsteps: ${json}\n`)
    fc.assert(
      fc.property(yaml, (text) => void readSafely(text)),
      { numRuns: 500, seed: 2 }
    )
  }, 60_000)
})
