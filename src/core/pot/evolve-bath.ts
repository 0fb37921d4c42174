// The part of evolve about the bath and the yarn: what went in, what was read and judged, where the yarn is.
import type { PotEvent } from './events.ts'
import type { Run } from './state.ts'

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
      return
    }
    case 'TemperatureRead':
      run.bathTempC = event.tempC
      run.bathTempAtMs = atMs
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
      return
    case 'YarnMoved':
      moveYarn(run, event, atMs)
      return
    case 'SkeinsSwapped':
      run.pot = { ...run.pot, skeins: [...run.pot.skeins.filter((s) => !event.gave.includes(s.tag)), ...event.got] }
      return
    case 'ToppedUp':
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

function moveYarn(run: Run, event: Extract<PotEvent, { type: 'YarnMoved' }>, atMs: number): void {
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
