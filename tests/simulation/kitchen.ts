// The world of one simulated day: clocks, the store, the tabs, and what people were told.
import type { PotCommand } from '../../src/core/pot/commands.ts'
import type { By } from '../../src/core/pot/events.ts'
import type { JournalPort, PotEntry } from '../../src/session/ports.ts'
import type { Outcome } from '../../src/session/types.ts'
import { type HandClock, handClock } from '../../src/shell/clock/hand-clock.ts'
import { memoryJournal } from '../../src/shell/journal/memory-journal.ts'
import { T0 } from '../core/pot/given.ts'
import type { Chance } from './chance.ts'
import { bytesOf } from './commands-by-chance.ts'
import type { Counts } from './counts.ts'
import { openTab, type Tab } from './tab.ts'
import { WatchedStore } from './watched-store.ts'
import { isCrash, Weather } from './weather.ts'

export type Sent = { commandId: string; potIds: string[]; command: PotCommand; tab: Tab; outcome: Outcome | null }

export type KitchenOptions = {
  /** Puts a journal of its own between the session and the store: planted bugs. */
  journal?: (inner: JournalPort, kitchen: Kitchen) => JournalPort
}

const BY: By[] = [
  { kind: 'person', name: null, via: 'tap' },
  { kind: 'person', name: null, via: 'pedal' },
  { kind: 'reading', from: 'probe' }
]

export class Kitchen {
  readonly chance: Chance
  readonly counts: Counts
  readonly clock: HandClock
  readonly store = new WatchedStore()
  readonly weather: Weather
  readonly complaints: string[] = []
  readonly sent: Sent[] = []
  /** Tabs that live; the first owner is in `owner`. */
  tabs: Tab[] = []
  owner: Tab | null = null
  /** A tab that still believes that it owns: frozen or slow when another took over. */
  stale: Tab | null = null
  writerId = 'w1'
  /** How far the clock was set back in all. */
  setBackMs = 0
  readonly #options: KitchenOptions
  readonly #onTheWay = new Set<{ tab: Tab }>()
  #told: { tab: Tab; potIds: string[] }[] = []
  #sleepers: { atMs: number; tab: Tab | null; go: () => void }[] = []
  #ids = 0
  #tabs = 0

  constructor(chance: Chance, counts: Counts, options: KitchenOptions = {}, startMs = T0) {
    this.chance = chance
    this.counts = counts
    this.#options = options
    this.clock = handClock(startMs)
    this.weather = new Weather(chance.branch(), counts)
  }

  get nowMs(): number {
    return this.clock.nowMs()
  }

  complain(what: string): void {
    if (!this.complaints.includes(what)) this.complaints.push(what)
  }

