// The rungs of a simulated page on the real ladder: each may fall silent, say that it does not work, or break, at any
// time and together with others. What an alert reached, and what the journal says it was told by, is held against that.
import { type Ladder, ladder } from '../../src/app/ladder.ts'
import type { PotAlert } from '../../src/session/types.ts'
import type { Rung } from '../../src/shell/rung.ts'
import type { Chance } from './chance.ts'
import type { Counts } from './counts.ts'

const ids = ['sound', 'screen', 'notices', 'speech'] as const
type Id = (typeof ids)[number]
/** well: it works. out: it says that it does not. breaks: it throws when it is to tell, and did not say so before. */
type Health = 'well' | 'out' | 'breaks'

export type Rungs = {
  ladder: Ladder
  raise(alerts: PotAlert[], coming: PotAlert[]): void
  /** What works by now, as the ladder says for the journal. */
  told(): string[]
  /** Something goes wrong with some of them, or is mended. */
  stir(chance: Chance, counts: Counts): void
}

export function simulatedRungs(complain: (what: string) => void): Rungs {
  const health = new Map<Id, Health>(ids.map((id) => [id, 'well']))
  const heard = new Map<Id, string>()
  const steps = ladder(
    ids.map((id) =>
      rungOf(
        id,
        () => health.get(id) ?? 'well',
        (what) => heard.set(id, what)
      )
    )
  )
  return {
    ladder: steps,
    raise(alerts, coming) {
      heard.clear()
      steps.raise(alerts, coming)
      if (alerts.length === 0) return
      const wanted = namesOf(alerts)
      for (const id of ids) {
        if (health.get(id) === 'breaks') continue
        if (heard.get(id) !== wanted) complain(`the rung ${id} lives and was not told of ${wanted}`)
      }
    },
    told() {
      const told = steps.told()
      for (const id of ids) {
        const now = health.get(id)
        if (now === 'well' && !told.includes(id)) complain(`the record leaves out the rung ${id}, which works`)
        if (now === 'out' && told.includes(id)) complain(`the record names the rung ${id}, which does not work`)
      }
      return told
    },
    stir(chance, counts) {
      for (const id of ids) {
        if (!chance.of(0.1)) continue
        const next = chance.pick(['well', 'out', 'breaks'] as const)
        counts.add('rung', `${id} ${next}`)
        health.set(id, next)
        // What broke and is mended is known to be well at its next turn.
        if (next === 'well') steps.raise([], [])
      }
    }
  }
}

function rungOf(id: Id, health: () => Health, hear: (what: string) => void): Rung {
  return {
    id,
    works: () => health() !== 'out',
    lamp: () => ({ ok: health() === 'well', say: id, tap: null }),
    onLamp: () => () => {},
    raise(alerts) {
      if (health() === 'breaks') throw new Error(`${id} broke`)
      hear(namesOf(alerts))
    },
    rest() {}
  }
}

function namesOf(alerts: readonly PotAlert[]): string {
  return alerts.map(({ potId, alert }) => `${potId} ${alert.key}`).join(', ')
}
