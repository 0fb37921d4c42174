// The rungs in a row: every look at the clock goes to each of them, and one that breaks does not stop the next.
import { type ReadonlySignal, signal } from '@preact/signals'
import type { Rung, RungAlert } from '../shell/rung.ts'
import type { Lamp } from '../ui/kitchen.ts'

export type Ladder = {
  lamps: ReadonlySignal<Lamp[]>
  raise(alerts: readonly RungAlert[], coming: readonly RungAlert[]): void
  look(): void
  told(): string[]
  /** Rungs that came later than the rest. */
  add(more: readonly Rung[]): void
}

export function ladder(first: readonly Rung[]): Ladder {
  const rungs = [...first]
  const lamps = signal<Lamp[]>([])
  const broken = new Set<Rung>()
  const rested = new Set<Rung>()
  const look = (): void => {
    const next = rungs.flatMap(lampOf)
    if (JSON.stringify(next) !== JSON.stringify(lamps.value)) lamps.value = next
  }
  const listen = (to: readonly Rung[]): void => {
    for (const rung of to) rung.onLamp(look)
    look()
  }
  listen(rungs)
  return {
    lamps,
    look,
    add(more) {
      rungs.push(...more)
      listen(more)
    },
    told: () => rungs.filter((rung) => !broken.has(rung) && works(rung)).map(({ id }) => id),
    raise(alerts, coming) {
      for (const rung of rungs) {
        try {
          if (alerts.length > 0) {
            rested.delete(rung)
            rung.raise(alerts)
          } else if (!rested.has(rung)) {
            // At its first look too: what an earlier opening of the page left outside of it is put away.
            rung.rest()
            rested.add(rung)
          }
          rung.ahead?.(coming)
          broken.delete(rung)
        } catch {
          // The other rungs are there for this; the record says that this one was not.
          broken.add(rung)
        }
      }
    }
  }
}

function works(rung: Rung): boolean {
  try {
    return rung.works()
  } catch {
    return false
  }
}

function lampOf(rung: Rung): Lamp[] {
  const lamp = rung.lamp()
  if (lamp === null) return []
  const { id } = rung
  if (id === 'title' || id === 'badge' || id === 'vibration') return []
  return [{ id, ...lamp }]
}
