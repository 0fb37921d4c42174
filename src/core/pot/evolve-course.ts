// The part of evolve about the course of a pot as a whole: alerts, limits, trouble, notes.
import type { PotEvent } from './events.ts'
import { newCurve } from './evolve-bath.ts'
import type { Run } from './state.ts'

type CourseEvent = Extract<
  PotEvent,
  {
    type:
      | 'DeedDone'
      | 'BurnerChanged'
      | 'AlertRaised'
      | 'WentOffProtocol'
      | 'GapBroken'
      | 'TroubleBegan'
      | 'TroubleEnded'
      | 'HandedOver'
      | 'NoteWritten'
      | 'ResultTold'
      | 'PhotoNoted'
      | 'VoiceNoted'
      | 'MediaTrimmed'
      | 'CautionShown'
      | 'Withdrawn'
      | 'Corrected'
      | 'StepsDone'
  }
>

export function assignCourse(run: Run, event: CourseEvent, atMs: number): void {
  switch (event.type) {
    case 'BurnerChanged':
      run.pot = { ...run.pot, burner: event.burner }
      newCurve(run, atMs)
      return
    case 'AlertRaised':
      run.raised[event.key] = atMs
      return
    case 'WentOffProtocol':
      run.offProtocol.push(event.why)
      return
    case 'GapBroken':
      run.counts[`over ${event.from} ${event.to}`] = run.counts[`moment ${event.from}`] ?? 0
      return
    case 'TroubleBegan':
      run.trouble = { kind: event.kind, sinceMs: atMs }
      newCurve(run, atMs)
      return
    case 'TroubleEnded':
      run.trouble = null
      newCurve(run, atMs)
      return
    case 'HandedOver':
      run.handedTo = event.to
      return
    case 'NoteWritten':
    case 'VoiceNoted':
      run.recorded.note = atMs
      return
    case 'PhotoNoted':
      run.recorded.photo = atMs
      return
    case 'CautionShown':
      if (!run.cautionsShown.includes(event.caution)) run.cautionsShown.push(event.caution)
      return
    case 'StepsDone':
      run.stepsDone = true
      return
    case 'DeedDone':
    case 'ResultTold':
    case 'MediaTrimmed':
    case 'Withdrawn':
    case 'Corrected':
      return
  }
}
