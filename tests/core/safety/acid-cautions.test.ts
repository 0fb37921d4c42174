import { describe, expect, it } from 'vitest'
import { acidCautions } from '../../../src/core/safety/acid-cautions.ts'
import { benchAcidOf } from '../../../src/core/shelf/acid-on-shelf.ts'
import type { Acid } from '../../../src/core/shelf/thing.ts'

const acid = (more: Partial<Acid>): Acid => ({
  kind: 'acid',
  name: 'acid',
  acid: 'acetic acid',
  form: 'liquid',
  percent: 5,
  basis: 'w/v',
  densityGPerML: null,
  lot: '',
  note: '',
  ...more
})
const said = (more: Partial<Acid>): string[] => acidCautions(benchAcidOf(acid(more))).map(({ id }) => id)

describe('an acid that stands on the shelf', () => {
  // The edges of acetic acid: CLP Annex VI, index 607-002-00-6, from memory.
  it('has the caution of its strength', () => {
    expect(said({ percent: 5 })).toEqual([])
    expect(said({ percent: 12 })).toEqual(['acid-irritant'])
    expect(said({ percent: 56 })).toEqual(['acid-corrosive'])
    expect(said({ percent: 99.5 })).toEqual(['acid-severe'])
  })

  it('is taken for worse where its label does not tell', () => {
    expect(said({ percent: null })).toEqual(['acid-unknown'])
    expect(said({ acid: 'acid', percent: 5 })).toEqual(['acid-other'])
    expect(said({ acid: 'formic acid', percent: 85 })).toEqual(['acid-other'])
  })

  it('dusts as powder and does not when it is dissolved', () => {
    expect(said({ acid: 'citric acid', form: 'powder', percent: null })).toEqual(['citric-dust'])
    expect(said({ acid: 'citric acid', percent: 10 })).toEqual(['citric'])
  })
})
