// The cautions of the step in hand, and which were read in full today.
import type { LiveState } from '../../../core/pot/state.ts'
import type { Step } from '../../../core/protocol/model.ts'
import { setOutOf } from '../../../core/safety/before-start.ts'
import type { Caution } from '../../../core/safety/caution.ts'
import { cautionsFor } from '../../../core/safety/cautions-for.ts'
import { STALE_MS } from './bath-view.ts'

export function stepCautions(state: LiveState, step: Step, nowMs: number): Caution[] {
  const fresh = state.bathTempAtMs !== null && nowMs - state.bathTempAtMs <= STALE_MS
  const setOut = setOutOf(state.programme, step)
  return cautionsFor(step, {
    bathTempC: fresh ? state.bathTempC : null,
    heatOn: state.heatOn,
    strengthPercent: setOut?.percent ?? null,
    kind: setOut?.kind ?? null
  })
}

// Kept for this opening of the page only: after a reload a caution is shown in full once more, never less.
const shown = new Set<string>()

export function shownBefore(id: string): boolean {
  return shown.has(id)
}

export function markShown(id: string): void {
  shown.add(id)
}

/** For tests: as if the page had just been opened. */
export function forgetShown(): void {
  shown.clear()
}
