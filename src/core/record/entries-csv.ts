// One batch's journal as a table: a row for each entry, in the order it is read.

import { keyOf } from './corrected.ts'
import { type Cell, csvFile } from './csv.ts'
import type { AmountRecord, BatchRecord, ReadingRecord } from './record.ts'

const header = [
  'at',
  'written_at',
  'who',
  'type',
  'step',
  'words',
  'amount',
  'amount_planned',
  'unit',
  'of',
  'temperature_c',
  'ph_low',
  'ph_high',
  'in_range',
  'undone',
  'corrected',
  'writer',
  'seq'
]

/** `at` is ISO 8601 with the offset of the dyer's own clock; `written_at` is UTC. What is told in figures stands in
 * columns of its own, metric, whatever units the words are in. */
export function entriesCsv(record: BatchRecord): string {
  const amounts = new Map(record.amounts.flatMap((amount) => (amount.said ? [[keyOf(amount.said.entry), amount]] : [])))
  const readings = new Map(record.readings.map((reading) => [keyOf(reading.said.entry), reading]))
  const rows = record.journal.map(({ said, type, path, words, withdrawn, corrected }): Cell[] => {
    const key = keyOf(said.entry)
    const { writerId, seq } = said.entry
    const what = [said.at, new Date(said.recordedAtMs).toISOString(), said.who, type, path, words]
    const figures = [...amountCells(amounts.get(key)), ...readingCells(readings.get(key))]
    return [...what, ...figures, withdrawn, corrected, writerId, seq]
  })
  return csvFile(header, rows)
}

function amountCells(amount: AmountRecord | undefined): Cell[] {
  const { added = null, planned = null } = amount ?? {}
  return [added?.value ?? null, planned?.value ?? null, added?.unit ?? null, amount?.of ?? null]
}

function readingCells(reading: ReadingRecord | undefined): Cell[] {
  return [reading?.tempC ?? null, reading?.ph?.low ?? null, reading?.ph?.high ?? null, reading?.inRange ?? null]
}