  /** A tab is opened on the store; it owns when nobody does. */
  async openTab(): Promise<Tab> {
    let opened: Tab | null = null
    const inner = memoryJournal({
      store: this.store.store,
      fault: () => {
        const fault = this.weather.ofWrite()
        if (opened !== null && isCrash(fault)) this.kill(opened)
        return fault
      },
      failRead: () => this.weather.ofReading(),
      wait: (ms) =>
        opened?.dead || opened?.frozen
          ? Promise.resolve()
          : new Promise((go) => this.#sleepers.push({ atMs: this.clock.monoMs() + ms, tab: opened, go }))
    })
    const tab = openTab(`t${++this.#tabs}`, {
      clock: this.clock,
      journal: this.#options.journal?.(inner, this) ?? inner,
      newId: () => `id-${++this.#ids}`,
      writerId: this.writerId,
      owns: (which) => which === this.owner || which === this.stale,
      onStored: (from, potIds) => this.#told.push({ tab: from, potIds }),
      onDeath: (which) => this.kill(which),
      complain: (what) => this.complain(what)
    })
    opened = tab
    this.tabs.push(tab)
    this.owner ??= tab
    void tab.session.open()
    await this.settle()
    return tab
  }

  /** The page is gone in this very moment, with all that it had in memory. */
  kill(tab: Tab): void {
    tab.dead = true
    // A write on its way lands now or never: the database lets nobody read between a dead page's order and its end.
    this.#endWrites(tab, 0.5)
    tab.session.close()
    this.tabs = this.tabs.filter((each) => each !== tab)
    if (this.owner === tab) this.owner = null
    if (this.stale !== tab) return
    // It wrote as an owner to its end: what it stored last was told.
    this.stale = null
    this.#told.push({ tab, potIds: this.store.streamIds().map((id) => id.slice('pot/'.length)) })
  }

  /** The page stands still. What it had ordered of the database is done all the same, before anybody else reads. */
  freeze(tab: Tab): void {
    tab.frozen = true
    this.#endWrites(tab, 1)
  }

  #endWrites(tab: Tab, landing: number): void {
    for (const each of this.#sleepers) if (each.tab === tab && this.chance.of(landing)) each.go()
    this.#sleepers = this.#sleepers.filter((each) => each.tab !== tab)
  }

  /** Somebody says in a tab that the clock was set. */
  declareClockSet(tab: Tab): void {
    const shift = { tab }
    this.#onTheWay.add(shift)
    void tab.session.declareClockSet().then(() => this.#onTheWay.delete(shift))
  }

  newCommandId(): string {
    return `tap-${++this.#ids}`
  }

  /** Sends without waiting for the answer; it is told in `sent` when it comes. */
  send(
    tab: Tab,
    potId: string,
    command: PotCommand,
    options: { agoMs?: number; commandId?: string; with?: { potId: string; command: PotCommand } } = {}
  ): Sent {
    const commandId = options.commandId ?? this.newCommandId()
    const second = options.with
    const potIds = second === undefined ? [potId] : [potId, second.potId]
    const sent: Sent = { commandId, potIds, command, tab, outcome: null }
    this.sent.push(sent)
    this.#onTheWay.add(sent)
    this.counts.add('command', command.type)
    if (second !== undefined) this.counts.add('command', 'two pots at once')
    const by = this.chance.of(0.9) ? (BY[0] as By) : this.chance.pick(BY)
    const options_ = { by, agoMs: options.agoMs, commandId, media: bytesOf(command) }
    const answer: Promise<Outcome> =
      second === undefined
        ? tab.session.send(potId, command, options_)
        : tab.session.sendBoth({ potId, command }, second, options_)
    answer.then(
      (outcome) => {
        if (!tab.dead) this.#answered(sent, outcome)
      },
      (error) => this.complain(`sending ${command.type} threw: ${error}`)
    )
    return sent
  }

  #answered(sent: Sent, outcome: Outcome): void {
    sent.outcome = outcome
    this.#onTheWay.delete(sent)
    if (!outcome.ok) {
      this.counts.add('outcome', outcome.why === 'not-saved' ? `not saved, ${outcome.failure.why}` : outcome.why)
      if (outcome.why === 'refused') this.counts.add('refusal', outcome.refusal.code)
      if (outcome.why === 'read-only') this.complain(`a pot became read-only: ${outcome.say}`)
      return
    }
    this.counts.add('outcome', 'confirmed')
    // What a person is told is done is stored by then.
    this.store.confirm(sent.commandId, sent.potIds, outcome.entries, (what) => this.complain(what))
  }

  /** Lets everything run that needs no time. */
  async settle(): Promise<void> {
    for (;;) {
      await new Promise<void>((go) => setImmediate(go))
      const due = this.#sleepers.filter(({ atMs }) => atMs <= this.clock.monoMs())
      const told = this.#told
      if (due.length === 0 && told.length === 0) return
      this.#sleepers = this.#sleepers.filter((each) => !due.includes(each))
      for (const { go } of due) go()
      this.#told = []
      for (const { tab: from, potIds } of told) {
        for (const tab of this.tabs) if (tab !== from) void tab.session.refresh(potIds)
      }
    }
  }

  /** A tap or a shift of this tab waits for its answer. */
  sentOnTheWay(tab: Tab): boolean {
    for (const each of this.#onTheWay) if (each.tab === tab) return true
    return false
  }

  /** Nothing of this tab is on its way. */
  isQuiet(tab: Tab): boolean {
    return !this.sentOnTheWay(tab) && this.#sleepers.length === 0 && !tab.frozen && tab.session.notSaved() === null
  }

  stored(potId: string): PotEntry[] {
    return this.store.stream(`pot/${potId}`)
  }
}
