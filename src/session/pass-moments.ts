import type { CommandHeader, PotCommand } from '../core/pot/commands.ts'
import { decide } from '../core/pot/decide.ts'
import type { Due } from '../core/pot/due.ts'
import type { PotEvent } from '../core/pot/events.ts'
import { nextDue } from '../core/pot/next-due.ts'
import type { LivePot } from './live-pot.ts'

/** Far more moments at once than any protocol has: past it, something goes round in a circle. */
const MOMENTS_MOST = 5_000

type PassDue = Extract<PotCommand, { type: 'PassDue' }>

/** Passes every due moment of a pot up to `nowMs`, in order, each stamped with its own time, so that catching up after
 * a sleep equals having stayed awake. `told`: by what an alert due then could be noticed; undefined where nobody knows.
 * `write` must carry the pot on. */
export function passMoments(
  pot: LivePot,
  nowMs: number,
  told: (due: Due) => readonly string[] | undefined,
  write: (command: PassDue, header: CommandHeader, events: PotEvent[]) => void,
  passed: (due: Due) => void
): void {
  // A moment that moves nothing is left alone, or it would be asked about for ever and hide the ones behind it.
  const stuck = new Set<string>()
  for (let count = 0; count < MOMENTS_MOST; count++) {
    const due = nextDue(pot.ahead).find(({ key, atMs }) => atMs <= nowMs && !stuck.has(key))
    if (due === undefined) return
    const by = told(due)
    const command: PassDue = { type: 'PassDue', key: due.key, ...(by === undefined ? {} : { told: by }) }
    const header: CommandHeader = { commandId: `clock:${due.key}`, atMs: due.atMs, by: { kind: 'clock' } }
    const decision = decide(pot.ahead, command, header)
    if (!decision.ok || decision.events.length === 0) {
      stuck.add(due.key)
      continue
    }
    passed(due)
    write(command, header, decision.events)
  }
}
