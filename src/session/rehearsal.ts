// A programme run from start to end on a simulated clock by a simulated person, through the real engine.
import type { PotIdentity, ProtocolText } from '../core/pot/events.ts'
import { nextDue } from '../core/pot/next-due.ts'
import type { LiveState, PotState } from '../core/pot/state.ts'
import type { Programme } from '../core/protocol/model.ts'
import { neverComes } from './never-comes.ts'
import { BY_REHEARSAL, commandFor, nextDeed, promptPerson, type RehearsalPerson } from './rehearsal-person.ts'
import { RehearsedPot, type Told } from './rehearsed-pot.ts'

export type Rehearsal = {
  told: Told[]
  state: PotState
  /** The end of the last step, ms after the start; null when it did not come to an end. */
  endedAfterMs: number | null
  /** Why it stopped short, if it did. */
  stuck: string | null
}

/** No rehearsal needs more turns than this; one that does goes in circles. */
const TURNS_MOST = 60_000

/** Runs the whole programme from `startMs`. Heating goes at the stated rate, cooling by Newton's law with the
 * programme's constant. Never throws; a programme that can't be ended says where it is stuck. */
export function rehearse(
  programme: Programme,
  pot: PotIdentity,
  protocol: ProtocolText,
  startMs: number,
  person: RehearsalPerson = promptPerson
): Rehearsal {
  const run = new RehearsedPot(programme, startMs)
  run.send({ type: 'Start', pot, protocol, programme, checks: [], cautionsShown: [] }, BY_REHEARSAL)
  for (let turn = 0; turn < TURNS_MOST; turn++) {
    const live = run.live()
    if (!live) break
    const stuck = takeTurn(run, live, person)
    if (stuck) return { told: run.told, state: run.state, endedAfterMs: null, stuck }
  }
  return rehearsalOf(run, startMs)
}

export function rehearsalOf({ told, state }: RehearsedPot, startMs: number): Rehearsal {
  const end = told.findLast((e) => e.event.type === 'StepsDone')
  return { told, state, endedAfterMs: end ? end.atMs - startMs : null, stuck: null }
}

/** The next thing that happens: a due moment of the clock, or an answer of the person, whichever is first. */
function takeTurn(run: RehearsedPot, live: LiveState, person: RehearsalPerson): string | null {
  if (live.stepsDone) return run.send({ type: 'Finish', bath: 'dropped' }, BY_REHEARSAL)
  const never = neverComes(live, run.bath, run.nowMs)
  if (never) return never
  const due = nextDue(live)[0]
  const deed = nextDeed(live, person)
  if (due && (!deed || due.atMs <= deed.atMs)) {
    run.goTo(due.atMs)
    return run.send({ type: 'PassDue', key: due.key }, { kind: 'clock' }, due.atMs)
  }
  if (!deed) return `stuck at ${live.active.map((a) => a.path).join(', ')}`
  run.goTo(deed.atMs)
  const refused = run.send(commandFor(live, deed, person, run.bath.tempC(run.nowMs)), BY_REHEARSAL)
  return refused ? `${deed.step.path}: ${refused}` : null
}
