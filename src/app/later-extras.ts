import { type ReadonlySignal, signal } from '@preact/signals'
import type { Extras } from './extras.ts'

/** A file that did not come is asked for again after so long. */
const AGAIN_MS = 5_000

export type LaterExtras = {
  /** Null until they are there. */
  now: ReadonlySignal<Extras | null>
  fetchNow(): void
}

/** Fetches the extras once; what fails is tried again, and the app goes on without. */
export function laterExtras(load: () => Promise<Extras>, then: (extras: Extras) => void): LaterExtras {
  const now = signal<Extras | null>(null)
  let asked = false
  const fetchNow = (): void => {
    if (asked) return
    asked = true
    load().then(
      (extras) => {
        now.value = extras
        then(extras)
      },
      () => {
        asked = false
        setTimeout(fetchNow, AGAIN_MS)
      }
    )
  }
  return { now, fetchNow }
}
