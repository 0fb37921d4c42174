import type { PotEvent } from '../core/pot/events.ts'
import type { Step } from '../core/protocol/model.ts'

/** One line of a timeline for an event, or null where it says nothing to a reader. */
export function describeEvent(event: PotEvent, stepAt: (path: string) => Step | null): string | null {
  const call = (path: string | null): string => (path === null ? '' : (stepAt(path)?.call ?? path))
  switch (event.type) {
    case 'PotStarted':
      return 'start'
    case 'StepStarted': {
      const step = stepAt(event.path)
      return step && (step.wait || step.ramp) ? `${event.path}: ${step.doing}` : null
    }
    case 'StepClosed':
      return closedLine(event, stepAt(event.path))
    case 'Dosed':
      return `  + ${event.added.value} ${event.added.unit} of ${event.of}`
    case 'TemperatureRead':
      return `  ${event.tempC} °C`
    case 'Judged':
      return `  ${event.of}: ${event.grade}`
    case 'RoundStarted':
      return event.round > 1 ? `  round ${event.round} of ${event.path}` : null
    case 'RoundsEnded':
      return event.how === 'limit' ? `  ${event.path}: limit reached` : null
    case 'ChoiceTaken':
      return `  ${event.path}: ${event.answer}`
    case 'MomentMarked':
      return `  = ${event.name}`
    case 'HeatSet':
      return event.on ? '  heat on' : '  heat off'
    case 'WentOffProtocol':
      return `  off protocol: ${event.why}`
    case 'GapBroken':
      return `  too long from ${event.from} to ${event.to}`
    case 'StepsDone':
      return 'all steps done'
    case 'Ended':
    case 'DueMoved':
    case 'ConditionMet':
    case 'Looked':
    case 'DoseWentElsewhere':
    case 'Answered':
    case 'PhRead':
    case 'YarnMoved':
    case 'SkeinsSwapped':
    case 'ToppedUp':
    case 'DeedDone':
    case 'BurnerChanged':
    case 'Held':
    case 'Resumed':
    case 'TroubleBegan':
    case 'TroubleEnded':
    case 'HandedOver':
    case 'NoteWritten':
    case 'ResultTold':
    case 'PhotoNoted':
    case 'VoiceNoted':
    case 'MediaTrimmed':
    case 'CautionShown':
    case 'ClockShifted':
    case 'Withdrawn':
    case 'Corrected':
    case 'Finished':
    case 'Aborted':
      return null
    case 'AlertRaised':
      return event.kind === 'call' && event.path !== null && stepAt(event.path)?.ramp
        ? `  call: ${call(event.path)}`
        : null
  }
}

function closedLine(event: Extract<PotEvent, { type: 'StepClosed' }>, step: Step | null): string {
  const how = event.how === 'done' || event.how === 'clock' ? '' : ` (${event.how})`
  const what = step && !step.wait && !step.ramp ? step.call : `${step?.knot ?? ''} over`
  return `${event.path}: ${what}${how}`
}
