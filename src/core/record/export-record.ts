import type { Entry } from '../pot/entry.ts'
import type { PotEvent } from '../pot/events.ts'
import type { ReadEntries } from '../pot/read-entry.ts'
import type { BatchRecord } from './record.ts'
import type { SwatchEvent } from './swatch.ts'

export const EXPORT_FORMAT = 'strandline-batch-record'
export const EXPORT_VERSION = 4

/** What was found of the batch's skein, as it was read; null: it could not be read. */
export type SwatchesRead = ReadEntries<SwatchEvent> | null

/** One record as JSON, read without the program: what it says (`record`), what it was read from (`entries`, as stored)
 * and the journal of its skein (`swatches`). `exportedAtMs`: wall clock UTC. README.md beside this file has the fields. */
export function exportRecord(
  record: BatchRecord,
  entries: readonly Entry<PotEvent>[],
  swatches: SwatchesRead,
  exportedAtMs: number
): string {
  const document = {
    format: EXPORT_FORMAT,
    version: EXPORT_VERSION,
    manner: 'Kept in the manner of a batch record. Not a certificate of anything.',
    exportedAt: new Date(exportedAtMs).toISOString(),
    record,
    entries,
    swatches
  }
  return `${JSON.stringify(document, null, 2)}\n`
}
