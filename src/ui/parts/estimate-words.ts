import type { Programme, Span } from '../../core/protocol/model.ts'
import { showDuration } from '../../core/quantity/index.ts'

/** "About 2 h 40 min, hands 25 min" */
export function estimateWords({ estimate }: Programme): string {
  return `About ${showDuration(whole(estimate.clock.likelyMs))}, hands ${showDuration(whole(estimate.hands.likelyMs))}`
}

/** "2 h to 3 h 10 min, likely 2 h 40 min" */
export function spanWords(span: Span): string {
  const [least, likely, most] = [span.leastMs, span.likelyMs, span.mostMs].map((ms) => showDuration(whole(ms)))
  if (least === most) return likely ?? ''
  return `${least} to ${most}, likely ${likely}`
}

/** Estimates are no promises: whole minutes from one on, whole five minutes from an hour on. */
function whole(ms: number): number {
  const step = ms >= 3_600_000 ? 300_000 : ms >= 60_000 ? 60_000 : 1000
  return Math.round(ms / step) * step
}
