// What was to go in and what went in.
import type { Entry } from '../pot/entry.ts'
import type { PotEvent } from '../pot/events.ts'
import type { Amount, Programme } from '../protocol/model.ts'
import { stepsOf } from '../protocol/tree.ts'
import { labelOf } from './event-words.ts'
import type { AmountRecord, StepRecord } from './record.ts'
import { saidOf } from './said.ts'

/** All additions in the order they happened, then the planned ones that did not come. */
export function amountRecords(
  entries: readonly Entry<PotEvent>[],
  programme: Programme,
  steps: readonly StepRecord[],
  ended: boolean,
  dyer: string | null
): AmountRecord[] {
  const came = entries.flatMap((entry) => cameIn(entry, programme, dyer))
  const met = new Set(came.filter((amount) => amount.fate !== 'elsewhere').map((amount) => amount.path))
  const passedOver = new Set(steps.filter((step) => step.how === 'skipped').map((step) => step.path))
  const left = stepsOf(programme).flatMap((step): AmountRecord[] => {
    if (!step.dose || met.has(step.path)) return []
    const { amount } = step.dose
    const fate = ended || passedOver.has(step.path) ? 'not-added' : 'to-come'
    return [row(step.path, step.knot, amount.of, amount, null, fate)]
  })
  return [...came, ...left]
}

function cameIn(entry: Entry<PotEvent>, programme: Programme, dyer: string | null): AmountRecord[] {
  const { event } = entry
  if (event.type === 'Dosed') {
    const { path, of, planned, added, fromPotId } = event
    const label = path === null ? 'Unplanned' : labelOf(programme, path)
    const fate = planned === null ? 'unplanned' : 'added'
    return [{ ...row(path, label, of, planned, added, fate), otherPotId: fromPotId, said: saidOf(entry, dyer) }]
  }
  if (event.type === 'DoseWentElsewhere') {
    const label = event.path === null ? 'Elsewhere' : labelOf(programme, event.path)
    const gone = row(event.path, label, event.of, null, event.amount, 'elsewhere')
    return [{ ...gone, otherPotId: event.toPotId, said: saidOf(entry, dyer) }]
  }
  return []
}

function row(
  path: string | null,
  label: string,
  of: string,
  planned: Amount | null,
  added: Amount | null,
  fate: AmountRecord['fate']
): AmountRecord {
  const comparable = planned !== null && added !== null && planned.unit === added.unit && planned.value > 0
  const offPercent = comparable ? ((added.value - planned.value) / planned.value) * 100 : null
  return { path, label, of, planned, added, fate, offPercent, otherPotId: null, said: null }
}
