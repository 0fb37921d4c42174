// The coming moments of a pot: when the clock closes a step, when a person is to be called, when a limit runs out.
// Keys name a moment by counts, never by its time: a clock that was set does not make a moment new.
import type { Gap, Node, Step } from '../protocol/model.ts'
import { sequenceOf, stepAt } from '../protocol/tree.ts'
import type { Due } from './due.ts'
import type { ActiveStep, LiveState, PotState } from './state.ts'
import { closesByClock } from './timing.ts'

/** A heads-up comes only after so long a quiet time, and so long before the act. DESIGN: the alarm budget. */
const QUIET_MS = 5 * 60_000
const HEADS_UP_MS = 60_000
/** Limits call before they run out: a fifth of the time ahead, at most 5 min. Common practice, no source. */
const LIMIT_LEAD_MOST_MS = 5 * 60_000
const OUT_LEAD_MOST_MS = 30_000
/** Nobody stays silent at a lit burner for longer, whatever time they asked to be called at. Common practice, no source. */
const ASKED_MOST_MS = 60 * 60_000

/** All due moments not yet passed, earliest first. Moments that passed and were journalled are left out. */
export function nextDue(state: PotState): Due[] {
  if (state.status !== 'running' && state.status !== 'held') return []
  const stopped = state.status === 'held' || state.trouble !== null
  const dues: Due[] = []
  for (const active of state.active) {
    const step = stepAt(state.programme, active.path)
    if (step) dues.push(...ofStep(state, active, step, stopped))
  }
  for (const gap of state.programme.gaps) dues.push(...ofGap(state, gap, stopped))
  if (state.outLimitAtMs !== null && state.outSinceMs !== null) {
    const lead = Math.min(OUT_LEAD_MOST_MS, (state.outLimitAtMs - state.outSinceMs) / 3)
    const atMs = Math.round(state.outLimitAtMs - lead)
    dues.push({ key: `outOfBath ${state.counts.out ?? 0}`, kind: 'outOfBath', path: null, atMs })
  }
  if (state.stepsDone && state.active.length === 0) {
    dues.push({ key: 'finish', kind: 'finish', path: null, atMs: finishedAt(state) })
  }
  return dues.filter((d) => state.raised[d.key] === undefined).sort((a, b) => a.atMs - b.atMs || order(a.key, b.key))
}

function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}

function ofStep(state: LiveState, active: ActiveStep, step: Step, stopped: boolean): Due[] {
  const { path, dueAtMs } = active
  const dues: Due[] = []
  const name = `${path} ${active.no}.${active.moves}`
  if (step.open) {
    const look = lookOfOpen(state, active, step)
    if (look) dues.push(look)
  } else if (step.lookEveryMs !== null) {
    const atMs = active.lookedAtMs + step.lookEveryMs
    if (dueAtMs === null || atMs < dueAtMs) {
      dues.push({ key: `look ${path} ${active.no}.${active.looks}`, kind: 'look', path, atMs })
    }
  }
  if (dueAtMs === null) return dues
  if (!closesByClock(state, active, step)) {
    dues.push({ key: `call ${name}`, kind: 'call', path, atMs: dueAtMs })
    return dues
  }
  if (stopped) {
    if (state.heatOn) dues.push({ key: `heat ${name}`, kind: 'heat', path, atMs: dueAtMs })
    return dues
  }
  dues.push({ key: `close ${name}`, kind: 'close', path, atMs: dueAtMs })
  const quietMs = dueAtMs - Math.max(active.startedAtMs, active.lookedAtMs)
  if (!active.side && quietMs >= QUIET_MS && handsFollow(state, path)) {
    dues.push({ key: `headsUp ${name}`, kind: 'headsUp', path, atMs: dueAtMs - HEADS_UP_MS })
  }
  return dues
}

/** A free pot has no call of its own: with the heat on, nothing told for so long is a call. A time that the dyer asked to
 * be called at stands in its place. */
function lookOfOpen(state: LiveState, active: ActiveStep, step: Step): Due | null {
  if (!state.heatOn || step.lookEveryMs === null) return null
  const toldAtMs = Math.max(active.lookedAtMs, state.heatSinceMs ?? 0, state.deedAtMs ?? 0)
  const { dueAtMs, path } = active
  const asked = dueAtMs !== null && dueAtMs <= toldAtMs + ASKED_MOST_MS ? dueAtMs : 0
  const key = `look ${path} ${active.no}.${active.looks}.${state.counts.deeds ?? 0}.${active.moves}`
  return { key, kind: 'look', path, atMs: Math.max(toldAtMs + step.lookEveryMs, asked) }
}

/** Does the next step after this one want hands? */
export function handsFollow(state: LiveState, path: string): boolean {
  const { siblings, index, owner } = sequenceOf(state.programme, path)
  const next = siblings[index + 1]
  if (next) return wantsHands(next)
  return owner !== null && owner.kind === 'round'
}

function wantsHands(node: Node): boolean {
  if (node.node === 'step') return node.behaviour === 'act' || node.behaviour === 'dose' || node.behaviour === 'ask'
  return true
}

/** A gap that runs out: a call ahead of the limit, and the limit itself. */
function ofGap(state: LiveState, gap: Gap, stopped: boolean): Due[] {
  const limitAtMs = gapLimit(state, gap)
  if (limitAtMs === null || gap.atMostMs === null) return []
  const marks = state.counts[`moment ${gap.from}`] ?? 0
  const lead = Math.min(LIMIT_LEAD_MOST_MS, gap.atMostMs / 5)
  const name = `${gap.from} > ${gap.to} ${marks}`
  const dues: Due[] = [{ key: `gap ${name}`, kind: 'gap', path: null, atMs: Math.round(limitAtMs - lead) }]
  const over = state.counts[`over ${gap.from} ${gap.to}`] === marks
  if (!over && !stopped) dues.push({ key: `over ${name}`, kind: 'close', path: null, atMs: limitAtMs })
  return dues
}

/** When a gap that is open runs out; null when it is not open. */
export function gapLimit(state: LiveState, gap: Gap): number | null {
  const from = state.moments[gap.from]
  if (gap.atMostMs === null || from === undefined) return null
  const to = state.moments[gap.to]
  return to !== undefined && to >= from ? null : from + gap.atMostMs
}

/** The time the last step closed. */
function finishedAt(state: LiveState): number {
  let last = state.startedAtMs
  for (const atMs of Object.values(state.ended)) last = Math.max(last, atMs)
  return last
}
