import { describe, expect, it } from 'vitest'
import { runDay } from './day.ts'
import { pinnedSeeds } from './pinned-seeds.ts'

describe('a day that once failed holds', () => {
  for (const { seed, danger } of pinnedSeeds) {
    it(`seed ${seed}: ${danger}`, async () => {
      expect((await runDay(seed)).complaints).toEqual([])
    })
  }
})
