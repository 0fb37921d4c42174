// What an undo would take back, in words. It is the latest act of a person, not the latest step that closed: a clock may
// have closed more since.
import type { LiveState } from '../../../core/pot/state.ts'
import type { Step } from '../../../core/protocol/model.ts'
import { stepAt } from '../../../core/protocol/tree.ts'

/** "acid is in", for a line that says what was written down. */
export function undoDone(state: LiveState): string {
  const step = closing(state)
  return step ? step.done : (deeds[state.undo?.type ?? ''] ?? 'last act')
}

/** "Acid 2", for a pad. */
export function undoName(state: LiveState): string {
  const step = closing(state)
  return step ? step.knot : (deeds[state.undo?.type ?? ''] ?? 'last act')
}

/** What an act at its step is written down as, first of all. */
const atStep: readonly string[] = ['Dosed', 'StepClosed', 'Answered', 'HeatSet', 'YarnMoved', 'Looked', 'ConditionMet']

function closing({ undo, programme }: LiveState): Step | null {
  return undo !== null && undo.path !== null && atStep.includes(undo.type) ? stepAt(programme, undo.path) : null
}

const deeds: Record<string, string> = {
  TemperatureRead: 'reading',
  PhRead: 'pH reading',
  Judged: 'judgement',
  HeatSet: 'heat change',
  YarnMoved: 'skeins moved',
  Dosed: 'unplanned dose',
  DoseWentElsewhere: 'dose elsewhere',
  SkeinsSwapped: 'swap',
  ToppedUp: 'top-up',
  DeedDone: 'deed',
  BurnerChanged: 'burner',
  DueMoved: 'not yet',
  NoteWritten: 'note',
  ResultTold: 'result',
  PhotoNoted: 'photo',
  VoiceNoted: 'voice note',
  HandedOver: 'hand-over',
  Held: 'stop',
  Resumed: 'go on',
  TroubleBegan: 'trouble',
  TroubleEnded: 'settled'
}
