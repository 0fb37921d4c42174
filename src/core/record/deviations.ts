// What went otherwise than the protocol says, and why.
import type { Entry } from '../pot/entry.ts'
import type { PotEvent } from '../pot/events.ts'
import { isFree } from '../protocol/free-pot.ts'
import type { Programme } from '../protocol/model.ts'
import { showDose, showDuration, type Units } from '../quantity/index.ts'
import { eventWords, labelOf } from './event-words.ts'
import type { DeviationKind, DeviationRecord, Said, StepRecord } from './record.ts'

type Heard = { entry: Entry<PotEvent>; said: Said }

export function deviationsOf(
  heard: readonly Heard[],
  steps: readonly StepRecord[],
  programme: Programme,
  units: Units
): DeviationRecord[] {
  const told = heard.flatMap(({ entry: { event }, said }): DeviationRecord[] => {
    const path = 'path' in event ? event.path : null
    // Where nothing was planned, an addition is no deviation.
    if (event.type === 'Dosed' && isFree(programme)) return []
    return deviations(event, programme, units).map(([kind, sentence]) => ({ kind, path, sentence, said }))
  })
  const late = steps
    .filter((step) => step.lateMs > 0)
    .map((step): DeviationRecord => ({ kind: 'late', path: step.path, sentence: step.sentence, said: step.said }))
  return [...told, ...late].sort((a, b) => a.said.atMs - b.said.atMs)
}

function deviations(event: PotEvent, programme: Programme, units: Units): [DeviationKind, string][] {
  const words = (): string => eventWords(event, programme, units)
  const kind = kindOf(event)
  if (event.type === 'PotStarted') {
    return event.checks.filter((check) => !check.ok).map((check) => ['failed-check', `Began without: ${check.say}`])
  }
  if (kind === null) return []
  if (event.type === 'DueMoved') {
    const label = labelOf(programme, event.path)
    return [[kind, kind === 'not-yet' ? `${label}: not yet${because(event.reason)}.` : words()]]
  }
  if (event.type === 'Resumed') {
    const counts = event.heldTimeCounts ? 'counts' : 'does not count'
    return [[kind, `Stopped for ${showDuration(event.heldMs)}, still dyeing; that time ${counts}.`]]
  }
  if (event.type === 'Dosed') {
    return [[kind, `${showDose(event.added, units)} of ${event.of} went in unplanned.`]]
  }
  return [[kind, words()]]
}

function because(reason: string | null): string {
  return reason ? `, ${reason}` : ''
}

function kindOf(event: PotEvent): DeviationKind | null {
  switch (event.type) {
    case 'StepClosed':
      return event.how === 'skipped' ? 'skipped' : event.how === 'early' ? 'early' : null
    case 'StepStarted':
      return event.side ? 'once-more' : null
    case 'DueMoved':
      return event.why === 'not-yet' ? 'not-yet' : event.why === 'moved' ? 'moved' : null
    case 'WentOffProtocol':
      return 'off-protocol'
    case 'GapBroken':
      return 'gap'
    case 'Held':
    case 'Resumed':
      return 'stopped'
    case 'TroubleBegan':
    case 'TroubleEnded':
      return 'trouble'
    case 'DoseWentElsewhere':
      return 'elsewhere'
    case 'Dosed':
      return event.planned === null ? 'unplanned' : null
    case 'BurnerChanged':
      return 'burner'
    case 'SkeinsSwapped':
      return 'swapped'
    case 'ClockShifted':
      return 'clock-set'
    case 'Aborted':
      return 'ended-early'
    case 'PotStarted':
    case 'Ended':
    case 'RoundStarted':
    case 'RoundsEnded':
    case 'ChoiceTaken':
    case 'MomentMarked':
    case 'Answered':
    case 'TemperatureRead':
    case 'PhRead':
    case 'Judged':
    case 'HeatSet':
    case 'ConditionMet':
    case 'Looked':
    case 'YarnMoved':
    case 'ToppedUp':
    case 'DeedDone':
    case 'AlertRaised':
    case 'HandedOver':
    case 'NoteWritten':
    case 'ResultTold':
    case 'PhotoNoted':
    case 'VoiceNoted':
    case 'MediaTrimmed':
    case 'CautionShown':
    case 'Withdrawn':
    case 'Corrected':
    case 'StepsDone':
    case 'Finished':
      return null
  }
}
