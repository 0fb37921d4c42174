import { readFileSync } from 'node:fs'
import Ajv2020 from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import type { ProgrammeInputs } from '../../../src/core/protocol/model.ts'
import { stepsOf } from '../../../src/core/protocol/tree.ts'
import { exportRecord } from '../../../src/core/record/export-record.ts'
import { recordOf } from '../../../src/core/record/record-of.ts'
import { drawsOf } from '../../../src/core/shelf/draws.ts'
import { Bench } from '../pot/given.ts'
import { programmeFrom } from '../protocol/made.ts'
import { bottle } from './bottles.ts'

const text = `strandline: 1
title: A mix
materials:
  stock Y: {kind: stock, label: stock Y, strength: 1 % w/v}
  stock B: {kind: stock, label: stock B, strength: 2 % w/v}
  mix: {kind: stock, label: mixed dye, parts: {stock Y: 3, stock B: 1}, amount: 0.8 % owf}
  acid: {kind: acid, label: vinegar, strength: 5 % w/v, amount: 2 % owf}
steps:
- fill: {liquor: "20:1"}
- add: {id: dye, amount: all of mix}
- add: {id: A1, amount: 1/2 of acid}
- enter: {}
- add: {id: A2, amount: 1/2 of acid}
`
const poured = (name: string, percent: number, ...shelf: ReturnType<typeof bottle>[]) => ({
  name,
  percent,
  basis: 'w/v' as const,
  densityGPerML: null,
  shelf
})
const made = (materials: ProgrammeInputs['materials']) => programmeFrom(text, { materials })
const fromOf = (materials: ProgrammeInputs['materials']) =>
  stepsOf(made(materials)).flatMap(({ dose }) => (dose?.from ? [dose.from] : []))

/** Every step done as it comes. */
function dyed(materials: ProgrammeInputs['materials']): Bench {
  const bench = Bench.start(made(materials))
  for (let path = bench.open()[0]; path !== undefined; path = bench.open()[0]) {
    bench.pass(1)
    bench.do({ type: 'MarkDone', path })
  }
  return bench
}

const both = {
  'stock Y': poured('stock Y', 1, bottle('y', null, { name: 'stock Y', lot: 'Y-3', percent: 1, madeOn: '2031-06-01' })),
  'stock B': poured('stock B', 2, bottle('b', null, { name: 'stock B', percent: 2 }))
}

describe('a programme whose materials stand on the shelf', () => {
  it('says of no dose where it comes from when nothing does: it is as it always was', () => {
    expect(fromOf({})).toEqual([])
  })

  it('says it for the materials that do', () => {
    expect(fromOf({ acid: poured('vinegar', 5, bottle('v')) })).toEqual([
      [{ material: 'acid', each: 1 }],
      [{ material: 'acid', each: 1 }]
    ])
  })

  it('draws a mix from its stocks as the bench is told to pour them: 60 mL of 1 % and 10 mL of 2 % for 0.8 g, 3:1', () => {
    const bench = dyed(both)
    const draws = Object.fromEntries(drawsOf(bench.entries).map(({ itemId, amount }) => [itemId, amount]))
    expect(draws.y).toBeCloseTo(60, 9)
    expect(draws.b).toBeCloseTo(10, 9)
    const setOut = made(both).setOut.filter(({ id }) => id.startsWith('mix-of-'))
    expect(setOut.map(({ amount }) => amount.value)).toEqual([60, 10])
  })

  it('draws a mix that stands mixed on the shelf from there, by the strength on its label', () => {
    const mixed = { mix: poured('plum mix', 2, bottle('m', null, { name: 'plum mix', percent: 2 })) }
    expect(drawsOf(dyed(mixed).entries)).toMatchObject([{ itemId: 'm', amount: 40, unit: 'mL' }])
    expect(made(mixed).setOut.some(({ id }) => id.startsWith('mix-of-'))).toBe(false)
  })
})

describe('the record of a batch', () => {
  const schema = JSON.parse(readFileSync(new URL('../../../public/batch-record.schema.json', import.meta.url), 'utf8'))
  const valid = new Ajv2020({ strict: true, strictRequired: false, allowUnionTypes: true }).compile(schema)

  it('says of each stock its lot, its strength, the day it was made and its age at its first use', () => {
    const bench = dyed(both)
    expect(recordOf(bench.entries)?.shelf.bottles).toMatchObject([
      { itemId: 'y', lot: 'Y-3', percent: 1, madeOn: '2031-06-01', ageDays: 13, unit: 'mL' },
      { itemId: 'b', lot: 'L1', percent: 2, madeOn: null, ageDays: null }
    ])
  })

  it('tells a bottle that was chosen and not drawn from, and one that only an unplanned dose came out of', () => {
    const bench = Bench.start(made(both))
    const amount = { value: 3, unit: 'mL' as const, of: 'salt water', asEntered: '3 mL' }
    bench.do({ type: 'AddUnplanned', amount, itemId: 'z' })
    expect(recordOf(bench.entries)?.shelf.bottles).toMatchObject([
      { itemId: 'y', drawn: 0, unit: null, usedAtMs: null, ageDays: 13 },
      { itemId: 'b', drawn: 0 },
      { itemId: 'z', name: 'salt water', drawn: 3, unit: 'mL', ageDays: null }
    ])
  })

  it('is exported with all of it, as the schema says, judged by ajv', () => {
    const bench = dyed(both)
    const record = recordOf(bench.entries)
    if (!record) throw new Error('no record')
    const document = JSON.parse(exportRecord(record, bench.entries, null, Date.UTC(2031, 5, 15)))
    expect(valid(document), JSON.stringify(valid.errors?.slice(0, 3))).toBe(true)
    expect(document.record.shelf.bottles[0]).toMatchObject({ lot: 'Y-3', ageDays: 13 })
    document.record.shelf.bottles[0].ageDays = -1
    expect(valid(document)).toBe(false)
  })
})
