// Planned and done, step by step.
import type { Entry } from '../pot/entry.ts'
import type { PotEvent } from '../pot/events.ts'
import type { Programme } from '../protocol/model.ts'
import { stepAt } from '../protocol/tree.ts'
import { showDuration } from '../quantity/index.ts'
import type { Planned, StepRecord } from './record.ts'
import { saidOf } from './said.ts'

/** Less than this against the plan is not worth a word. */
const WORTH_SAYING_MS = 60_000

/** The steps that began, in the order in which they began. `entries`: those that stand, withdrawn ones left out. */
export function stepRecords(
  entries: readonly Entry<PotEvent>[],
  programme: Programme,
  plan: Map<string, Planned>,
  dyer: string | null
): StepRecord[] {
  const records: StepRecord[] = []
  const open = new Map<string, StepRecord>()
  for (const entry of entries) {
    const { event, atMs } = entry
    if (event.type === 'StepStarted') {
      const record = begun(entry, event, programme, event.side ? null : (plan.get(event.path) ?? null), dyer)
      if (!record) continue
      records.push(record)
      open.set(event.path, record)
    }
    if (event.type === 'ClockShifted') for (const record of records) shift(record, event.byMs)
    if (event.type === 'StepClosed') {
      const record = open.get(event.path)
      if (!record) continue
      open.delete(event.path)
      record.endMs = atMs
      record.how = event.how
      record.reason = event.reason
      record.lateMs = event.lateMs
      record.said = saidOf(entry, dyer)
    }
  }
  records.forEach((record, i) => {
    compare(record)
    record.sentence = sentenceOf(record, causeOf(records, i))
  })
  return records
}

function begun(
  entry: Entry<PotEvent>,
  event: Extract<PotEvent, { type: 'StepStarted' }>,
  programme: Programme,
  planned: Planned | null,
  dyer: string | null
): StepRecord | null {
  const step = stepAt(programme, event.path)
  if (!step) return null
  return {
    path: step.path,
    label: step.knot,
    call: step.call,
    word: step.word,
    shape: step.shape,
    side: event.side,
    planned,
    startMs: entry.atMs,
    endMs: null,
    how: 'open',
    reason: null,
    lateMs: 0,
    driftMs: null,
    overrunMs: null,
    said: saidOf(entry, dyer),
    sentence: ''
  }
}

/** What came before a clock was set is told on the clock of afterwards, or the plan would not fit it. */
function shift(record: StepRecord, byMs: number): void {
  record.startMs += byMs
  if (record.endMs !== null) record.endMs += byMs
}

function compare(record: StepRecord): void {
  const { planned, startMs, endMs } = record
  if (!planned || endMs === null) return
  record.driftMs = endMs - planned.endMs
  record.overrunMs = endMs - startMs - (planned.endMs - planned.startMs)
}

/** The step just before whose own length put this one back the most. */
function causeOf(records: StepRecord[], index: number): StepRecord | null {
  const { startMs } = records[index] as StepRecord
  let cause: StepRecord | null = null
  // Only what ended as this one began, or shortly before: further back it is a story, not a cause.
  for (const before of records.slice(Math.max(0, index - 3), index)) {
    if (before.endMs === null || before.endMs > startMs || (before.overrunMs ?? 0) < WORTH_SAYING_MS) continue
    if (cause === null || (before.overrunMs ?? 0) >= (cause.overrunMs ?? 0)) cause = before
  }
  return cause
}

/** What there is to say about a step, in one plain sentence: "Acid 2 came 5 min late, after Band 8 took 2 min more." */
function sentenceOf(record: StepRecord, cause: StepRecord | null): string {
  const { label, how, reason, lateMs, driftMs, planned } = record
  const why = reason ? `: ${reason}` : ''
  const after = cause ? `, after ${cause.label} took ${showDuration(toMinute(cause.overrunMs ?? 0))} more` : ''
  if (how === 'open') return `${label} is open.`
  if (how === 'skipped') return `${label} was skipped${why}.`
  if (lateMs > 0) return `${label} came ${showDuration(toMinute(lateMs))} late${after}.`
  if (how === 'early') return `${label} was ended early${why}.`
  if (record.side) return `${label} was done once more.`
  if (planned === null || driftMs === null) return `${label} was not planned for.`
  if (Math.abs(driftMs) < WORTH_SAYING_MS) return `${label}: as planned.`
  const drift = showDuration(toMinute(Math.abs(driftMs)))
  return driftMs > 0 ? `${label}: ${drift} behind the plan${after}.` : `${label}: ${drift} ahead of the plan.`
}

/** Past ten minutes nobody wants the seconds. */
function toMinute(ms: number): number {
  return ms < 600_000 ? Math.round(ms / 1000) * 1000 : Math.round(ms / 60_000) * 60_000
}
