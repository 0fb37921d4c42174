// One rung of the alert ladder: a way of being noticed, with a lamp that says in words whether it works. Each covers a
// failure of the one before. Notices, speech and the rest hang into the same list.
import type { Alert } from '../core/pot/due.ts'

export type RungAlert = { potId: string; colourway: string; alert: Alert }

export type RungLamp = { ok: boolean; say: string; tap: (() => void) | null }

export type Rung = {
  id: 'sound' | 'screen' | 'title' | 'notices' | 'speech' | 'badge' | 'vibration' | 'battery'
  /** Would a dyer be told by it now? */
  works(): boolean
  /** Null: nothing to say, the rung has no lamp. */
  lamp(): RungLamp | null
  onLamp(changed: () => void): () => void
  /** All standing alerts, many times a second: a level. The rung itself knows how often it repeats. */
  raise(alerts: readonly RungAlert[]): void
  /** What will come within minutes, with the hour of each in `alert.atMs`, as often as `raise`; [] where nothing will. */
  ahead?(coming: readonly RungAlert[]): void
  /** No alert stands any more. */
  rest(): void
}
