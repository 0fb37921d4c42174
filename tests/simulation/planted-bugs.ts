// Bugs planted on purpose, each of a kind that somebody could make: a simulation that does not find them finds nothing.

import type { Due } from '../../src/core/pot/due.ts'
import type { PotEvent } from '../../src/core/pot/events.ts'
import type { LiveState, PotState } from '../../src/core/pot/state.ts'
import { sealEntry } from '../../src/core/pot/write-entry.ts'
import { stepAt } from '../../src/core/protocol/tree.ts'
import type { JournalPort, PotEntry, PotSummary } from '../../src/session/ports.ts'
import type { Rung } from '../../src/shell/rung.ts'
import type { Kitchen, KitchenOptions } from './kitchen.ts'
import type { Plant } from './plant.ts'

export type PlantedBug = {
  name: string
  /** What the simulation has to say of it. */
  caughtBy: RegExp
  plant?: Plant
  journal?: NonNullable<KitchenOptions['journal']>
}

const keyOf = ({ streamId, writerId, seq }: PotEntry): string => JSON.stringify([streamId, writerId, seq])

const isLive = (state: PotState): state is LiveState => state.status === 'running' || state.status === 'held'

/** The moments as they are, changed for one kind. */
const moments = (change: (due: Due, state: LiveState) => Due[]): Plant => ({
  nextDue: (honest) => (state) => (isLive(state) ? honest(state).flatMap((due) => change(due, state)) : honest(state))
})

function appending(
  write: (
    honest: JournalPort,
    kitchen: Kitchen,
    entries: PotEntry[],
    summaries: PotSummary[]
  ) => ReturnType<JournalPort['append']>
): PlantedBug['journal'] {
  // Only pots write here.
  const append =
    (honest: JournalPort, kitchen: Kitchen): JournalPort['append'] =>
    (entries, summaries) =>
      write(honest, kitchen, entries as PotEntry[], summaries)
  return (honest, kitchen) => ({ ...honest, append: append(honest, kitchen) })
}

/** Numbers the entries anew so that they go after whatever is there. */
function renumbered(entries: readonly PotEntry[], kitchen: Kitchen): PotEntry[] {
  const last = new Map<string, { writerId: string; seq: number } | undefined>()
  return entries.map(({ crc: _, ...open }) => {
    const before = last.get(open.streamId) ?? kitchen.store.stream(open.streamId).at(-1)
    const seq = (before?.seq ?? 0) + 1
    last.set(open.streamId, { writerId: open.writerId, seq })
    return sealEntry<PotEvent>({ ...open, seq, after: before ? { writerId: before.writerId, seq: before.seq } : null })
  })
}

const put = (kitchen: Kitchen, entries: readonly PotEntry[]): void => {
  for (const entry of entries) kitchen.store.store.entries.set(keyOf(entry), structuredClone(entry))
}

let written = 0

