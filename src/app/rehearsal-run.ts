// A rehearsal on the screen, beside the real pots. Loaded when one is begun.
import { batch, computed, signal } from '@preact/signals'
import { forgetfulPerson, promptPerson, type RehearsalPerson, slowPerson } from '../session/rehearsal-person.ts'
import type { PotAlert } from '../session/types.ts'
import type { Tabs } from '../shell/ownership/tabs.ts'
import type { Player } from '../shell/sound/player.ts'
import type { Kitchen } from '../ui/kitchen.ts'
import type { RehearsalAnswers, RehearsalReport, RehearsalRun, RehearsalWish } from '../ui/rehearsing.ts'
import { commands } from './commands.ts'
import { expecterWith } from './expected-heat.ts'
import { makeKitchen } from './kitchen.ts'
import type { Ladder } from './ladder.ts'
import { rehearsalReport } from './rehearsal-report.ts'
import { RehearsalStove } from './rehearsal-stove.ts'
import { type KeptSettings, levelOf } from './settings.ts'
import type { StoredProtocols } from './stored-protocols.ts'

export type RehearsalParts = {
  settings: KeptSettings
  protocols: StoredProtocols
  player: Player
  newId: () => string
  nowMs: () => number
  /** While a real pot is on a rehearsal is silent: what sounds is meant. */
  realPots: () => boolean
}

const BEAT_MS = 50
/** A page that was hidden or asleep does not make up for it. */
const BEAT_MOST_MS = 500
/** More happens in no rehearsal; one that goes on after it goes in circles. */
const TURNS_MOST = 100_000

const persons: Record<RehearsalAnswers, RehearsalPerson | null> = {
  own: null,
  prompt: promptPerson,
  slow: slowPerson,
  forgetful: forgetfulPerson
}

export async function beginRehearsal(parts: RehearsalParts, wish: RehearsalWish): Promise<RehearsalRun> {
  const run = new Run(parts, wish)
  await run.begin()
  return run
}

class Run implements RehearsalRun {
  readonly speed
  readonly answers
  readonly kitchen: Kitchen
  readonly paused = signal(false)
  readonly sounds = signal(true)
  readonly passedMs = signal(0)
  readonly baths = signal<RehearsalRun['baths']['value']>([])
  readonly coming = signal<RehearsalRun['coming']['value']>([])
  readonly stuck = signal<string | null>(null)
  readonly first = signal<string | null>(null)
  readonly report = signal<RehearsalReport | null>(null)
  readonly goes = computed(() => {
    if (this.paused.value || this.report.value !== null) return 0
    return this.#asked.value ? Math.min(1, this.speed.value) : this.speed.value
  })
  /** The dyer is asked: the clock goes no faster than at the stove. */
  readonly #asked = signal(false)
  readonly #parts: RehearsalParts
  readonly #stove: RehearsalStove
  #sounded = new Set<string>()
  #going: Promise<unknown> = Promise.resolve()
  #busy = 0
  #beatMs = performance.now()
  #timer: ReturnType<typeof setInterval> | undefined
  #turns = 0
  #closed = false

  constructor(parts: RehearsalParts, { pots, answers, speed }: RehearsalWish) {
    this.#parts = parts
    this.speed = signal(speed)
    this.answers = signal(answers)
    this.#stove = new RehearsalStove(pots, parts.nowMs(), parts.newId, (alerts) => this.#sound(alerts))
    this.kitchen = kitchenOf(parts, this.#stove)
  }

  async begin(): Promise<void> {
    await this.#stove.session.open()
    this.#stove.session.subscribe(() => this.#heard())
    await this.#inTurn(() => this.#pass(0))
    this.#timer = setInterval(() => this.#beat(), BEAT_MS)
  }

  close(): void {
    this.#closed = true
    clearInterval(this.#timer)
    this.#stove.session.close()
  }

  setSpeed(speed: number): void {
    this.speed.value = speed
  }

  setAnswers(answers: RehearsalAnswers): void {
    this.answers.value = answers
    this.stuck.value = null
    this.first.value = null
    this.#look()
  }

  pause(on: boolean): void {
    this.paused.value = on
    this.stuck.value = null
  }

  setSounds(on: boolean): void {
    this.sounds.value = on
  }

  async toNextCall(): Promise<void> {
    const waits = this.#waits()
    this.first.value = waits
    if (waits !== null) return
    this.pause(false)
    const stood = this.#stove.calling()
    const fresh = (): boolean => this.#stove.calling().some((key) => !stood.includes(key))
    await this.#inTurn(async () => {
      // A call that came since the press is the next one.
      if (fresh()) return
      const nothing = await this.#go(Number.POSITIVE_INFINITY, fresh)
      if (nothing && this.answers.value === 'own') this.first.value = 'Nothing comes by itself now.'
    })
  }

