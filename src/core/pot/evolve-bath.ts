// The part of evolve about the bath and the yarn: what went in, what was read and judged, where the yarn is.
import type { Amount } from '../protocol/model.ts'
import { stepAt } from '../protocol/tree.ts'
import type { PotEvent } from './events.ts'
import type { Run } from './state.ts'

/** More of one curve tell nothing new. */
const READINGS_MOST = 120
/** Cold stock of so small a part of the liquor is not felt by a kitchen thermometer. Common practice, no source. */
const NO_MATTER = 0.02

type BathEvent = Extract<
  PotEvent,
  {
    type:
      | 'Dosed'
      | 'DoseWentElsewhere'
      | 'Answered'
      | 'TemperatureRead'
      | 'PhRead'
      | 'Judged'
      | 'HeatSet'
      | 'YarnMoved'
      | 'SkeinsSwapped'
      | 'ToppedUp'
  }
>

export function assignBath(run: Run, event: BathEvent, atMs: number): void {
  switch (event.type) {
    case 'Dosed': {
      const { path, of, planned, added, fromPotId } = event
      run.doses.push({ path, of, planned, added, atMs, fromPotId })
      if (changesLiquor(run, path, added)) newCurve(run, atMs)
      return
    }
    case 'TemperatureRead':
      run.bathTempC = event.tempC
      run.bathTempAtMs = atMs
      run.tempReadings = [...run.tempReadings, { atMs, tempC: event.tempC }].slice(-READINGS_MOST)
      run.recorded.temperature = atMs
      return
    case 'PhRead':
      run.ph = { reading: event.reading, atMs }
      run.recorded.ph = atMs
      return
    case 'Judged':
      run.judged = { of: event.of, grade: event.grade, hue: event.hue, atMs }
      run.recorded.residue = atMs
      return
    case 'HeatSet':
      if (event.on !== run.heatOn) run.heatSinceMs = event.on ? atMs : null
      run.heatOn = event.on
      run.heatLevel = event.level
      newCurve(run, atMs)
      return
    case 'YarnMoved':
      moveYarn(run, event, atMs)
      return
    case 'SkeinsSwapped':
      run.pot = { ...run.pot, skeins: [...run.pot.skeins.filter((s) => !event.gave.includes(s.tag)), ...event.got] }
      newCurve(run, atMs)
      return
    case 'ToppedUp':
      newCurve(run, atMs)
      run.toppedUpML += event.volumeML
      if (event.levelAfter !== null) run.recorded.level = atMs
      return
    case 'Answered':
      if (event.answer.kind === 'number' || event.answer.kind === 'text') {
        for (const item of ['level', 'wet mass', 'dry mass'] as const) run.recorded[item] = atMs
      }
      return
    case 'DoseWentElsewhere':
      return
  }
}

/** What was read before tells nothing of how the bath goes on; what was read at that moment is where it goes on from. */
export function newCurve(run: Run, atMs: number): void {
  run.tempReadings = run.tempReadings.filter((read) => read.atMs >= atMs)
}

/** A dose that may cool the bath by more than a thermometer's doubt. */
function changesLiquor({ programme }: Run, path: string | null, { value, unit }: Amount): boolean {
  if (unit !== 'mL') return false
  if (path !== null && stepAt(programme, path)?.word === 'fill') return true
  return programme.liquorML === null || value > programme.liquorML * NO_MATTER
}

function moveYarn(run: Run, event: Extract<PotEvent, { type: 'YarnMoved' }>, atMs: number): void {
  // Cold goods that go in, or a bath without them, is another bath.
  if (event.place !== run.yarn) newCurve(run, atMs)
  if (event.place === 'in') {
    if (run.outSinceMs !== null) run.outTotalMs += Math.max(0, atMs - run.outSinceMs)
    run.outSinceMs = null
    run.outLimitAtMs = null
  } else if (run.yarn === 'in') {
    run.outSinceMs = atMs
    run.counts.out = (run.counts.out ?? 0) + 1
  }
  if (event.place === 'out' && event.limitAtMs !== null) run.outLimitAtMs = event.limitAtMs
  run.yarn = event.place
  if (event.depth !== null) run.depth = event.depth
}
