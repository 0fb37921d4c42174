import Papa from 'papaparse'
import { describe, expect, it } from 'vitest'
import { batchesCsv } from '../../../src/core/record/batches-csv.ts'
import { entriesCsv } from '../../../src/core/record/entries-csv.ts'
import type { BatchRecord } from '../../../src/core/record/record.ts'
import { recordOf } from '../../../src/core/record/record-of.ts'
import { type Bench, T0 } from '../pot/given.ts'
import { mossFinished } from './moss.ts'

const recordFrom = (bench: Bench): BatchRecord => recordOf(bench.entries) as BatchRecord

function rowsOf(file: string): Record<string, string>[] {
  const { data, errors } = Papa.parse<Record<string, string>>(file, { header: true, skipEmptyLines: true })
  expect(errors).toEqual([])
  return data
}

describe('the table of batches', () => {
  it('has a row for each, with its figures as numbers', () => {
    const rows = rowsOf(batchesCsv([recordFrom(mossFinished()), recordFrom(mossFinished())]))
    expect(rows).toHaveLength(2)
    expect(rows[0]).toMatchObject({
      batch_id: 'pot-a',
      batch: '2031-06-14 Moss',
      colourway: 'Moss',
      status: 'complete',
      started_at: '2031-06-14T09:00:00+00:00',
      ended_at: '2031-06-14T10:00:00+00:00',
      minutes: '60',
      goods_g: '100',
      skeins: 'S1 100 g',
      off_protocol: 'no',
      // Acid 1, all in, acid 2 and the first look at the bath came more than half a minute after they were due.
      acts_late: '4',
      last_judged: 'bath clear',
      notes: 'Cloudy at the start.'
    })
  })

  it('has one for a batch that can’t be read, too, and says so', () => {
    const [row] = rowsOf(batchesCsv([{ potId: 'p', batchName: '=Moss', colourway: 'Moss', startedAtMs: T0 }]))
    expect(row).toMatchObject({ batch_id: 'p', batch: "'=Moss", status: 'cannot be read', goods_g: '' })
    expect(row?.started_at).toBe('2031-06-14T09:00:00.000Z')
  })
})

describe('the table of entries', () => {
  const bench = mossFinished()
  const record = recordFrom(bench)
  const rows = rowsOf(entriesCsv(record))

  it('has every entry of the journal, each with when, who and what in words', () => {
    expect(rows.map((row) => Number(row.seq)).sort((a, b) => a - b)).toEqual(bench.entries.map((entry) => entry.seq))
    expect(rows.map((row) => row.words)).toEqual(record.journal.map((line) => line.words))
    expect(rows.every((row) => /^2031-06-14T\d\d:\d\d:\d\d\+00:00$/.test(row.at ?? ''))).toBe(true)
  })

  it('has amounts and temperatures as bare numbers beside the words', () => {
    const acid = rows.find((row) => row.type === 'Dosed')
    expect(acid).toMatchObject({ amount: '33', amount_planned: '30', unit: 'mL', of: 'vinegar' })
    expect(rows.find((row) => row.type === 'TemperatureRead')).toMatchObject({ temperature_c: '81', in_range: '' })
  })

  it('marks what was undone', () => {
    const undone = mossFinished()
    undone.do({ type: 'WriteNote', text: 'wrong pot' })
    undone.do({ type: 'Undo' })
    const lines = rowsOf(entriesCsv(recordFrom(undone)))
    expect(lines.filter((row) => row.undone === 'yes').map((row) => row.words)).toEqual(['Note: wrong pot'])
  })
})
