// Which temperature an open step waits for, and which of the readings so far belong to that way.
import { stepAt } from '../../protocol/tree.ts'
import type { ActiveStep, LiveState, TempReading } from '../state.ts'

/** Bubbling begins a little under the boil, and a pot there stays there. Common practice, no source. */
const NEAR_BOIL_C = 0.5
const SEA_LEVEL_BOIL_C = 100

export type Goal = {
  active: ActiveStep
  targetC: number
  /** The same, but not where no open pot gets. */
  aimC: number
  boilC: number
  going: 'up' | 'down'
  /** At the protocol's rate; null: as fast as the room lets it. */
  cPerMin: number | null
  /** Where the programme presumes that it begins; null: nobody says. */
  fromC: number | null
  readings: readonly TempReading[]
}

/** Null: the step waits for no temperature, or for something else beside it that no thermometer tells. */
export function goalOf(state: LiveState, active: ActiveStep): Goal | null {
  const wanted = wantedBy(state, active)
  if (wanted === null) return null
  const boilC = state.programme.given?.boilC ?? SEA_LEVEL_BOIL_C
  const aimC = Math.min(wanted.targetC, boilC - NEAR_BOIL_C)
  // What was read some minutes ago may be told after what was read since.
  const readings = readingsFor(state, active, wanted).sort((a, b) => a.atMs - b.atMs)
  return { active, boilC, ...wanted, aimC, readings }
}

type Wanted = Pick<Goal, 'targetC' | 'going' | 'cPerMin' | 'fromC'>

/** A ring without a stated rate. Common practice, no source. */
const USUAL_C_PER_MIN = 2

function wantedBy(state: LiveState, active: ActiveStep): Wanted | null {
  const step = stepAt(state.programme, active.path)
  if (!step || active.remainingMs !== null) return null
  const { ramp, wait } = step
  if (ramp) return { targetC: ramp.lowC, going: 'up', cPerMin: ramp.cPerMin, fromC: ramp.expectedFromC }
  const open = wait?.until.filter((until, i) => until.kind !== 'moment' && !active.met.includes(i)) ?? []
  const [only, more] = open
  if (only?.kind !== 'temperature' || more) return null
  const { going } = only
  const targetC = going === 'down' ? only.highC : only.lowC
  if (targetC === null) return null
  const cPerMin = going === 'up' ? USUAL_C_PER_MIN : (wait?.coolCPerMin ?? null)
  return { targetC, going, cPerMin, fromC: null }
}

/** The readings since the heat or the liquor last changed. What is heated or cooled with water on purpose begins with its
 * step; what cools by itself may have begun before it. */
function readingsFor({ tempReadings, heatOn }: LiveState, { startedAtMs }: ActiveStep, wanted: Wanted): TempReading[] {
  const byItself = wanted.going === 'down' && wanted.cPerMin === null && !heatOn
  return byItself ? [...tempReadings] : tempReadings.filter(({ atMs }) => atMs >= startedAtMs)
}
