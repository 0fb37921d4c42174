// What of a pot's numbers wants a look before it starts. Each flag has a code, its figures, and the field that settles
// it; the words are in words.ts.
import type { Span } from '../model.ts'

/** A weaker stock made of the one there is: `takeML` of it made up to `makeUpToML`; `doseML` of that is the same dye. */
export type WeakerStock = { percent: number; takeML: number; makeUpToML: number; doseML: number; errorPercent: number }

export type Flag =
  /** The doubt of the syringe is much of the dose. `way` null: no strength is known, or no dilution mends it. */
  | {
      code: 'small-dose'
      field: string
      setOutId: string
      label: string
      of: string
      doseML: number
      errorPercent: number
      percent: number | null
      way: WeakerStock | null
    }
  /** `label`: the step. */
  | {
      code: 'over-boil'
      field: string
      path: string
      label: string
      askedC: number
      boilC: number
      longer: Span | null
      counted: boolean
    }
  /** Nobody said where the pot stands, and a step goes near the boil. */
  | { code: 'boil-presumed'; field: string; askedC: number; presumedC: number }
  /** More than two thirds of the pot. `keptML`: what it may hold, with the ratio and the goods that fit it. */
  | {
      code: 'pot-full'
      field: string
      wholeML: number
      potML: number
      keptML: number
      keptRatio: number
      goodsFitG: number
      over: boolean
    }
  /** `why`: the pot holds less than the ratio asks for; or the goods changed and the water did not follow. */
  | { code: 'ratio-changed'; field: string; from: number; to: number; why: 'pot' | 'scaled'; than: string | null }
  /** All that goes in stands at another ratio than the water alone. */
  | { code: 'ratio-counted'; field: string; ratio: number; trueRatio: number; carriedML: number; pourML: number | null }
  /** Less liquor than the goods take up themselves. */
  | { code: 'not-covered'; field: string; trueRatio: number; takesUp: number }
  /** The acid does not use up what alkalinity the water may have. */
  | { code: 'alkalinity-left'; field: string; after: string; alkalinityMgPerL: number }
  /** The pH that the protocol wants is not in reach by these figures. */
  | {
      code: 'ph-outside'
      field: string
      wantLow: number | null
      wantHigh: number | null
      lowPh: number
      highPh: number
    }

export type FlagCode = Flag['code']
