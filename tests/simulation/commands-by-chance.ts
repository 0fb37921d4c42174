// What people may say to a pot: what fits the moment, and what does not.
import type { PotCommand } from '../../src/core/pot/commands.ts'
import { deedWords } from '../../src/core/pot/events.ts'
import type { MediaBytes } from '../../src/core/pot/media.ts'
import type { ActiveStep, PotState } from '../../src/core/pot/state.ts'
import type { Amount, Step } from '../../src/core/protocol/model.ts'
import { stepAt, stepsOf } from '../../src/core/protocol/tree.ts'
import type { PotEntry } from '../../src/session/ports.ts'
import { MIN } from '../core/pot/programmes.ts'
import { anyAnswer, anyPh, hopedFor } from './answers.ts'
import type { Chance } from './chance.ts'

export type Known = Exclude<PotState, { status: 'idle' }>

export function amountOf(chance: Chance, of = 'vinegar'): Amount {
  const value = chance.of(0.03) ? -1 : chance.whole(1, 60)
  return { value, unit: 'mL', of, asEntered: `${value} mL` }
}

/** What the record still lacks to close a step. */
export function recordCommand(chance: Chance, path: string, item: Step['records'][number]): PotCommand {
  switch (item) {
    case 'temperature':
      return { type: 'ReadTemperature', tempC: chance.whole(20, 95) }
    case 'ph':
      return { type: 'ReadPh', reading: { kind: 'unreadable' } }
    case 'residue':
      return { type: 'Judge', of: 'bath', grade: 'clear', hue: null }
    case 'photo':
      return { type: 'NotePhoto', what: 'the bath' }
    case 'note':
      return { type: 'WriteNote', text: 'as planned' }
    case 'level':
    case 'wet mass':
    case 'dry mass':
      return { type: 'AnswerStep', path, answer: { kind: 'text', text: '7' } }
  }
}

export function missingRecord(state: Known, active: ActiveStep, step: Step): Step['records'][number] | null {
  if (step.behaviour === 'ask') return null
  return step.records.find((item) => (state.recorded[item] ?? Number.NEGATIVE_INFINITY) < active.startedAtMs) ?? null
}

/** An answer that fits an open step; `hoped`: one that lets it go on. Null: nobody is needed, only time. */
export function answerFor(chance: Chance, state: Known, active: ActiveStep, hoped: boolean): PotCommand | null {
  const step = stepAt(state.programme, active.path)
  if (!step) return null
  const { path } = step
  const missing = missingRecord(state, active, step)
  if (missing !== null) return recordCommand(chance, path, missing)
  if (step.question && step.behaviour === 'ask') {
    return { type: 'AnswerStep', path, answer: hoped ? hopedFor(step.question) : anyAnswer(chance, step.question) }
  }
  if (step.ramp) return { type: 'ReadTemperature', tempC: hoped ? step.ramp.lowC : chance.whole(15, 95) }
  if (active.remainingMs !== null) return { type: 'ReadTemperature', tempC: hoped ? 50 : chance.whole(15, 95) }
  const until = step.wait?.until.find((u, i) => u.kind !== 'moment' && !active.met.includes(i))
  if (until?.kind === 'temperature') {
    const tempC = hoped ? (until.going === 'down' ? until.highC : until.lowC) : chance.whole(15, 95)
    return { type: 'ReadTemperature', tempC: tempC ?? 50 }
  }
  if (until?.kind === 'judgement') {
    const answer = hoped ? hopedFor(until.question) : anyAnswer(chance, until.question)
    return { type: 'AnswerStep', path, answer }
  }
  if (step.wait && until === undefined) return null
  if (step.dose && !hoped && chance.of(0.5))
    return { type: 'MarkDone', path, added: amountOf(chance, step.dose.amount.of) }
  return { type: 'MarkDone', path }
}

