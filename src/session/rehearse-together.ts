// Several pots rehearsed at one stove by one person: where hands are wanted twice at once, one pot waits.
import type { PotCommand } from '../core/pot/commands.ts'
import type { PotIdentity, ProtocolText } from '../core/pot/events.ts'
import { nextDue } from '../core/pot/next-due.ts'
import type { Programme } from '../core/protocol/model.ts'
import { stepAt } from '../core/protocol/tree.ts'
import { neverComes } from './never-comes.ts'
import { type Rehearsal, rehearsalOf } from './rehearsal.ts'
import {
  BY_REHEARSAL,
  commandFor,
  type Deed,
  nextDeed,
  promptPerson,
  type RehearsalPerson
} from './rehearsal-person.ts'
import { RehearsedPot, type Told } from './rehearsed-pot.ts'

/** `afterMs`: how long after the first moment it is started. */
export type TogetherPot = { programme: Programme; pot: PotIdentity; protocol: ProtocolText; afterMs: number }

/** One act of a pot that was called and done; `handsMs` is how long it likely takes. */
export type HandsAct = { potId: string; path: string; calledAtMs: number; doneAtMs: number; handsMs: number }

/** Both wanted hands at `atMs`; the one that came second was done `waitedMs` after it was called. */
export type HandsMeeting = { atMs: number; first: HandsAct; second: HandsAct; waitedMs: number }

export type Together = { pots: Rehearsal[]; meetings: HandsMeeting[] }

type Pot = { on: TogetherPot; run: RehearsedPot; startMs: number; stuck: string | null }

const TURNS_MOST = 100_000

/** Runs all of them to their ends, on one clock. An act begins when it is called and the hands are free from what another
 * pot wanted before. Never throws; a pot that can't be ended says where it is stuck, and the others go on. */
export function rehearseTogether(
  pots: readonly TogetherPot[],
  startMs: number,
  person: RehearsalPerson = promptPerson
): Together {
  const all = pots.map((on): Pot => {
    const at = startMs + on.afterMs
    return { on, run: new RehearsedPot(on.programme, at), startMs: at, stuck: null }
  })
  const hands = new Hands()
  for (let turn = 0; turn < TURNS_MOST; turn++) {
    const next = earliest(all.map((pot) => nextOf(pot, person, hands)))
    if (next === null) break
    next.take()
  }
  return {
    pots: all.map(({ run, startMs: at, stuck }) => ({ ...rehearsalOf(run, at), stuck })),
    meetings: handsMeetings(
      all.map(({ on, run }) => ({ potId: on.pot.potId, programme: on.programme, told: run.told }))
    )
  }
}

/** One pair of hands: what one pot wants of them keeps the others waiting. */
export class Hands {
  #potId: string | null = null
  #freeAtMs = Number.NEGATIVE_INFINITY

  /** When a deed of that pot can be done that is wanted at `atMs`. */
  from(potId: string, atMs: number): number {
    return potId === this.#potId ? atMs : Math.max(atMs, this.#freeAtMs)
  }

  took(potId: string, atMs: number, forMs: number): void {
    if (forMs <= 0) return
    this.#potId = potId
    this.#freeAtMs = Math.max(this.#freeAtMs, atMs + forMs)
  }
}

type Turn = { atMs: number; take(): void }

function nextOf(pot: Pot, person: RehearsalPerson, hands: Hands): Turn | null {
  const { on, run, startMs } = pot
  if (pot.stuck !== null) return null
  if (run.state.status === 'idle') {
    const { programme, protocol } = on
    const start: PotCommand = { type: 'Start', pot: on.pot, protocol, programme, checks: [], cautionsShown: [] }
    return turn(pot, startMs, () => run.send(start, BY_REHEARSAL))
  }
  const live = run.live()
  if (live === null) return null
  if (live.stepsDone) return turn(pot, run.nowMs, () => run.send({ type: 'Finish', bath: 'dropped' }, BY_REHEARSAL))
  pot.stuck = neverComes(live, run.bath, run.nowMs)
  if (pot.stuck !== null) return null
  const due = nextDue(live)[0]
  const deed = nextDeed(live, person)
  const deedMs = deed === null ? Number.POSITIVE_INFINITY : hands.from(on.pot.potId, deed.atMs)
  if (due && due.atMs <= deedMs) {
    return turn(pot, due.atMs, () => run.send({ type: 'PassDue', key: due.key }, { kind: 'clock' }, due.atMs))
  }
  if (deed === null) {
    pot.stuck = `stuck at ${live.active.map(({ path }) => path).join(', ')}`
    return null
  }
  return turn(pot, deedMs, () => {
    hands.took(on.pot.potId, run.nowMs, handsOf(deed))
    const refused = run.send(commandFor(live, deed, person, run.bath.tempC(run.nowMs)), BY_REHEARSAL)
    return refused === null ? null : `${deed.step.path}: ${refused}`
  })
}

function turn(pot: Pot, atMs: number, take: () => string | null): Turn {
  return {
    atMs,
    take() {
      pot.run.goTo(atMs)
      pot.stuck = take()
    }
  }
}

function earliest(turns: readonly (Turn | null)[]): Turn | null {
  let first: Turn | null = null
  for (const each of turns) if (each !== null && (first === null || each.atMs < first.atMs)) first = each
  return first
}

/** How long a deed keeps the hands. */
export function handsOf({ step }: Pick<Deed, 'step'>): number {
  return step.soft ? 0 : step.hands.likelyMs
}

type ToldPot = { potId: string; programme: Programme; told: readonly Pick<Told, 'atMs' | 'by' | 'event'>[] }

/** Where hands were wanted by two pots at once, in the order of time. An act wants them from its call until it was done,
 * and at least for as long as it likely takes. */
export function handsMeetings(pots: readonly ToldPot[]): HandsMeeting[] {
  const acts = pots.map(actsOf)
  const met: HandsMeeting[] = []
  acts.forEach((ofOne, nth) => {
    for (const ofOther of acts.slice(nth + 1)) {
      for (const a of ofOne) for (const b of ofOther) if (overlap(a, b)) met.push(meetingOf(a, b))
    }
  })
  return met.sort((a, b) => a.atMs - b.atMs)
}

/** The acts of a pot that called for hands and got them. */
export function actsOf({ potId, programme, told }: ToldPot): HandsAct[] {
  const calledAt = new Map<string, number>()
  const acts: HandsAct[] = []
  for (const { atMs, event } of told) {
    if (event.type === 'AlertRaised' && event.kind === 'call' && event.path !== null) calledAt.set(event.path, atMs)
    if (event.type !== 'StepClosed') continue
    const calledAtMs = calledAt.get(event.path)
    const step = stepAt(programme, event.path)
    if (calledAtMs === undefined || step === null) continue
    calledAt.delete(event.path)
    acts.push({ potId, path: event.path, calledAtMs, doneAtMs: atMs, handsMs: handsOf({ step }) })
  }
  return acts
}

const endOf = ({ calledAtMs, doneAtMs, handsMs }: HandsAct): number => Math.max(doneAtMs, calledAtMs + handsMs)

function overlap(a: HandsAct, b: HandsAct): boolean {
  return a.calledAtMs < endOf(b) && b.calledAtMs < endOf(a)
}

function meetingOf(a: HandsAct, b: HandsAct): HandsMeeting {
  const [first, second] = a.doneAtMs <= b.doneAtMs ? [a, b] : [b, a]
  return {
    atMs: Math.max(a.calledAtMs, b.calledAtMs),
    first,
    second,
    waitedMs: second.doneAtMs - second.calledAtMs
  }
}
