// One simulated day: pots, people and faults by chance, and everything that must hold all along.
import type { PotCommand } from '../../src/core/pot/commands.ts'
import type { Programme } from '../../src/core/protocol/model.ts'
import { identity } from '../core/pot/given.ts'
import { MIN } from '../core/pot/programmes.ts'
import { atTheStove } from './at-the-stove.ts'
import { Chance } from './chance.ts'
import { programmeByChance } from './chance-programme.ts'
import { checkHeard, checkJournals, checkRaised, checkShown } from './checks.ts'
import { Counts } from './counts.ts'
import { trouble } from './faults.ts'
import { finishAll } from './finish.ts'
import { Kitchen, type KitchenOptions } from './kitchen.ts'
import { type Person, personByChance } from './people.ts'
import { momentsOf } from './rules/standing.ts'
import type { Tab } from './tab.ts'

export type DayResult = { seed: number; complaints: string[]; counts: Counts; entries: number }

/** Kinds of fault that a day may have; a day has a few of them, or none. */
export type Habits = { faults: number; tabs: boolean; clocks: boolean }

export class Day {
  readonly chance: Chance
  readonly counts = new Counts()
  readonly kitchen: Kitchen
  readonly person: Person
  readonly habits: Habits
  /** Of its own, so that what befalls the rungs leaves the rest of the day as it is. */
  readonly #rungChance: Chance
  readonly #programmes: { potId: string; colourway: string; programme: Programme }[] = []
  #started = 0

  constructor(seed: number, options: KitchenOptions) {
    this.chance = new Chance(seed)
    this.#rungChance = new Chance(seed + 0x1000_0000)
    this.kitchen = new Kitchen(this.chance.branch(), this.counts, options)
    this.person = personByChance(this.chance, this.counts)
    const { chance } = this
    this.habits = { faults: chance.pick([0, 0.1, 0.3, 0.6]), tabs: chance.of(0.5), clocks: chance.of(0.5) }
    const pots = chance.whole(1, 4)
    this.counts.add('construct', `${pots} pots`)
    const names = ['Plum', 'Moss', 'Rust', 'Slate']
    for (let i = 0; i < pots; i++) {
      const programme = programmeByChance(chance.branch(), this.counts)
      this.#programmes.push({ potId: `pot-${i + 1}`, colourway: names[i] as string, programme })
    }
    this.#roughen()
  }

