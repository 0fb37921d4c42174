// Each event as one plain line, as the journal is read.
import type { Answer, DeedWord, PhReading, PotEvent, TroubleKind } from '../pot/events.ts'
import { isFree } from '../protocol/free-pot.ts'
import type { Programme } from '../protocol/model.ts'
import type { KeptNumbers } from '../protocol/numbers/kept.ts'
import { stepAt } from '../protocol/tree.ts'
import { metricUnits, showDose, showDuration, showTemperature, showVolume, type Units } from '../quantity/index.ts'
import { cupsWords } from './cups-words.ts'
import type { JudgementRecord } from './record.ts'
import { resultKind, resultWords } from './results.ts'

export function labelOf(programme: Programme, path: string | null): string {
  return path === null ? '' : (stepAt(programme, path)?.knot ?? path)
}

/** `label`: the step it belongs to; `at`: the same in brackets, where there is one. */
type About = { label: string; at: string; units: Units; free: boolean }
type Tellers = { [T in PotEvent['type']]: (event: Extract<PotEvent, { type: T }>, about: About) => string }

/** One line for one event, in the dyer's units. */
export function eventWords(event: PotEvent, programme: Programme, units: Units = metricUnits): string {
  const label = 'path' in event ? labelOf(programme, event.path) : ''
  const free = isFree(programme)
  const tell = tellers[event.type] as (event: PotEvent, about: About) => string
  return tell(event, { label, at: label === '' || free ? '' : ` (${label})`, units, free })
}

// A table and not a switch: the compiler names the event that is missing.
const tellers: Tellers = {
  PotStarted: (e) => `Started: ${e.protocol.title}, version ${e.protocol.version}.${phEstimated(e.numbers)}`,
  StepStarted: (e, { label }) => (e.side ? `${label} begins once more.` : `${label} begins.`),
  StepClosed: (e, { label }) => closedWords(e, label),
  Ended: (e) => `${lastName(e.path)} is over.`,
  RoundStarted: (e) => `${lastName(e.path)}: round ${e.round} begins.`,
  RoundsEnded: (e) => `${lastName(e.path)} ends after ${count(e.rounds, 'round')}: ${roundsWhy[e.how]}.`,
  ChoiceTaken: (e) => `${lastName(e.path)}: ${e.answer}.`,
  MomentMarked: (e) => `Moment: ${e.name}.`,
  DueMoved: (e, { label }) => `${label}: time moved, ${movedWhy[e.why]}${reasonOf(e.reason)}.`,
  ConditionMet: (_, { label }) => `${label}: one condition is met.`,
  Looked: (_, { label }) => `${label}: water level looked at.`,
  AlertRaised: (e, { at }) => `Called${at}${e.told === undefined ? '' : toldWords(e.told)}.`,
  WentOffProtocol: (e, { at }) => `Off protocol${at}: ${e.why}.`,
  GapBroken: (e) => `${e.to} did not follow ${e.from} in time.`,
  Withdrawn: () => 'Undone: the last act is withdrawn.',
  Corrected: (e) => `Corrected ${fieldWords(e.field)}: ${e.was || 'nothing'} becomes ${e.now || 'nothing'}. ${e.why}`,
  StepsDone: () => 'All steps are done.',
  Dosed: (e, { at, units, free }) => {
    const other = e.fromPotId === null ? '' : ', meant for another pot'
    return `${showDose(e.added, units)} of ${e.of} in${at}${e.planned === null && !free ? ', unplanned' : ''}${other}.`
  },
  DoseWentElsewhere: (e, { at, units }) => `${showDose(e.amount, units)} of ${e.of} went into another pot${at}.`,
  Answered: (e, { at, units }) => `${answerWords(e.answer, units)}${rangeWords(e.inRange)}${at}.`,
  TemperatureRead: (e, { at, units }) => `${showTemperature(e.tempC, units)}${rangeWords(e.inRange)}${at}.`,
  PhRead: (e, { at }) => `${phWords(e.reading)}${lotWords(e.lot)}${at}.`,
  Judged: (e, { at }) => `${e.of}: ${gradeWords(e)}${at}.`,
  HeatSet: (e) => `Heat ${e.on ? 'on' : 'off'}${e.level === null ? '' : `, ${e.level}`}.`,
  YarnMoved: (e, { at }) => {
    const place = e.place === 'in' ? 'in the bath' : 'out of the bath'
    return `Yarn ${place}${e.tags.length > 0 ? `: ${e.tags.join(', ')}` : ''}${at}.`
  },
  SkeinsSwapped: (e) =>
    `Skeins swapped: gave ${e.gave.join(', ') || 'none'}, got ${e.got.map((s) => s.tag).join(', ') || 'none'}.`,
  ToppedUp: (e, { units }) => toppedUpWords(e, units),
  DeedDone: (e) => `${deedSay(e.word, e.say)}.`,
  BurnerChanged: (e) => `Moved to the burner ${e.burner}.`,
  Held: (e) => `Stopped, still dyeing${reasonOf(e.reason)}.`,
  Resumed: (e) =>
    `Went on after ${showDuration(e.heldMs)}; that time ${e.heldTimeCounts ? 'counts' : 'does not count'}.`,
  TroubleBegan: (e) => `Trouble: ${troubleNames[e.kind]}.`,
  TroubleEnded: (e) => `Trouble settled: ${troubleThen[e.outcome]}.`,
  HandedOver: (e) => `Handed over to ${e.to}.`,
  NoteWritten: (e, { at }) => `Note${at}: ${e.text}`,
  ResultTold: (e) => `${resultKind(e.what, e.own).label}: ${resultWords(e.value)}.`,
  PhotoNoted: (e, { at }) => `Photo${at}: ${e.what}`,
  VoiceNoted: (e, { at }) =>
    `Voice note${at}, ${showDuration(Math.max(1, Math.round(e.media.lengthMs / 1000)) * 1000)}.`,
  MediaTrimmed: (e) => `A picture or a voice note was let go: ${e.why}.`,
  CautionShown: (e, { at }) => `Caution shown${at}: ${e.caution}.`,
  ClockShifted: (e) => `The clock was set by ${showDuration(e.byMs)}.`,
  Finished: (e) => `Finished. Bath ${bathFates[e.bath]}.`,
  Aborted: (e) => `Ended early: ${e.reason}.`
}

