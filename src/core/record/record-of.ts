import { trunkOf } from '../pot/branches.ts'
import type { Entry } from '../pot/entry.ts'
import type { PotEvent } from '../pot/events.ts'
import { fold } from '../pot/fold.ts'
import type { PotState } from '../pot/state.ts'
import { metricUnits, type Units } from '../quantity/index.ts'
import { amountRecords } from './amounts.ts'
import { type CorrectedEntries, keyOf, withCorrections } from './corrected.ts'
import { deviationsOf } from './deviations.ts'
import { eventWords } from './event-words.ts'
import { localIso } from './local-time.ts'
import { mediaOf } from './media.ts'
import { planOf } from './plan.ts'
import { cautionsOf, judgementsOf, notesOf, readingsOf } from './readings.ts'
import type { BatchRecord, CorrectionRecord, JournalLine, WithdrawnRecord } from './record.ts'
import { resultsOf } from './results.ts'
import { saidOf } from './said.ts'
import { bottlesOf } from './shelf.ts'
import { stepRecords } from './steps.ts'

type PotEntry = Entry<PotEvent>
type Started = Extract<PotEvent, { type: 'PotStarted' }>
type Ran = Exclude<PotState, { status: 'idle' }>

/** What can be given beside the journal: its fold where it is at hand, the words' units, what could not be read. */
export type RecordOptions = {
  state?: PotState
  units?: Units
  damaged?: { index: number; why: string }[]
}

/** The batch record of a pot from its journal, in the order of writing. Null: the journal holds no start, so that
 * there is nothing to hang the rest on. Withdrawn entries count for nothing but are listed; corrected ones say the new
 * value and the old one stands among the corrections. Of a journal with branches: the record of its trunk. */
export function recordOf(all: readonly PotEntry[], options: RecordOptions = {}): BatchRecord | null {
  const { entries } = trunkOf(all)
  const units = options.units ?? metricUnits
  const state = options.state ?? fold(entries)
  const corrected = withCorrections(entries)
  const withdrawnBy = withdrawals(entries)
  const stand = corrected.entries.filter((entry) => !withdrawnBy.has(keyOf(entry)))
  const first = stand.find((entry) => entry.event.type === 'PotStarted')
  if (first?.event.type !== 'PotStarted' || state.status === 'idle') return null
  const started = first.event
  const { programme } = started
  const dyer = started.pot.by
  const heard = stand.map((entry) => ({ entry, said: saidOf(entry, dyer) }))
  const steps = stepRecords(stand, programme, planOf(programme, state.startedAtMs, state.taken), dyer)
  const ended = state.status === 'complete' || state.status === 'aborted'
  return {
    identity: identityOf(first, started, stand, state),
    substrate: substrateOf(started),
    protocol: started.protocol,
    programme,
    checks: started.checks,
    ...(started.numbers && { numbers: started.numbers }),
    steps,
    amounts: amountRecords(stand, programme, steps, ended, dyer),
    shelf: {
      bottles: bottlesOf(entries, programme, state.startedAtMs, first.tzOffsetMin),
      uses: started.pot.uses ?? []
    },
    readings: readingsOf(heard, started, units),
    judgements: judgementsOf(heard),
    notes: notesOf(heard),
    results: resultsOf(heard, ended ? state.endedAtMs : null),
    media: mediaOf(corrected.entries, (entry) => withdrawnBy.has(keyOf(entry)), programme, dyer),
    cautions: cautionsOf(heard),
    deviations: deviationsOf(heard, steps, programme, units),
    corrections: correctionsOf(entries, corrected, started, units),
    withdrawn: withdrawnOf(entries, withdrawnBy, started, units),
    outOfBathMs: state.outTotalMs,
    stoppedMs: stand.reduce((sum, { event }) => sum + (event.type === 'Resumed' ? event.heldMs : 0), 0),
    offProtocol: state.offProtocol.length > 0,
    journal: journalOf(corrected, withdrawnBy, started, units),
    damaged: options.damaged ?? []
  }
}

/** The withdrawing entry by the key of each entry it withdraws. */
function withdrawals(entries: readonly PotEntry[]): Map<string, PotEntry> {
  const by = new Map<string, PotEntry>()
  for (const entry of entries) {
    if (entry.event.type !== 'Withdrawn') continue
    for (const ref of entry.event.entries) by.set(keyOf(ref), entry)
  }
  return by
}

function identityOf(first: PotEntry, { pot }: Started, stand: PotEntry[], state: Ran): BatchRecord['identity'] {
  const last = stand.findLast((entry) => entry.event.type === 'Finished' || entry.event.type === 'Aborted')
  const ended = state.status === 'complete' || state.status === 'aborted'
  return {
    potId: pot.potId,
    batchName: pot.batchName,
    colourway: pot.colourway,
    letter: pot.letter,
    burner: pot.burner,
    colour: pot.colour,
    dyer: pot.by,
    status: state.status,
    startedAtMs: state.startedAtMs,
    startedAt: localIso(state.startedAtMs, first.tzOffsetMin),
    endedAtMs: ended ? state.endedAtMs : null,
    endedAt: ended ? localIso(state.endedAtMs, last?.tzOffsetMin ?? first.tzOffsetMin) : null,
    endedBecause: state.status === 'aborted' ? state.reason : null,
    bathFate: state.status === 'complete' ? state.bath : null
  }
}

function substrateOf({ pot, programme }: Started): BatchRecord['substrate'] {
  const { fibre, skeins, parentBatchId, bath } = pot
  const weighed = skeins.reduce((sum, skein) => sum + skein.massG, 0)
  return { fibre, skeins, parentBatchId, bath, goodsMassG: weighed > 0 ? weighed : programme.goodsMassG }
}

function correctionsOf(
  entries: readonly PotEntry[],
  { applied }: CorrectedEntries,
  { pot, programme }: Started,
  units: Units
): CorrectionRecord[] {
  const byKey = new Map(entries.map((entry) => [keyOf(entry), entry]))
  return entries.flatMap((entry): CorrectionRecord[] => {
    if (entry.event.type !== 'Corrected') return []
    const { entry: ref, field, was, now, why } = entry.event
    const target = byKey.get(keyOf(ref))
    const what = target ? eventWords(target.event, programme, units) : 'an entry that is not there'
    return [{ entry: ref, what, field, was, now, why, applied: applied.has(keyOf(entry)), said: saidOf(entry, pot.by) }]
  })
}

/** What a person did and took back; what only followed from it is not told again. */
function withdrawnOf(
  entries: readonly PotEntry[],
  withdrawnBy: Map<string, PotEntry>,
  { pot, programme }: Started,
  units: Units
): WithdrawnRecord[] {
  return entries.flatMap((entry): WithdrawnRecord[] => {
    const by = withdrawnBy.get(keyOf(entry))
    if (!by) return []
    const what = eventWords(entry.event, programme, units)
    return [{ what, said: saidOf(entry, pot.by), withdrawn: saidOf(by, pot.by) }]
  })
}

/** Read by time; where times are equal, in the order of writing. */
function journalOf(
  { entries, changed }: CorrectedEntries,
  withdrawnBy: Map<string, PotEntry>,
  { pot, programme }: Started,
  units: Units
): JournalLine[] {
  return entries
    .map((entry) => ({
      type: entry.event.type,
      words: eventWords(entry.event, programme, units),
      path: 'path' in entry.event ? entry.event.path : null,
      withdrawn: withdrawnBy.has(keyOf(entry)),
      corrected: changed.has(keyOf(entry)),
      said: saidOf(entry, pot.by)
    }))
    .sort((a, b) => a.said.atMs - b.said.atMs)
}
