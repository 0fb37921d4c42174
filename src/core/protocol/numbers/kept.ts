// What a pot's record keeps of its numbers: what was estimated, what it counted on, and the flags as they were shown.
import type { Units } from '../../quantity/index.ts'
import type { Numbers } from './numbers.ts'
import { flagWords } from './words.ts'

/** Worked out before the start, to plan by; nothing of it was measured. */
export type KeptNumbers = {
  /** On a cooled spoon, after each portion of acid. */
  ph: { after: string; vessel: string | null; lowPh: number; highPh: number; tempC: number }[]
  alkalinity: { low: number; high: number; presumed: boolean }
  boilC: number | null
  /** mL for each g of dry goods, with all that goes in. */
  trueRatio: number | null
  flags: { code: string; say: string }[]
}

export function keptOf({ flags, liquor, ph }: Numbers, boilC: number | null, units: Units): KeptNumbers {
  return {
    ph: ph.after.map(({ after, vessel, spoon }) => ({
      after,
      vessel,
      lowPh: hundredth(spoon.lowPh),
      highPh: hundredth(spoon.highPh),
      tempC: spoon.tempC
    })),
    alkalinity: ph.alkalinity,
    boilC: boilC === null ? null : hundredth(boilC),
    trueRatio: liquor && hundredth(liquor.trueRatio),
    flags: flags.map((flag) => {
      const { say, way } = flagWords(flag, units)
      return { code: flag.code, say: `${say} ${way}` }
    })
  }
}

function hundredth(value: number): number {
  return Math.round(value * 100) / 100
}