  #roughen(): void {
    const { chance, habits } = this
    if (habits.faults === 0) return
    this.kitchen.weather.roughness = {
      fails: chance.pick([0, 0.03, 0.15]),
      slow: chance.pick([0, 0.05, 0.3]),
      crashes: chance.pick([0, 0.005, 0.02]),
      readFails: chance.pick([0, 0, 0.1])
    }
  }

  /** Starts the next pot of the day, if there is one. */
  startPot(tab: Tab): void {
    const next = this.#programmes[this.#started]
    if (!next) return
    this.#started += 1
    const { potId, colourway, programme } = next
    const protocol = { title: 'By chance', text: 'strandline: 1', version: 'v1', from: 'file' as const }
    const pot = { ...identity(potId, colourway), skeins: [{ tag: `${colourway} 1`, massG: 100 }] }
    const command: PotCommand = { type: 'Start', pot, protocol, programme, checks: [], cautionsShown: [] }
    const sent = this.kitchen.send(tab, potId, command)
    if (this.chance.of(this.person.doubleTaps)) {
      const commandId = this.chance.of(0.5) ? sent.commandId : undefined
      this.kitchen.send(tab, potId, command, { commandId })
    }
  }

  /** Time passes awake, with a tick at the latest a second after each moment. */
  async pass(ms: number): Promise<void> {
    const { kitchen, chance } = this
    const untilMs = kitchen.nowMs + ms
    for (let ticks = 0; ticks < 400 && kitchen.nowMs < untilMs; ticks++) {
      const pots = kitchen.owner?.session.pots() ?? []
      const coming = pots.flatMap(({ state }) => momentsOf(state).map(({ atMs }) => atMs))
      const nextMs = Math.min(...coming.filter((atMs) => atMs > kitchen.nowMs))
      const tickMs = chance.of(0.15) ? nextMs - 1 : nextMs + chance.whole(0, 999)
      const toMs = Math.min(untilMs, Math.max(tickMs, kitchen.nowMs + 1))
      const before = kitchen.owner
      const wasQuiet = before !== null && kitchen.isQuiet(before)
      kitchen.clock.advance(toMs - kitchen.nowMs)
      if (kitchen.owner) checkHeard(kitchen, kitchen.owner)
      await kitchen.settle()
      if (wasQuiet && kitchen.owner === before) checkRaised(kitchen, kitchen.owner)
    }
  }

  async run(): Promise<void> {
    const { kitchen, chance, person } = this
    const turns = chance.whole(12, 40)
    this.startPot(await kitchen.openTab())
    if (this.habits.tabs) await kitchen.openTab()
    for (let turn = 0; turn < turns && kitchen.complaints.length === 0; turn++) {
      if (chance.of(this.habits.faults)) await trouble(this)
      for (const each of kitchen.tabs) each.rungs.stir(this.#rungChance, this.counts)
      const tab = kitchen.owner
      if (tab && !tab.frozen) {
        if (chance.of(0.2)) this.startPot(tab)
        atTheStove(this, tab)
      }
      if (chance.of(0.8)) await kitchen.settle()
      await this.pass(chance.of(0.3) ? chance.whole(1, 5_000) : chance.whole(1, person.turnMostMin * MIN))
      if (chance.of(0.05)) for (const each of kitchen.tabs) if (!each.frozen) checkShown(kitchen, each)
    }
    if (kitchen.complaints.length > 0) return
    const last = await this.#clearUp()
    checkShown(kitchen, last)
    checkJournals(kitchen)
    if (kitchen.complaints.length > 0) return
    await finishAll(this, last)
    await kitchen.settle()
    checkShown(kitchen, last)
    checkJournals(kitchen)
  }

  /** The weather clears and one tab is left, which owns. */
  async #clearUp(): Promise<Tab> {
    const { kitchen, chance } = this
    kitchen.weather.clear()
    for (const tab of kitchen.tabs) tab.fuse = null
    const survivor = kitchen.owner
    if (!survivor || chance.of(0.3)) {
      for (const tab of [...kitchen.tabs]) kitchen.kill(tab)
    } else {
      for (const tab of [...kitchen.tabs]) if (tab !== survivor) kitchen.kill(tab)
      survivor.thaw()
    }
    kitchen.stale = null
    const tab = kitchen.owner ?? (await kitchen.openTab())
    // Longer than any slow write and than the pause before a failed one is tried again.
    for (let i = 0; i < 8; i++) await this.pass(6_000)
    await kitchen.settle()
    if (tab.session.jump()) kitchen.declareClockSet(tab)
    void tab.session.retry()
    await kitchen.settle()
    if (!kitchen.isQuiet(tab)) kitchen.complain('something is still unsaved though the store is well again')
    return tab
  }
}

/** Runs the day of a seed. `complaints` is empty when all held. */
export async function runDay(seed: number, options: KitchenOptions = {}): Promise<DayResult> {
  const day = new Day(seed, options)
  const { kitchen, counts } = day
  try {
    await day.run()
  } catch (error) {
    kitchen.complain(`thrown: ${error instanceof Error ? error.stack : error}`)
  }
  for (const tab of [...kitchen.tabs]) kitchen.kill(tab)
  for (const streamId of kitchen.store.streamIds()) {
    for (const { event } of kitchen.store.stream(streamId)) counts.add('event', event.type)
  }
  return { seed, complaints: kitchen.complaints, counts, entries: kitchen.store.landed }
}
