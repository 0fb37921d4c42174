import type { Entry } from '../pot/entry.ts'
import type { PotEvent } from '../pot/events.ts'
import type { BatchRecord } from './record.ts'

export const EXPORT_FORMAT = 'strandline-batch-record'
export const EXPORT_VERSION = 3

/** One record as JSON, read without the program: what it says (`record`) and what it was read from (`entries`, as
 * stored). `exportedAtMs`: wall clock UTC. README.md beside this file has the fields. */
export function exportRecord(record: BatchRecord, entries: readonly Entry<PotEvent>[], exportedAtMs: number): string {
  const document = {
    format: EXPORT_FORMAT,
    version: EXPORT_VERSION,
    manner: 'Kept in the manner of a batch record. Not a certificate of anything.',
    exportedAt: new Date(exportedAtMs).toISOString(),
    record,
    entries
  }
  return `${JSON.stringify(document, null, 2)}\n`
}
