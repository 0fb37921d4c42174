import { forecast } from '../pot/forecast.ts'
import type { ActiveStep, LiveState } from '../pot/state.ts'
import type { Step } from '../protocol/model.ts'
import { stepAt } from '../protocol/tree.ts'

/** What is not due within this of the end of a wait does not follow it: it waits for another branch, or for a gap. */
const AT_ONCE_MS = 1_000

/** The step that is called when an open wait is over, as the forecast has it; null where none is. */
export function actAfter(state: LiveState, wait: ActiveStep): Step | null {
  if (wait.dueAtMs === null) return null
  const knots = forecast(state, wait.dueAtMs)
  const lane = knots.find(({ path }) => path === wait.path)?.lane
  const next = knots.find((knot) => !knot.active && knot.lane === lane)
  const step = next ? stepAt(state.programme, next.path) : null
  if (!next || step === null || next.atMs - wait.dueAtMs > AT_ONCE_MS) return null
  return step.behaviour === 'act' || step.behaviour === 'dose' || step.behaviour === 'ask' ? step : null
}
