// The stove of a rehearsal: the real session over a journal in memory, on a clock that goes from one event to the next.
import { bathSwatches } from '../core/colour/bath-swatches.ts'
import type { AlertKind, PotIdentity } from '../core/pot/events.ts'
import { nextDue } from '../core/pot/next-due.ts'
import type { LiveState } from '../core/pot/state.ts'
import { createSession } from '../session/create-session.ts'
import { neverComes } from '../session/never-comes.ts'
import type { PotEntry } from '../session/ports.ts'
import { BY_REHEARSAL, commandFor, nextDeed, type RehearsalPerson } from '../session/rehearsal-person.ts'
import { Hands, handsOf } from '../session/rehearse-together.ts'
import { SimulatedBath } from '../session/simulated-bath.ts'
import type { PotAlert, PotView, Session } from '../session/types.ts'
import { type HandClock, handClock } from '../shell/clock/hand-clock.ts'
import { type MemoryJournal, memoryJournal } from '../shell/journal/memory-journal.ts'
import type { RehearsedPot } from '../ui/rehearsing.ts'

/** One pot of the rehearsal: what it is, and what a thermometer in it would show. */
export type PotOfRehearsal = {
  identity: PotIdentity
  on: RehearsedPot
  started: boolean
  bath: SimulatedBath
}

/** The next thing that happens; taking it gives the sentence of a refusal, or null. */
type Turn = { atMs: number; take(): Promise<string | null> }

/** Hues far from each other, so that pots are told apart. */
const names = ['Plum', 'Moss', 'Ochre', 'Indigo', 'Brick', 'Sea']

const unanswerable: AlertKind[] = ['headsUp', 'gap', 'heat']

export class RehearsalStove {
  readonly clock: HandClock
  readonly journal: MemoryJournal = memoryJournal()
  readonly session: Session
  readonly pots: PotOfRehearsal[]
  readonly startMs: number
  /** All that was told of a pot, ended or not. */
  readonly told = async (potId: string): Promise<PotEntry[]> => (await this.journal.read(`pot/${potId}`)) as PotEntry[]
  readonly #hands = new Hands()
  readonly #heeded = new Map<string, number>()

