// The Dye book as a table: a row for each batch.
import { type Cell, csvFile } from './csv.ts'
import type { BatchRecord } from './record.ts'

/** What is known of a batch whose record can't be read. */
export type BatchLine = { potId: string; batchName: string; colourway: string; startedAtMs: number }

const header = [
  'batch_id',
  'batch',
  'colourway',
  'letter',
  'status',
  'started_at',
  'ended_at',
  'minutes',
  'dyer',
  'fibre',
  'goods_g',
  'skeins',
  'protocol',
  'protocol_version',
  'burner',
  'bath_number',
  'bath_used_before',
  'parent_batch_id',
  'off_protocol',
  'acts_late',
  'out_of_bath_min',
  'stopped_min',
  'last_judged',
  'notes',
  'ended_because'
] as const

/** Times are ISO 8601 with the offset of the dyer's own clock; of a batch that can't be read, UTC. */
export function batchesCsv(batches: readonly (BatchRecord | BatchLine)[]): string {
  return csvFile(
    header,
    batches.map((batch) => ('identity' in batch ? rowOf(batch) : unread(batch)))
  )
}

function rowOf({ identity, substrate, protocol, ...record }: BatchRecord): Cell[] {
  const { startedAtMs, endedAtMs } = identity
  const judged = record.judgements.at(-1)
  return [
    identity.potId,
    identity.batchName,
    identity.colourway,
    identity.letter,
    identity.status,
    identity.startedAt,
    identity.endedAt,
    endedAtMs === null ? null : minutes(endedAtMs - startedAtMs),
    identity.dyer,
    substrate.fibre,
    substrate.goodsMassG,
    substrate.skeins.map((skein) => `${skein.tag} ${skein.massG} g`).join('; '),
    protocol.title,
    protocol.version,
    identity.burner,
    substrate.bath.number,
    substrate.bath.unknownDyeLeft,
    substrate.parentBatchId,
    record.offProtocol,
    record.steps.filter((step) => step.lateMs > 0).length,
    minutes(record.outOfBathMs),
    minutes(record.stoppedMs),
    judged ? [judged.of, judged.grade, judged.hue ?? ''].filter(Boolean).join(' ') : null,
    record.notes.map((note) => note.text).join('\n'),
    identity.endedBecause
  ]
}

/** A row all the same: a batch that is missing from the table would be taken for one that never was. */
function unread({ potId, batchName, colourway, startedAtMs }: BatchLine): Cell[] {
  const known: Record<string, Cell> = {
    batch_id: potId,
    batch: batchName,
    colourway,
    status: 'cannot be read',
    started_at: new Date(startedAtMs).toISOString()
  }
  return header.map((name) => known[name] ?? null)
}

function minutes(ms: number): number {
  return Math.round(ms / 600) / 100
}