function toldWords(told: readonly string[]): string {
  return told.length === 0 ? ', and nothing could tell of it' : ` by ${told.join(', ')}`
}

const roundsWhy = {
  enough: 'enough',
  all: 'all rounds done',
  limit: 'the limit is reached',
  skipped: 'skipped'
} as const

const movedWhy = {
  'not-yet': 'not yet',
  reading: 'after a reading',
  'outside-range': 'outside its range, the count stands',
  'inside-range': 'back in its range, the count goes on',
  gap: 'a gap must be kept',
  held: 'by the time it was stopped',
  'clock-set': 'the clock was set',
  moved: 'by the dyer',
  trouble: 'after trouble',
  moment: 'its moment has come'
} as const

const troubleThen = {
  absorb: 'absorb the time',
  'restart-step': 'the step starts again',
  'off-protocol': 'off protocol'
} as const

export const troubleNames: Record<TroubleKind, string> = {
  'boil-over': 'boil-over',
  'power-cut': 'power cut',
  'gas-out': 'gas out',
  'dropped-skein': 'dropped skein',
  burn: 'burn',
  'must-leave': 'had to leave',
  other: 'other'
}

export const bathFates = { dropped: 'dropped', 'kept-hot': 'kept hot', stored: 'stored' } as const

const deedNames: Record<Exclude<DeedWord, 'do'>, string> = {
  lift: 'Lifted',
  lower: 'Lowered to',
  turn: 'Turned',
  rinse: 'Rinsed',
  squeeze: 'Squeezed',
  spin: 'Spun',
  air: 'Out, into the air'
}

