import fc from 'fast-check'
import type { Bath } from '../../../src/core/chemistry/index.ts'

/** Baths of a kitchen: some acid, never more than the model takes. */
export const someBath: fc.Arbitrary<Bath> = fc.record({
  waterML: fc.double({ min: 1000, max: 50_000, noNaN: true }),
  vinegarML: fc.double({ min: 0, max: 400, noNaN: true }),
  vinegarPercentWV: fc.double({ min: 3, max: 12, noNaN: true }),
  citricG: fc.double({ min: 0, max: 40, noNaN: true }),
  citricForm: fc.constantFrom('anhydrous' as const, 'monohydrate' as const),
  alkalinityMgPerLCaCO3: fc.double({ min: 0, max: 500, noNaN: true }),
  tempC: fc.double({ min: 0, max: 100, noNaN: true }),
  air: fc.constant('closed' as const)
})

export const plainBath: Bath = {
  waterML: 4000,
  vinegarML: 100,
  vinegarPercentWV: 5,
  citricG: 0,
  citricForm: 'anhydrous',
  alkalinityMgPerLCaCO3: 100,
  tempC: 25,
  air: 'closed'
}
