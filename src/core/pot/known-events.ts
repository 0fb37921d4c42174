import type { PotEvent } from './events.ts'

// One line an event: the compiler names the one that is missing here.
const known: Record<PotEvent['type'], true> = {
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

/** Does this version have a word for the event? A record with one it has no word for opens read-only. */
export function isKnownEvent(type: string): boolean {
  return Object.hasOwn(known, type)
}
