// Deeds laid out as steps, the time between them as waits.
import type { Step } from '../../protocol/model.ts'
import { hourMs, minuteMs, secondMs } from '../../quantity/index.ts'
import { comment, step, type Written } from './text.ts'
import type { Deed, Rise, Told, Waited } from './told.ts'
import { type Act, tempText, waitFieldsOf } from './words.ts'

/** Less between two acts is one going over into the other. Common practice, no source. */
export const SPAN_LEAST_MS = 20 * secondMs
/** A protocol may last 60 days; what a clock gone wrong made longer is cut. */
const ALL_MOST_MS = 50 * 24 * hourMs
const SECOND_5 = 5 * secondMs
/** The hottest that a protocol may ask for short of the boil. */
const BOIL_FROM_C = 99.5
const RATE_MOST = 50

/** Rounded as a dyer would say it: to 5 s under 5 min, to 30 s under 30 min, else to 1 min. */
export function roundedMs(ms: number): number {
  const to = ms < 5 * minuteMs ? 5 * secondMs : ms < 30 * minuteMs ? 30 * secondMs : minuteMs
  return Math.round(ms / to) * to
}

/** `expectedFromC`: of each rise, in their order, where the programme presumes that it begins. Empty: not known yet. */
export function laidOut(told: Told, expectedFromC: readonly number[]): Written[] {
  return new Layout(told, expectedFromC).all()
}

class Layout {
  readonly #told: Told
  readonly #fromC: readonly number[]
  readonly #written: Written[] = []
  /** Soaking, airing or drying has begun, and no time has passed since. */
  #resting: Act | null = null
  #comments: Extract<Deed, { kind: 'comment' }>[] = []
  #heatOn = false
  #rises = 0
  /** Where the text's own time is, and the real time it was last brought up to. */
  #textMs: number
  #realMs: number
  readonly #startMs: number

  constructor(told: Told, fromC: readonly number[]) {
    this.#told = told
    this.#fromC = fromC
    this.#startMs = firstMs(told)
    this.#textMs = this.#startMs
    this.#realMs = this.#startMs
  }

  all(): Written[] {
    const { deeds } = this.#told
    for (let i = 0; i < deeds.length; i++) {
      const deed = deeds[i] as Deed
      if (deed.kind === 'rise') i += this.#rise(deed.rise, deeds.slice(i + 1))
      else this.#one(deed, this.#written)
    }
    this.#say(this.#written, this.#told.endMs)
    this.#pass(this.#told.endMs, this.#written)
    this.#rest(this.#written)
    this.#say(this.#written, Number.POSITIVE_INFINITY)
    if (this.#heatOn) {
      this.#written.push(comment('The heat was still on at the end.'), step('heat', { to: 'off' }, 'to'))
    }
    return this.#written
  }