const chances = {
  AnswerStep: 6,
  MarkDone: 5,
  NotYet: 4,
  Skip: 3,
  EndEarly: 3,
  MarkLooked: 2,
  DoOnceMore: 3,
  MoveDeadline: 3,
  AddUnplanned: 3,
  ReportAddedElsewhere: 1,
  TopUp: 2,
  PutSkeinsIn: 2,
  TakeSkeinsOut: 2,
  SwapSkeins: 2,
  ChangeBurner: 1,
  ChangeHeat: 3,
  ReadTemperature: 5,
  ReadPh: 2,
  Judge: 2,
  CallTrouble: 2,
  SettleTrouble: 2,
  HandOver: 1,
  Hold: 2,
  Resume: 2,
  WriteNote: 4,
  NotePhoto: 2,
  ShowCaution: 2,
  Undo: 6,
  Correct: 3,
  Abort: 0.15,
  Finish: 1,
  // Taken out of the notes, or the days of all seeds known so far would be others.
  NoteDeed: 0,
  ShiftClock: 0
} satisfies Partial<Record<PotCommand['type'], number>>

type Anything = Exclude<keyof typeof chances, 'NoteDeed' | 'ShiftClock'>

/** Any command at all, whether it fits or not; most of the time about something that is open. */
export function anyCommand(chance: Chance, state: Known, nowMs: number, entries: readonly PotEntry[]): PotCommand {
  const type = chance.weighed<Anything>(chances)
  const path = anyPath(chance, state)
  const reason = chance.of(0.05) ? ' ' : 'it is better so'
  const open = state.active.find((a) => a.path === path)
  switch (type) {
    case 'AnswerStep': {
      const question = stepAt(state.programme, path)?.question ?? { kind: 'text', ask: 'what' }
      return { type, path, answer: anyAnswer(chance, question) }
    }
    case 'MarkDone':
      return chance.of(0.2) ? { type, path, added: amountOf(chance) } : { type, path }
    case 'NotYet':
      return { type, path, byMs: chance.of(0.05) ? 0 : chance.whole(1, 15) * MIN, reason }
    case 'Skip':
    case 'EndEarly':
      return { type, path, reason }
    case 'DoOnceMore':
      return { type, path: anyEnded(chance, state) ?? path, reason }
    case 'MarkLooked':
      return { type, path }
    case 'MoveDeadline':
      return { type, path, dueAtMs: (open?.startedAtMs ?? nowMs) + chance.whole(-1, 40) * MIN, reason }
    case 'ReportAddedElsewhere':
      return { type, path, amount: amountOf(chance), toPotId: chance.of(0.2) ? state.pot.potId : 'another' }
    case 'Correct':
      return correction(chance, entries)
    default:
      return besides(chance, type, state, nowMs, path)
  }
}

type Besides = Exclude<
  Anything,
  | 'AnswerStep'
  | 'MarkDone'
  | 'NotYet'
  | 'Skip'
  | 'EndEarly'
  | 'DoOnceMore'
  | 'MarkLooked'
  | 'MoveDeadline'
  | 'ReportAddedElsewhere'
  | 'Correct'
>

