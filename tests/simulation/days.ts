// Many days as tests: each test is a hundred seeds, and a failure names its seed.
import { afterAll, describe, expect, it } from 'vitest'
import { type CountKind, Counts } from './counts.ts'
import { runDay } from './day.ts'
import { everyKind } from './every-kind.ts'

const SEEDS_A_TEST = 100

export function holdDays(firstSeed: number, lastSeed: number): void {
  const counts = new Counts()
  let entries = 0

  describe(`seeds ${firstSeed} to ${lastSeed}: nothing confirmed is lost, every moment calls once, every pot ends`, () => {
    for (let from = firstSeed; from <= lastSeed; from += SEEDS_A_TEST) {
      const to = Math.min(lastSeed, from + SEEDS_A_TEST - 1)
      it(`on the days of seeds ${from} to ${to}`, async () => {
        const failed: string[] = []
        for (let seed = from; seed <= to; seed++) {
          const day = await runDay(seed)
          counts.take(day.counts)
          entries += day.entries
          failed.push(...day.complaints.map((complaint) => `seed ${seed}: ${complaint}`))
        }
        expect(failed).toEqual([])
      })
    }

    it('and everything that a protocol, a person or a store can do came up', () => {
      const missing = Object.entries(everyKind).flatMap(([kind, names]) =>
        names.filter((name) => counts.of(kind as CountKind, name) === 0).map((name) => `${kind} ${name}`)
      )
      expect(missing).toEqual([])
    })
  })

  afterAll(() => {
    console.log([`${entries} entries written`, ...counts.lines()].join('\n'))
  })
}
