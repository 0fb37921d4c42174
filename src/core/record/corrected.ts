// Correction changes what the record says, never the route already taken: the corrected value replaces the old one in
// what is read, and the old one stays beside it with the reason.
import type { Entry } from '../pot/entry.ts'
import type { Answer, EntryRef, PotEvent } from '../pot/events.ts'
import { grades } from '../protocol/model.ts'
import { resultKind } from './results.ts'

/** What of an entry can be said anew. `field` goes into the Correct command; values are written in the unit named. */
export type Correctable = {
  field: string
  label: string
  unit: string
  was: string
  kind: 'number' | 'text'
  choices?: readonly string[]
}

const one = (field: string, label: string, was: number | string | null, unit = ''): Correctable => ({
  field,
  label,
  unit,
  was: was === null ? '' : String(was),
  kind: typeof was === 'number' ? 'number' : 'text'
})

/** The fields of an event that a correction may change: facts somebody told. What the engine worked out is none. */
export function correctableFields(event: PotEvent): Correctable[] {
  switch (event.type) {
    case 'Dosed':
      return [
        one('added.value', `${event.of} added`, event.added.value, event.added.unit),
        one('of', 'of what', event.of)
      ]
    case 'DoseWentElsewhere':
      return [one('amount.value', `${event.of}`, event.amount.value, event.amount.unit)]
    case 'TemperatureRead':
      return [one('tempC', 'Temperature', event.tempC, '°C')]
    case 'PhRead':
      return event.reading.kind === 'value' ? [one('reading.ph', 'pH', event.reading.ph)] : []
    case 'Judged':
      return [{ ...one('grade', 'Grade', event.grade), choices: grades }, one('hue', 'Hue', event.hue)]
    case 'Answered':
      return answerFields(event.answer)
    case 'ToppedUp':
      return [one('volumeML', 'Water', event.volumeML, 'mL')]
    case 'NoteWritten':
      return [one('text', 'Note', event.text)]
    case 'ResultTold':
      return resultField(event)
    case 'PhotoNoted':
      return [one('what', 'Photo', event.what)]
    case 'DeedDone':
      return event.word === 'do' ? [one('say', 'What was done', event.say)] : []
    case 'BurnerChanged':
      return [one('burner', 'Burner', event.burner)]
    case 'PotStarted':
      return startFields(event)
    case 'VoiceNoted':
    case 'MediaTrimmed':
    case 'StepStarted':
    case 'StepClosed':
    case 'Ended':
    case 'RoundStarted':
    case 'RoundsEnded':
    case 'ChoiceTaken':
    case 'MomentMarked':
    case 'DueMoved':
    case 'HeatSet':
    case 'ConditionMet':
    case 'Looked':
    case 'YarnMoved':
    case 'SkeinsSwapped':
    case 'AlertRaised':
    case 'WentOffProtocol':
    case 'GapBroken':
    case 'Held':
    case 'Resumed':
    case 'TroubleBegan':
    case 'TroubleEnded':
    case 'HandedOver':
    case 'CautionShown':
    case 'ClockShifted':
    case 'Withdrawn':
    case 'Corrected':
    case 'StepsDone':
    case 'Finished':
    case 'Aborted':
      return []
  }
}

function startFields({ pot }: Extract<PotEvent, { type: 'PotStarted' }>): Correctable[] {
  return [
    one('pot.colourway', 'Colourway', pot.colourway),
    one('pot.fibre', 'Fibre', pot.fibre),
    ...pot.skeins.flatMap((skein, i) => [
      one(`pot.skeins.${i}.tag`, `Tag of skein ${i + 1}`, skein.tag),
      one(`pot.skeins.${i}.massG`, `Weight of ${skein.tag}`, skein.massG, 'g')
    ])
  ]
}

function resultField({ what, own, value }: Extract<PotEvent, { type: 'ResultTold' }>): Correctable[] {
  const { label, choices } = resultKind(what, own)
  if (value.kind === 'number') return [one('value.value', label, value.value, value.unit)]
  return [{ ...one('value.text', label, value.text), ...(choices ? { choices } : {}) }]
}

function answerFields(answer: Answer): Correctable[] {
  if (answer.kind === 'number') return [one('answer.value', 'Value', answer.value, answer.unit)]
  return answer.kind === 'text' ? [one('answer.text', 'Answer', answer.text)] : []
}

export type CorrectedEntries = {
  entries: Entry<PotEvent>[]
  /** Keys of the entries that say something new. */
  changed: Set<string>
  /** Keys of the Corrected entries whose value could be said anew. */
  applied: Set<string>
}

export const keyOf = (ref: EntryRef): string => `${ref.writerId} ${ref.seq}`

/** The entries as they read after all corrections, in their order; the entries given are left as they are. */
export function withCorrections(entries: readonly Entry<PotEvent>[]): CorrectedEntries {
  const byKey = new Map(entries.map((entry) => [keyOf(entry), entry]))
  const changed = new Set<string>()
  const applied = new Set<string>()
  for (const entry of entries) {
    const { event } = entry
    if (event.type !== 'Corrected') continue
    const target = byKey.get(keyOf(event.entry))
    const said = target && sayAnew(target, event.field, event.now)
    if (!target || !said) continue
    byKey.set(keyOf(target), said)
    changed.add(keyOf(target))
    applied.add(keyOf(entry))
  }
  return { entries: entries.map((entry) => byKey.get(keyOf(entry)) ?? entry), changed, applied }
}

function sayAnew(entry: Entry<PotEvent>, field: string, now: string): Entry<PotEvent> | null {
  const known = correctableFields(entry.event).find((each) => each.field === field)
  if (!known) return null
  const value = known.kind === 'number' ? Number(now) : now
  if (typeof value === 'number' && (now.trim() === '' || !Number.isFinite(value))) return null
  if (known.choices && !known.choices.includes(now)) return null
  const event = JSON.parse(JSON.stringify(entry.event)) as Record<string, unknown>
  const steps = field.split('.')
  const last = steps.pop() as string
  let place: Record<string, unknown> = event
  for (const step of steps) place = place[step] as Record<string, unknown>
  place[last] = value
  // The cups said the grade that is taken back.
  if (field === 'grade') delete event.cups
  return { ...entry, event: event as unknown as PotEvent }
}