  /** What the dyer is to do before anything is skipped, in words. */
  #waits(): string | null {
    const pot = this.answers.value === 'own' ? this.#stove.wanting() : null
    return pot && `Answer ${pot.identity.colourway} first.`
  }

  /** A pot was told something, by whomever: also the dyer's own answer may be the last. */
  #heard(): void {
    if (this.first.value !== null) this.first.value = this.#waits()
    if (this.report.value === null && this.#stove.ended()) void this.#inTurn(() => this.#end())
  }

  async #end(): Promise<void> {
    if (this.report.value === null && this.#stove.ended()) this.report.value = await rehearsalReport(this.#stove)
  }

  #beat(): void {
    const nowMs = performance.now()
    const realMs = Math.min(BEAT_MOST_MS, nowMs - this.#beatMs)
    this.#beatMs = nowMs
    if (this.#busy > 0 || this.goes.value === 0) return
    void this.#inTurn(() => this.#pass(realMs * this.goes.value))
  }

  /** One thing at a time moves the clock. */
  async #inTurn(work: () => Promise<unknown>): Promise<void> {
    this.#busy += 1
    // What breaks is said, and does not stop the turns after it.
    const broke = (error: unknown): void => this.#stop(`It broke: ${error instanceof Error ? error.message : error}`)
    this.#going = this.#going
      .then(work)
      .catch(broke)
      .finally(() => {
        this.#busy -= 1
        this.#look()
      })
    await this.#going
  }

  async #pass(ms: number): Promise<void> {
    const toMs = this.#stove.clock.nowMs() + ms
    const asked = (): boolean => this.answers.value === 'own' && this.#stove.calling().length > 0
    if (await this.#go(toMs, asked)) await this.#stove.goTo(toMs)
  }

  /** Goes on from event to event, none of them after `toMs`. True: nothing is left to happen by then. */
  async #go(toMs: number, enough: () => boolean): Promise<boolean> {
    while (!this.#closed && this.report.value === null) {
      const never = this.answers.value === 'own' ? null : this.#stove.never()
      if (never !== null) {
        this.#stop(never)
        return false
      }
      const next = this.#stove.next(persons[this.answers.value])
      if (next === null || next.atMs > toMs) {
        if (next === null && this.answers.value !== 'own') this.#stop(`Nobody here can answer ${this.#stove.at()}.`)
        return true
      }
      if (++this.#turns > TURNS_MOST) this.#stop(`It goes in circles at ${this.#stove.at()}.`)
      await this.#stove.goTo(next.atMs)
      const refused = await next.take()
      await this.#stove.goTo(next.atMs)
      if (refused !== null) this.#stop(refused)
      await this.#end()
      if (this.stuck.value !== null || enough()) return false
    }
    return false
  }

  #stop(why: string): void {
    this.stuck.value = why
    this.paused.value = true
    this.#turns = 0
  }

  #look(): void {
    const { clock, startMs, pots } = this.#stove
    const nowMs = clock.nowMs()
    const name = ({ identity }: (typeof pots)[number]): string => identity.colourway
    batch(() => {
      this.passedMs.value = nowMs - startMs
      this.#asked.value = this.answers.value === 'own' && this.#stove.calling().length > 0
      const on = pots.filter((pot) => this.#stove.live(pot) !== null)
      const shown = on.map((pot) => ({ name: name(pot), tempC: Math.round(pot.bath.tempC(nowMs)) }))
      if (JSON.stringify(shown) !== JSON.stringify(this.baths.value)) this.baths.value = shown
      const later = pots.filter(({ started }) => !started)
      if (later.length === 0 && this.coming.value.length === 0) return
      this.coming.value = later.map((pot) => ({ name: name(pot), inMs: startMs + pot.on.startsMs - nowMs }))
    })
  }

  /** A call sounds once, when it begins: a rehearsal is no alarm. */
  #sound(alerts: readonly PotAlert[]): void {
    const standing = alerts.filter(({ alert }) => alert.kind !== 'headsUp').map((on) => on.potId + on.alert.key)
    const fresh = standing.some((key) => !this.#sounded.has(key))
    this.#sounded = new Set(standing)
    const level = levelOf(this.#parts.settings.settings.value)
    if (!fresh || level === null || !this.sounds.value || this.answers.value !== 'own') return
    if (!this.#parts.realPots()) this.#parts.player.play('now', level)
  }
}

const noTabs: Tabs = { say: () => {}, ask: async () => null, onWord: () => () => {}, close: () => {} }

/** A Kitchen with nothing around its stove: no screen lock, no rungs, no other tab, no other screen. */
function kitchenOf({ settings, protocols, player, newId }: RehearsalParts, stove: RehearsalStove): Kitchen {
  const { clock, journal, session } = stove
  const owner = { owns: () => true, settled: Promise.resolve(), take: async () => {}, onChange: () => () => {} }
  const ladder: Ladder = { lamps: signal([]), raise: () => {}, look: () => {}, told: () => [], add: () => {} }
  const kitchen = makeKitchen({
    clock,
    journal,
    session,
    commands: commands(session, owner, noTabs, newId),
    owner,
    ladder,
    player,
    lock: { want: () => {}, state: () => 'not-wanted', retry: async () => true, onState: () => () => {} },
    extras: signal(null),
    // What other batches did tells nothing of a rehearsed pot.
    expecter: expecterWith([]),
    settings,
    protocols,
    route: { route: signal('#/stove'), go: () => {} },
    updates: { waiting: signal(false), apply: async () => {} },
    newId,
    rehearsal: true
  })
  return { ...kitchen, lamps: signal([]) }
}