/** A told deed in words: "Lowered to 1/4 of the skein". */
export function deedSay(word: DeedWord, say: string): string {
  return word === 'do' ? say : `${deedNames[word]}${say === '' ? '' : ` ${say}`}`
}

function closedWords(event: Extract<PotEvent, { type: 'StepClosed' }>, label: string): string {
  const late = event.lateMs > 0 ? `, ${showDuration(event.lateMs)} late` : ''
  const how = {
    done: 'done',
    clock: 'time is up',
    reading: 'reached',
    answered: 'answered',
    early: 'ended early',
    skipped: 'skipped'
  }
  return `${label}: ${how[event.how]}${late}${reasonOf(event.reason)}.`
}

function toppedUpWords(event: Extract<PotEvent, { type: 'ToppedUp' }>, units: Units): string {
  const warm = event.tempC === null ? '' : ` at ${showTemperature(event.tempC, units)}`
  const level =
    event.levelBefore === null && event.levelAfter === null
      ? ''
      : `, level ${event.levelBefore ?? 'not read'} to ${event.levelAfter ?? 'not read'}`
  return `Topped up with ${showVolume(event.volumeML, units)}${warm}${level}.`
}

/** 'tint, red', and beside which cup. */
export function gradeWords({ grade, hue, cups }: Pick<JudgementRecord, 'grade' | 'hue' | 'cups'>): string {
  return `${grade}${hue ? `, ${hue}` : ''}${cups ? `, ${cupsWords(cups)}` : ''}`
}

/** The answer to a question, in words. */
export function answerWords(answer: Answer, units: Units): string {
  switch (answer.kind) {
    case 'temperature':
      return showTemperature(answer.tempC, units)
    case 'ph':
      return phWords(answer.reading)
    case 'grade':
      return gradeWords(answer)
    case 'choice':
      return answer.answer
    case 'number':
      return `${answer.value} ${answer.unit}`.trim()
    case 'text':
      return answer.text
  }
}

export function lotWords(lot: string | undefined): string {
  return lot === undefined ? '' : `, strips of lot ${lot}`
}

export function phWords(reading: PhReading): string {
  switch (reading.kind) {
    case 'value':
      return `pH ${reading.ph}`
    case 'between':
      return `pH between ${reading.low} and ${reading.high}`
    case 'unreadable':
      return 'pH strip stained, can’t be read'
  }
}

export function rangeWords(inRange: boolean | null): string {
  return inRange === null ? '' : inRange ? ', in range' : ', outside its range'
}

function reasonOf(reason: string | null): string {
  return reason === null || reason === '' ? '' : `: ${reason}`
}

function count(n: number, word: string): string {
  return `${n} ${word}${n === 1 ? '' : 's'}`
}

const fields: Record<string, string> = {
  'added.value': 'amount added',
  'amount.value': 'amount',
  of: 'what went in',
  tempC: 'temperature, °C',
  'reading.ph': 'pH',
  grade: 'grade',
  hue: 'hue',
  'answer.value': 'answer',
  'answer.text': 'answer',
  'value.value': 'result',
  'value.text': 'result',
  volumeML: 'water, mL',
  text: 'note',
  what: 'photo',
  burner: 'burner',
  say: 'what was done',
  'pot.colourway': 'colourway',
  'pot.fibre': 'fibre'
}

/** A corrected field in words; one that this version does not know keeps its own name. */
export function fieldWords(field: string): string {
  const skein = /^pot\.skeins\.(\d+)\.(tag|massG)$/.exec(field)
  if (skein) return `${skein[2] === 'tag' ? 'tag' : 'weight, g,'} of skein ${Number(skein[1]) + 1}`
  return fields[field] ?? field
}

/** The last portion's: what the whole of the acid was to come to. */
function phEstimated(numbers: KeptNumbers | undefined): string {
  const last = numbers?.ph.at(-1)
  if (!last) return ''
  return ` pH estimated ${last.lowPh.toFixed(1)} to ${last.highPh.toFixed(1)} after ${last.after}.`
}

function lastName(path: string): string {
  return path.slice(path.lastIndexOf('/') + 1)
}