  #one(deed: Exclude<Deed, { kind: 'rise' }>, into: Written[], leftMs = Number.POSITIVE_INFINITY): void {
    if (deed.kind === 'comment') {
      this.#comments.push(deed)
      return
    }
    // What was said at the act stands at the act, what was said before it before the wait.
    this.#say(into, deed.atMs)
    this.#pass(deed.atMs, into, leftMs)
    this.#rest(into)
    this.#say(into, Number.POSITIVE_INFINITY)
    if (deed.kind === 'off') this.#heatOn = false
    if (deed.act.rest !== null) this.#resting = deed.act
    else into.push(deed.act.written)
  }

  #say(into: Written[], beforeMs: number): void {
    const said = this.#comments.filter(({ atMs }) => atMs < beforeMs)
    if (said.length > 0 && this.#resting === null) into.push(...said.map(({ say }) => comment(say)))
    else if (said.length > 0) return
    this.#comments = this.#comments.filter(({ atMs }) => atMs >= beforeMs)
  }

  /** What began with an act and had no time of its own is that act alone. */
  #rest(into: Written[]): void {
    if (this.#resting !== null) into.push(this.#resting.written)
    this.#resting = null
  }

  /** The time up to a real moment becomes a wait, where it is long enough; else it counts with the next. */
  #pass(toMs: number, into: Written[], mostMs = Number.POSITIVE_INFINITY): void {
    const lackMs = Math.min(toMs - this.#textMs, mostMs, ALL_MOST_MS - (this.#textMs - this.#startMs))
    if (lackMs <= SPAN_LEAST_MS) return
    const ms = Math.min(roundedMs(lackMs), Math.floor(mostMs / SECOND_5) * SECOND_5)
    if (ms < SECOND_5) return
    const covered = longestIn(this.#told.waits, this.#realMs, toMs)
    const resting = this.#resting
    if (resting?.rest && covered?.word === resting.rest) {
      this.#resting = null
      const { for: time = '', ...more } = waitFieldsOf(covered, resting.rest, ms)
      into.push(step(resting.rest, { for: time, ...more, ...resting.restFields }, 'for'))
    } else {
      this.#rest(into)
      const word = this.#wordFor(covered)
      const { for: time = '', ...more } = waitFieldsOf(covered, word, ms)
      // A bare wait is a length of time, a bare hold too.
      const bare = word !== 'hold' && Object.keys(more).length === 0
      into.push(bare ? step(word, { until: time }, 'until') : step(word, { for: time, ...more }, 'for'))
    }
    this.#textMs += ms
    this.#realMs = toMs
  }

  #wordFor(covered: Step | null): 'hold' | 'cool' | 'wait' {
    if (this.#heatOn) return 'hold'
    if (covered?.word === 'hold' || covered?.word === 'cool') return covered.word
    return 'wait'
  }

  /** A rise, with what was done while it went on alongside. Returns how many of the coming deeds it took. */
  #rise(rise: Rise, coming: readonly Deed[]): number {
    this.#say(this.#written, rise.startMs)
    this.#pass(rise.startMs, this.#written)
    this.#rest(this.#written)
    this.#say(this.#written, Number.POSITIVE_INFINITY)
    this.#heatOn = true
    const meanwhile = coming.findIndex((deed) => deed.kind === 'rise' || deed.kind === 'off' || deed.atMs >= rise.endMs)
    const during = coming.slice(0, meanwhile < 0 ? coming.length : meanwhile)
    const { written, ms } = this.#heating(rise)
    if (rise.say !== '') this.#written.push(comment(rise.say))
    if (!during.some((deed) => deed.kind === 'act')) {
      this.#written.push(written)
      for (const deed of during) if (deed.kind === 'comment') this.#comments.push(deed)
      this.#textMs += ms
      this.#realMs = Math.max(this.#realMs, rise.endMs)
      return during.length
    }
    const beganMs = this.#textMs
    const hands: Written[] = []
    for (const deed of during) {
      // While the bath rises the hands' time stays within the rise, so that the order stands.
      if (deed.kind !== 'rise') this.#one(deed, hands, Math.max(0, beganMs + ms - this.#textMs))
    }
    this.#rest(hands)
    this.#say(hands, Number.POSITIVE_INFINITY)
    this.#written.push({ kind: 'alongside', heat: [written], hands })
    this.#textMs = Math.max(this.#textMs, beganMs + ms)
    this.#realMs = Math.max(this.#realMs, rise.endMs)
    return during.length
  }

  #heating({ startMs, endMs, fromC, toC }: Rise): { written: Written; ms: number } {
    const expectedC = this.#fromC[this.#rises] ?? fromC
    this.#rises += 1
    const target = toC ?? expectedC
    const boil = target >= BOIL_FROM_C
    const toText = boil ? 'the boil' : tempText(Math.max(0, target))
    const riseC = (boil ? 100 : Math.round(target * 10) / 10) - expectedC
    const minutes = (endMs - startMs) / minuteMs
    if (toC === null || riseC <= 0 || minutes <= 0) return { written: step('heat', { to: toText }, 'to'), ms: 0 }
    const cPerMin = Number(Math.min(RATE_MOST, riseC / minutes).toPrecision(4))
    const ms = (riseC / cPerMin) * minuteMs
    return { written: step('heat', { to: toText, rate: `${cPerMin} °C/min` }), ms }
  }
}

/** The text begins with the first deed, or with a wait that went before it. */
function firstMs({ deeds, waits, endMs }: Told): number {
  const times = [
    ...deeds.filter((deed) => deed.kind !== 'comment').map((deed) => deed.atMs),
    ...waits.map((wait) => wait.startMs)
  ]
  return times.length > 0 ? Math.min(...times) : endMs
}

/** The step of the word that waited most of a span. */
function longestIn(waits: readonly Waited[], fromMs: number, toMs: number): Step | null {
  const byWord = new Map<string, { ms: number; step: Step; most: number }>()
  for (const { startMs, endMs, step: one } of waits) {
    const ms = Math.min(endMs, toMs) - Math.max(startMs, fromMs)
    if (ms <= 0) continue
    const known = byWord.get(one.word)
    if (!known) byWord.set(one.word, { ms, step: one, most: ms })
    else {
      known.ms += ms
      if (ms > known.most) Object.assign(known, { step: one, most: ms })
    }
  }
  let longest: { ms: number; step: Step } | null = null
  for (const each of byWord.values()) if (longest === null || each.ms > longest.ms) longest = each
  return longest?.step ?? null
}
