// What has to come up in enough days, or it is not tested: each list is held complete by the compiler or by the maker.
import type { PotCommand, RefusalCode } from '../../src/core/pot/commands.ts'
import type { PotEvent } from '../../src/core/pot/events.ts'
import type { CountKind } from './counts.ts'
import { faultKinds } from './faults.ts'
import { kinds } from './people.ts'

type Never = 'only by the session' | 'no engine code says it' | 'needs luck in many days'

const commands: Record<PotCommand['type'], true | Never> = {
  Start: true,
  MarkDone: true,
  AnswerStep: true,
  NotYet: true,
  Skip: true,
  EndEarly: true,
  MarkLooked: true,
  DoOnceMore: true,
  MoveDeadline: true,
  AddUnplanned: true,
  ReportAddedElsewhere: true,
  TopUp: true,
  PutSkeinsIn: true,
  TakeSkeinsOut: true,
  SwapSkeins: true,
  NoteDeed: true,
  ChangeBurner: true,
  ChangeHeat: true,
  ReadTemperature: true,
  ReadPh: true,
  Judge: true,
  CallTrouble: true,
  SettleTrouble: true,
  HandOver: true,
  Hold: true,
  Resume: true,
  WriteNote: true,
  TellResult: true,
  NotePhoto: true,
  NoteVoice: true,
  TrimMedia: true,
  ShowCaution: true,
  Undo: true,
  Correct: true,
  Abort: true,
  Finish: true,
  ShiftClock: 'only by the session',
  PassDue: 'only by the session'
}

const events: Record<PotEvent['type'], true> = {
  PotStarted: true,
  StepStarted: true,
  StepClosed: true,
  Ended: true,
  RoundStarted: true,
  RoundsEnded: true,
  ChoiceTaken: true,
  MomentMarked: true,
  DueMoved: true,
  ConditionMet: true,
  Looked: true,
  Dosed: true,
  DoseWentElsewhere: true,
  Answered: true,
  TemperatureRead: true,
  PhRead: true,
  Judged: true,
  HeatSet: true,
  YarnMoved: true,
  SkeinsSwapped: true,
  ToppedUp: true,
  DeedDone: true,
  BurnerChanged: true,
  AlertRaised: true,
  WentOffProtocol: true,
  GapBroken: true,
  Held: true,
  Resumed: true,
  TroubleBegan: true,
  TroubleEnded: true,
  HandedOver: true,
  NoteWritten: true,
  ResultTold: true,
  PhotoNoted: true,
  VoiceNoted: true,
  MediaTrimmed: true,
  CautionShown: true,
  ClockShifted: true,
  Withdrawn: true,
  Corrected: true,
  StepsDone: true,
  Finished: true,
  Aborted: true
}

const refusals: Record<RefusalCode, true | Never> = {
  'not-started': 'needs luck in many days',
  'already-started': true,
  ended: true,
  'no-such-step': true,
  'step-not-open': true,
  'needs-answer': true,
  'needs-record': true,
  stopped: true,
  'wrong-answer': true,
  'out-of-range': true,
  'needs-reason': true,
  'not-a-wait': true,
  'nothing-to-undo': true,
  'not-held': true,
  'already-held': true,
  'in-trouble': true,
  'not-in-trouble': true,
  'steps-left': true,
  'nothing-due': true,
  'in-the-future': true,
  'before-start': true,
  'no-such-entry': 'no engine code says it',
  'no-such-skein': true,
  empty: 'needs luck in many days',
  'too-long': 'needs luck in many days',
  'no-such-media': 'needs luck in many days',
  'no-room': 'needs luck in many days'
}

const constructs = [
  ...['act', 'dose', 'ramp', 'repeat', 'each', 'until', 'otherwise', 'choice', 'alongside'],
  ...['nested repeat', 'nested each', 'nested until', 'nested choice', 'nested alongside'],
  ...['1 pots', '2 pots', '3 pots', '4 pots'],
  ...['ask grade', 'ask temperature', 'ask ph', 'ask number', 'ask choice', 'ask text'],
  ...['until grade', 'until temperature', 'until ph', 'until number', 'until choice'],
  ...['wait on time', 'wait on temperature', 'wait on person', 'wait on moment', 'wait on judgement'],
  ...['combined wait', 'wait from a moment', 'gap at least', 'gap at most', 'gap both ways'],
  ...['late shift', 'late absorb', 'late off-protocol', 'mark', 'soft step', 'depth', 'look', 'out-of-bath limit'],
  ...['outside note', 'outside again', 'outside stop-count', 'outside off-protocol', 'heat on', 'heat off'],
  ...['record temperature', 'record ph', 'record level', 'record residue', 'record photo', 'record note'],
  ...['record wet mass', 'record dry mass']
]

const rungKinds = ['sound', 'screen', 'notices', 'speech'].flatMap((id) => [`${id} well`, `${id} out`, `${id} breaks`])
const writes = ['full', 'lost', 'conflict', 'crash-before', 'crash-after', 'slow write', 'slow, then full']
const taps = ['double tap, one id', 'double tap, two ids', 'the same tap long after', 'added to the wrong pot']

const expected = (list: Record<string, true | Never>): string[] =>
  Object.keys(list).filter((name) => list[name] === true)

export const everyKind: Partial<Record<CountKind, string[]>> = {
  construct: constructs,
  command: [...expected(commands), 'two pots at once'],
  event: expected(events),
  refusal: expected(refusals),
  outcome: ['confirmed', 'refused', 'not-owner', 'not saved, full', 'not saved, lost'],
  fault: [...faultKinds, ...writes, 'slow, then lost', 'failed reading'],
  rung: rungKinds,
  person: [...kinds, ...taps, 'said it was some minutes ago'],
  check: ['heard', 'heard though not saved', 'raised', 'replay', 'journal', 'asleep as awake', 'set back once']
}
