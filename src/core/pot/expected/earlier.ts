// What earlier batches of the same pot on the same burner tell of this one before it has readings of its own.
import { newtonMin } from '../../chemistry/heating/laws.ts'
import type { PotIdentity } from '../events.ts'
import type { LiveState } from '../state.ts'

/** One way up or down on one heat, °C and °C/min: it went from `fromC` to `toC`, began at `startCPerMin`, and that
 * lessened by `perMin` of the way gone (Newton's law; 0: a straight line). Down: `perMin` is the constant towards the
 * room. */
export type HeatRun = {
  going: 'up' | 'down'
  level: string | null
  burner: string
  fromC: number
  toC: number
  startCPerMin: number
  perMin: number
}

/** What one settled batch tells. `pot`: the pot's name; '' where nobody gave one. */
export type EarlierHeat = { potId: string; pot: string; liquorML: number | null; endedAtMs: number; runs: HeatRun[] }

/** The pot's own name, as the shelf's label read when it was started; '' where it was chosen from none. */
export function potNamed(pot: PotIdentity): string {
  return pot.uses?.find(({ kind }) => kind === 'pot')?.name.trim() ?? ''
}

export type FromEarlier = { count: number; pot: boolean; min: number; leastMin: number; mostMin: number | null }

/** A pot with twice the water, or half, is another pot. Common practice, no source. */
const LIKE_VOLUME = 2
/** Older batches tell of older rings and older thermometers. */
const BATCHES_MOST = 12
/** One batch has no spread of its own; several have theirs, and a little more. Common practice, no source. */
const ONE = { least: 0.8, most: 1.25 }
const SEVERAL = { least: 0.9, most: 1.1 }

type Way = { fromC: number; targetC: number; going: 'up' | 'down' }

/** Minutes from one temperature to another as earlier batches went, scaled to the liquor; null: none went this way, or
 * most of them would not have got there. Spread: from the quickest to the slowest. */
export function fromEarlier(earlier: readonly EarlierHeat[], state: LiveState, way: Way): FromEarlier | null {
  const name = potNamed(state.pot)
  const mins: number[] = []
  let never = 0
  for (const batch of [...earlier].sort((a, b) => b.endedAtMs - a.endedAtMs)) {
    if (mins.length + never >= BATCHES_MOST) break
    const run = batch.pot === name ? bestRun(batch.runs, state, way) : null
    const share = run && likeness(batch.liquorML, state.programme.liquorML)
    if (!run || share === null) continue
    const min = minutesBy(run, way, state.programme.roomC)
    if (min === null) never++
    else mins.push(min * share)
  }
  if (mins.length <= never) return null
  mins.sort((a, b) => a - b)
  const { least, most } = mins.length === 1 ? ONE : SEVERAL
  const slowest = (mins.at(-1) as number) * most
  const middle = median(mins)
  const leastMin = (mins[0] as number) * least
  return { count: mins.length, pot: name !== '', min: middle, leastMin, mostMin: never > 0 ? null : slowest }
}

/** Twice the water takes twice as long: how much longer this pot takes. Null: too unlike to be compared. */
function likeness(beforeML: number | null, nowML: number | null): number | null {
  if (beforeML === null || nowML === null) return beforeML === nowML ? 1 : null
  const share = nowML / beforeML
  return share <= LIKE_VOLUME && share >= 1 / LIKE_VOLUME ? share : null
}

/** Of a batch's ways on this burner and heat the one that went through most of the same degrees. */
function bestRun(runs: readonly HeatRun[], { pot, heatOn, heatLevel }: LiveState, way: Way): HeatRun | null {
  const same = (run: HeatRun): boolean =>
    run.going === way.going &&
    (way.going === 'down' ? !heatOn : run.burner === pot.burner && run.level === heatLevel && heatOn)
  const shared = ({ fromC, toC }: HeatRun): number => {
    const [low, high] = [Math.min(way.fromC, way.targetC), Math.max(way.fromC, way.targetC)]
    return Math.min(high, Math.max(fromC, toC)) - Math.max(low, Math.min(fromC, toC))
  }
  return runs.filter(same).reduce<HeatRun | null>((best, run) => {
    return best === null || shared(run) > shared(best) ? run : best
  }, null)
}

/** Null: on that way it would level off before. */
function minutesBy(run: HeatRun, { fromC, targetC, going }: Way, roomC: number): number | null {
  if (going === 'down') return newtonMin({ fromC, towardsC: roomC, perMin: run.perMin }, targetC)
  if (run.perMin === 0) return (targetC - fromC) / run.startCPerMin
  const towardsC = run.fromC + run.startCPerMin / run.perMin
  return newtonMin({ fromC, towardsC, perMin: run.perMin }, targetC)
}

function median(sorted: number[]): number {
  const half = (sorted.length - 1) / 2
  return ((sorted[Math.floor(half)] as number) + (sorted[Math.ceil(half)] as number)) / 2
}
