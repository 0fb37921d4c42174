// The coming moments of a pot. Nothing else decides when something is due.
import type { AlertKind } from './events.ts'

/** A moment at which the clock closes a step, or a person is to be called.
 * `key` is unique for the due moment: the same moment after a reload has the same key. */
export type Due = { key: string; kind: AlertKind | 'close'; path: string | null; atMs: number }

/** A Due of the alerting kinds that has come and is not answered. A level, not an edge. */
export type Alert = {
  key: string
  kind: AlertKind
  path: string | null
  atMs: number
  urgency: 'soon' | 'now' | 'late'
  lateMs: number
  /** Acid, an out-of-bath limit, a dry-out hazard, heat left on, heat on with nobody answering: these escalate until
   * answered. */
  escalates: boolean
  /** A soft tick: a turn or a stir, never late. */
  soft: boolean
}