  constructor(pots: readonly RehearsedPot[], startMs: number, newId: () => string, onAlerts: (on: PotAlert[]) => void) {
    this.startMs = startMs
    this.clock = handClock(startMs, { bootId: newId(), tzOffsetMin: -new Date(startMs).getTimezoneOffset() })
    this.pots = pots.map((on, nth) => ({
      identity: identityOf(on, nth, newId),
      on,
      started: false,
      bath: new SimulatedBath(on.programme, startMs + on.startsMs)
    }))
    const { clock, journal } = this
    this.session = createSession({ clock, journal, ids: { newId, writerId: newId() }, onAlerts, told: () => [] })
    this.session.subscribe(() => this.#heed())
  }

  live(pot: PotOfRehearsal): LiveState | null {
    const state = this.session.pots().find(({ potId }) => potId === pot.identity.potId)?.state
    return state?.status === 'running' || state?.status === 'held' ? state : null
  }

  /** Everything has been started and has ended. */
  ended(): boolean {
    return this.pots.every((pot) => pot.started && this.live(pot) === null)
  }

  /** What the pots are at, for saying where they are stuck. */
  at(): string {
    const paths = this.pots.flatMap((pot) =>
      (this.live(pot)?.active ?? []).map(({ path }) => `${pot.identity.colourway}: ${path}`)
    )
    return paths.join(', ')
  }

  /** Why a pot will never go on, whoever answers. */
  never(): string | null {
    for (const pot of this.pots) {
      const live = this.live(pot)
      const why = live && neverComes(live, pot.bath, this.clock.nowMs())
      if (why) return `${pot.identity.colourway}: ${why}.`
    }
    return null
  }

  /** The calls that stand, each by a key of its own. */
  calling(): string[] {
    const calls = ({ potId, alerts }: PotView): string[] =>
      alerts.filter(({ kind }) => kind !== 'headsUp').map(({ key }) => `${potId} ${key}`)
    return this.session.pots().flatMap(calls)
  }

  /** A pot with a call that an answer ends. A limit that runs out and heat left on are ended by other deeds, maybe later. */
  wanting(): PotOfRehearsal | null {
    const wants = ({ alerts }: PotView): boolean => alerts.some(({ kind }) => !unanswerable.includes(kind))
    const wanting = this.session.pots().find(wants)
    return this.pots.find(({ identity }) => identity.potId === wanting?.potId) ?? null
  }

  /** What comes next, with that person at the stove; `person` null: the dyer answers. */
  next(person: RehearsalPerson | null): Turn | null {
    let first: Turn | null = null
    for (const pot of this.pots) {
      const turn = this.#nextOf(pot, person)
      if (turn !== null && (first === null || turn.atMs < first.atMs)) first = turn
    }
    return first
  }

  /** The clock goes on to that hour, and what is due by then is passed. */
  async goTo(atMs: number): Promise<void> {
    const byMs = atMs - this.clock.nowMs()
    if (byMs > 0) this.clock.advance(byMs)
    await this.session.wake()
  }

  #nextOf(pot: PotOfRehearsal, person: RehearsalPerson | null): Turn | null {
    const { identity, on, bath } = pot
    const { potId } = identity
    if (!pot.started) return { atMs: this.startMs + on.startsMs, take: () => this.#start(pot) }
    const live = this.live(pot)
    if (live === null) return null
    const nowMs = this.clock.nowMs()
    const due = nextDue(live)[0]
    const passed: Turn | null = due === undefined ? null : { atMs: due.atMs, take: () => Promise.resolve(null) }
    if (person === null) return passed
    if (live.stepsDone) return { atMs: nowMs, take: () => this.#send(potId, { type: 'Finish', bath: 'dropped' }) }
    const deed = nextDeed(live, person)
    if (deed === null) return passed
    const atMs = this.#hands.from(potId, deed.atMs)
    if (passed !== null && passed.atMs <= atMs) return passed
    return {
      atMs: Math.max(atMs, nowMs),
      take: () => {
        this.#hands.took(potId, this.clock.nowMs(), handsOf(deed))
        return this.#send(potId, commandFor(live, deed, person, bath.tempC(this.clock.nowMs())))
      }
    }
  }

  #start(pot: PotOfRehearsal): Promise<string | null> {
    pot.started = true
    const { programme, protocol } = pot.on
    const { identity } = pot
    return this.#send(identity.potId, {
      type: 'Start',
      pot: identity,
      protocol,
      programme,
      checks: [],
      cautionsShown: []
    })
  }

  async #send(potId: string, command: Parameters<Session['send']>[1]): Promise<string | null> {
    const sent = await this.session.send(potId, command, { by: BY_REHEARSAL })
    if (sent.ok) return null
    return sent.why === 'refused' ? sent.refusal.say : `It could not go on (${sent.why}).`
  }

  #heed(): void {
    for (const { identity, bath } of this.pots) {
      const entries = this.session.entriesOf(identity.potId)
      for (const { event, atMs } of entries.slice(this.#heeded.get(identity.potId) ?? 0)) bath.heed(event, atMs)
      this.#heeded.set(identity.potId, entries.length)
    }
  }
}

function identityOf({ programme, protocol }: RehearsedPot, nth: number, newId: () => string): PotIdentity {
  const name = names[nth % names.length] as string
  const letter = String.fromCharCode('A'.charCodeAt(0) + nth)
  return {
    potId: newId(),
    batchName: `${protocol.title}, rehearsed`,
    colourway: name,
    letter,
    burner: '',
    colour: bathSwatches.find((swatch) => swatch.name === name)?.colour ?? '',
    skeins: [{ tag: `${letter}1`, massG: programme.goodsMassG }],
    fibre: 'wool',
    parentBatchId: null,
    bath: { bathId: newId(), number: 1, parentBatchId: null, unknownDyeLeft: false },
    by: null
  }
}