/** Commands that are about the pot, not about one step. */
function besides(chance: Chance, type: Besides, state: Known, nowMs: number, path: string): PotCommand {
  const tags = chance.of(0.05) ? ['nobody knows it'] : state.pot.skeins.map((s) => s.tag)
  switch (type) {
    case 'AddUnplanned':
      return { type, amount: amountOf(chance) }
    case 'TopUp':
      return { type, volumeML: chance.whole(0, 500), tempC: 40, levelBefore: '6 cm', levelAfter: '7 cm' }
    case 'PutSkeinsIn':
    case 'TakeSkeinsOut':
      return { type, tags }
    case 'SwapSkeins':
      return { type, withPotId: 'another', gave: tags.slice(0, 1), got: [{ tag: `S${chance.whole(2, 9)}`, massG: 50 }] }
    case 'ChangeBurner':
      return { type, burner: chance.pick(['front left', 'back right']) }
    case 'ChangeHeat':
      return { type, on: chance.of(0.6), level: chance.of(0.5) ? 'low' : null }
    case 'ReadTemperature':
      return { type, tempC: chance.of(0.03) ? 200 : chance.whole(15, 95) }
    case 'ReadPh':
      return { type, reading: anyPh(chance) }
    case 'Judge':
      return { type, of: 'bath', grade: chance.pick(['clear', 'trace', 'half'] as const), hue: null }
    case 'CallTrouble':
      return { type, kind: chance.pick(['boil-over', 'power-cut', 'must-leave', 'burn'] as const) }
    case 'SettleTrouble': {
      const outcome = chance.pick(['absorb', 'restart-step', 'off-protocol'] as const)
      const beganAtMs = nowMs - chance.whole(-1, 5) * MIN
      return { type, beganAtMs, tempC: chance.of(0.5) ? chance.whole(20, 90) : null, outcome }
    }
    case 'HandOver':
      return { type, to: 'a second pair of hands' }
    case 'Hold':
      return { type, reason: null }
    case 'Resume':
      return { type, heldTimeCounts: chance.of(0.5) }
    case 'WriteNote': {
      const text = chance.of(0.05) ? '' : 'cloudy'
      if (nowMs % 3 === 1) return { type: 'TellResult', what: 'rinses', own: false, value: { kind: 'text', text } }
      return nowMs % 3 === 0 ? deedAt(nowMs) : { type, text }
    }
    case 'NotePhoto':
      return aboutMedia(nowMs)
    case 'ShowCaution':
      return { type, caution: chance.pick(['steam', 'acid']), path }
    case 'Undo':
      return { type }
    case 'Abort':
      return { type, reason: chance.of(0.1) ? '' : 'no time left' }
    case 'Finish':
      return { type, bath: chance.pick(['dropped', 'kept-hot', 'stored'] as const) }
  }
}

/** A photo with or without its picture, a voice note, one let go. Told by the clock and not by chance: a draw more would
 * make every pinned day another one. */
function aboutMedia(nowMs: number): PotCommand {
  const minute = Math.floor(nowMs / MIN)
  const sha256 = String(minute % 8).repeat(64)
  const named = { sha256, bytes: 4 }
  switch (minute % 4) {
    case 0:
      return { type: 'NotePhoto', what: 'the bath' }
    case 1:
      return { type: 'NotePhoto', what: 'the bath', media: { ...named, mime: 'image/jpeg', widthPx: 8, heightPx: 6 } }
    case 2:
      return { type: 'NoteVoice', media: { ...named, mime: 'audio/webm', lengthMs: 900 } }
    default:
      return { type: 'TrimMedia', sha256, why: 'to make room' }
  }
}

/** The bytes that a command names. */
export function bytesOf(command: PotCommand): MediaBytes[] {
  if (command.type !== 'NotePhoto' && command.type !== 'NoteVoice') return []
  const { media } = command
  return media ? [{ sha256: media.sha256, mime: media.mime, bytes: new ArrayBuffer(media.bytes) }] : []
}

function anyPath(chance: Chance, state: Known): string {
  if (chance.of(0.02)) return 'no such step'
  if (state.active.length > 0 && chance.of(0.8)) return chance.pick(state.active).path
  return chance.pick(stepsOf(state.programme))?.path ?? 'no such step'
}

function anyEnded(chance: Chance, state: Known): string | null {
  const done = stepsOf(state.programme).filter((s) => state.ended[s.path] !== undefined)
  return done.length > 0 ? chance.pick(done).path : null
}

function correction(chance: Chance, entries: readonly PotEntry[]): PotCommand {
  const { writerId, seq } = entries.length > 0 ? chance.pick(entries) : { writerId: 'nobody', seq: 1 }
  const why = chance.of(0.05) ? '' : 'misread'
  return { type: 'Correct', entry: { writerId, seq }, field: 'tempC', was: '80', now: '82', why }
}

/** Drawn from the hour alone: no die that others need is thrown for it. */
function deedAt(nowMs: number): PotCommand {
  const no = Math.floor(nowMs / 3)
  const word = deedWords[no % deedWords.length] ?? 'turn'
  const say = word === 'lower' ? ['1/4 of the skein', 'half the skein', 'deep'][no % 3] : 'Stir the bath'
  return { type: 'NoteDeed', word, say: word === 'lower' || word === 'do' ? (say ?? '') : '' }
}
