// What was read, judged, noted and shown.
import type { Entry } from '../pot/entry.ts'
import type { PhReading, PotEvent } from '../pot/events.ts'
import { type Made, phOfDoses } from '../pot/expected/ph.ts'
import { showTemperature, type Units } from '../quantity/index.ts'
import { answerWords, labelOf, lotWords, phWords } from './event-words.ts'
import type { CautionRecord, JudgementRecord, NoteRecord, ReadingRecord, Said } from './record.ts'

type Started = Extract<PotEvent, { type: 'PotStarted' }>
type Heard = { entry: Entry<PotEvent>; said: Said }

export function readingsOf(heard: readonly Heard[], started: Started, units: Units): ReadingRecord[] {
  const { programme, pot } = started
  const made: Made = { pot, programme, doses: [], toppedUpML: 0 }
  return heard.flatMap(({ entry: { event, atMs }, said }) => {
    if (event.type === 'Dosed') made.doses = [...made.doses, { ...event, atMs }]
    if (event.type === 'ToppedUp') made.toppedUpML += event.volumeML
    const read = readingOf(event, said, units)
    if (!read) return []
    const named = { ...read, label: read.path === null ? read.label : labelOf(programme, read.path) }
    return [named.what === 'ph' ? withEstimate(named, made) : named]
  })
}

function withEstimate(read: ReadingRecord, made: Made): ReadingRecord {
  const estimatedPh = phOfDoses(made)
  if (estimatedPh === null) return read
  const { low, high } = estimatedPh
  const words = `${read.words}; estimated ${low} to ${high} without the yarn`
  return { ...read, estimatedPh, words }
}

function readingOf(event: PotEvent, said: Said, units: Units): ReadingRecord | null {
  const base = { path: null, label: '', tempC: null, ph: null, inRange: null, said }
  if (event.type === 'TemperatureRead') {
    const { path, tempC, inRange } = event
    const words = showTemperature(tempC, units, { digits: 1 })
    return { ...base, path, what: 'temperature', tempC, words, inRange }
  }
  if (event.type === 'PhRead') {
    return {
      ...base,
      path: event.path,
      what: 'ph',
      ph: phRange(event.reading),
      words: `${phWords(event.reading)}${lotWords(event.lot)}`
    }
  }
  if (event.type === 'Answered') {
    const { path, answer, inRange } = event
    // Temperature, pH and grade are told by events of their own beside the answer.
    if (answer.kind === 'temperature' || answer.kind === 'ph' || answer.kind === 'grade') return null
    return { ...base, path, what: answer.kind, words: answerWords(answer, units), inRange }
  }
  if (event.type === 'ToppedUp') {
    const words = `level ${event.levelBefore ?? 'not read'} to ${event.levelAfter ?? 'not read'}`
    return { ...base, label: 'Topped up', what: 'level', words }
  }
  if (event.type === 'PhotoNoted') return { ...base, path: event.path, what: 'photo', words: event.what }
  return null
}

export function judgementsOf(heard: readonly Heard[]): JudgementRecord[] {
  return heard.flatMap(({ entry: { event }, said }): JudgementRecord[] => {
    if (event.type !== 'Judged') return []
    const { path, of, grade, hue, cups } = event
    return [{ path, of, grade, hue, ...(cups && { cups }), said }]
  })
}

export function notesOf(heard: readonly Heard[]): NoteRecord[] {
  return heard.flatMap(({ entry: { event }, said }) =>
    event.type === 'NoteWritten' ? [{ path: event.path, text: event.text, said }] : []
  )
}

export function cautionsOf(heard: readonly Heard[]): CautionRecord[] {
  return heard.flatMap(({ entry: { event }, said }) => {
    if (event.type === 'PotStarted') return event.cautionsShown.map((id) => ({ id, path: null, said }))
    return event.type === 'CautionShown' ? [{ id: event.caution, path: event.path, said }] : []
  })
}

function phRange(reading: PhReading): ReadingRecord['ph'] {
  switch (reading.kind) {
    case 'value':
      return { low: reading.ph, high: reading.ph }
    case 'between':
      return { low: reading.low, high: reading.high }
    case 'unreadable':
      return null
  }
}