export const plantedBugs: PlantedBug[] = [
  {
    name: 'lateness to absorb is forgotten',
    caughtBy: /of lateness to absorb, \d+ were handed on/,
    plant: { timingOf: (honest) => (run, step, atMs, _, graceMs) => honest(run, step, atMs, 0, graceMs) }
  },
  {
    name: 'an alert is raised twice',
    caughtBy: /called twice for one moment/,
    plant: {
      nextDue: (honest) => (state) => {
        if (!isLive(state)) return honest(state)
        const again = honest({ ...state, raised: {} })
          .filter(({ key, kind }) => kind === 'call' && state.raised[key] !== undefined)
          .map((due) => ({ ...due, key: `${due.key} again` }))
        return [...honest(state), ...again.filter(({ key }) => state.raised[key] === undefined)]
      }
    }
  },
  {
    name: 'a wait ends half a minute early',
    caughtBy: /the clock closed .* off its due time/,
    plant: moments((due) => [due.kind === 'close' && due.path !== null ? { ...due, atMs: due.atMs - 30_000 } : due])
  },
  {
    name: 'the last entry is lost when the page dies',
    caughtBy: /was confirmed and .* is lost/,
    journal: (honest, kitchen) => {
      const last = [...kitchen.store.store.entries.keys()].at(-1)
      if (last !== undefined && kitchen.tabs.length === 0) kitchen.store.store.entries.delete(last)
      return honest
    }
  },
  {
    name: 'a tap that comes twice is done twice',
    caughtBy: /stands in the journal twice/,
    plant: {
      decide: (honest) => (state, command, header) =>
        honest(state.status === 'idle' ? state : { ...state, heard: [] }, command, header)
    }
  },
  {
    name: 'a write that is tried again puts the dose in again',
    caughtBy: /and dosed \d+ times|stands in the journal twice|put in two doses/,
    journal: appending(async (honest, kitchen, entries, summaries) => {
      const answer = await honest.append(entries, summaries)
      if (answer.ok) return answer
      put(kitchen, renumbered(entries, kitchen))
      return answer.why === 'conflict' ? { ok: true } : answer
    })
  },
  {
    name: 'an undo leaves the dose in the pot',
    caughtBy: /the pot counts \d+ doses, the journal \d+/,
    plant: {
      fold: (honest) => (entries) => {
        const state = honest(entries)
        if (state.status === 'idle') return state
        const withdrawn = entries.flatMap(({ event }) => (event.type === 'Withdrawn' ? event.entries : []))
        for (const { event, atMs, seq } of entries) {
          if (event.type !== 'Dosed' || !withdrawn.some((ref) => ref.seq === seq)) continue
          state.doses.push({ ...event, atMs })
        }
        return state
      }
    }
  },
  {
    name: 'a clock that was set moves no deadline',
    caughtBy: /was raised for \d+, it is due at \d+|off its due time/,
    plant: {
      evolve: (honest) => (state, event, stamp) => (event.type === 'ClockShifted' ? state : honest(state, event, stamp))
    }
  },
  {
    name: 'a clock that was set back sets the pot back twice as far',
    caughtBy: /the clock was set by|was set back \d+ ms, the clocks/,
    plant: {
      decide: (honest) => (state, command, header) => {
        const twice = command.type === 'ShiftClock' ? { ...command, byMs: command.byMs * 2 } : command
        return honest(state, twice, header)
      }
    }
  },
  {
    name: 'what is for two pots is stored for one',
    caughtBy: /was confirmed before .* was stored|was for two pots and is stored for one/,
    journal: appending((honest, _, entries, summaries) => {
      const [first] = entries
      const both = entries.some((entry) => entry.event.type === 'DoseWentElsewhere')
      const kept = both ? entries.filter((entry) => entry.streamId === first?.streamId) : entries
      return honest.append(kept, summaries)
    })
  },
  {
    name: 'the last round of an until is left out',
    caughtBy: /ended \(limit\) after round/,
    plant: {
      afterRoundAsk: (honest) => (t, rounds, enough, along) =>
        honest(t, { ...rounds, rounds: rounds.rounds.slice(0, -1) }, enough, along)
    }
  },
  {
    name: 'a number of the sequence is left out',
    caughtBy: /wrote \d+ where \d+ comes next/,
    plant: {
      writeAhead: (honest) => (pot, events, header, from) => {
        const entries = honest(pot, events, header, from)
        const last = entries.at(-1)
        if (last && ++written % 7 === 0) {
          const { crc: _, ...open } = last
          Object.assign(last, sealEntry({ ...open, seq: open.seq + 1 }))
        }
        return entries
      }
    }
  },
  {
    name: 'nobody is called for a question',
    caughtBy: /call .* was due \d+ ms ago and (is not heard|not raised)/,
    plant: moments((due, state) => {
      const step = due.path === null ? null : stepAt(state.programme, due.path)
      return due.kind === 'call' && step?.behaviour === 'ask' ? [] : [due]
    })
  },
  {
    name: 'a ramp ends at any reading',
    caughtBy: /the ramp .* ended at/,
    plant: {
      decide: (honest) => (state, command, header) => {
        if (!isLive(state) || command.type !== 'ReadTemperature') return honest(state, command, header)
        const ramp = state.active.map(({ path }) => stepAt(state.programme, path)?.ramp).find((found) => found)
        if (!ramp || command.tempC >= ramp.lowC) return honest(state, command, header)
        const decision = honest(state, { ...command, tempC: ramp.lowC }, header)
        if (!decision.ok) return decision
        const { tempC } = command
        const events = decision.events.map((event) => (event.type === 'TemperatureRead' ? { ...event, tempC } : event))
        return { ok: true, events }
      }
    }
  },
  {
    name: 'a write that failed is called stored',
    caughtBy: /was confirmed before .* was stored/,
    journal: appending(async (honest, _, entries, summaries) => {
      const answer = await honest.append(entries, summaries)
      return answer.ok || answer.why === 'conflict' ? answer : { ok: true }
    })
  },
  {
    name: 'a second writer writes over the first',
    caughtBy: /was written over/,
    journal: appending(async (honest, kitchen, entries, summaries) => {
      const answer = await honest.append(entries, summaries)
      if (answer.ok || answer.why !== 'conflict') return answer
      put(kitchen, entries)
      return { ok: true }
    })
  },
  {
    name: 'an alert falls silent once it is written down',
    caughtBy: /was due \d+ ms ago and is not heard/,
    plant: {
      alertsDue: (honest) => (state, nowMs) =>
        honest(state, nowMs).filter(({ key }) => state.status === 'idle' || state.raised[key] === undefined)
    }
  },
  {
    name: 'catching up gives every moment the hour of waking',
    caughtBy: /off its due time|is due at \d+/,
    plant: {
      passMoments: (honest) => (pot, nowMs, told, write, passed) =>
        honest(
          pot,
          nowMs,
          told,
          (command, header, events) => write(command, { ...header, atMs: nowMs }, events),
          passed
        )
    }
  },
  {
    name: 'a rung that does not work stands in the record as if it did',
    caughtBy: /the record names the rung/,
    plant: {
      ladder: (honest) => (rungs) => ({ ...honest(rungs), told: () => rungs.map(({ id }) => id) })
    }
  },
  {
    name: 'a rung that breaks silences the ones after it',
    caughtBy: /lives and was not told of/,
    plant: {
      ladder: (honest) => (rungs) => honest(silencedByTheFirst(rungs))
    }
  },
  {
    name: 'an entry is changed on its way to the store',
    caughtBy: /can't be read back|is read-only/,
    journal: appending((honest, _, entries, summaries) =>
      honest.append(
        entries.map((entry) => (entry.event.type === 'MomentMarked' ? { ...entry, atMs: 0 } : entry)),
        summaries
      )
    )
  }
]

/** Once one has thrown, none hears any more. */
function silencedByTheFirst(rungs: readonly Rung[]): Rung[] {
  let silent = false
  return rungs.map((rung) => ({
    ...rung,
    raise(alerts) {
      if (silent) return
      silent = true
      rung.raise(alerts)
      silent = false
    }
  }))
}
