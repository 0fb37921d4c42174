// What a dyer would want to be called for if the page died: the coming moments of one pot that want a person.
import type { Due } from '../pot/due.ts'
import { asCalled } from '../pot/expected/as-called.ts'
import type { Expectations } from '../pot/expected/expectation.ts'
import { forecast } from '../pot/forecast.ts'
import type { Knot } from '../pot/knot.ts'
import { gapLimit, nextDue } from '../pot/next-due.ts'
import type { LiveState } from '../pot/state.ts'
import type { Node, Step } from '../protocol/model.ts'
import { sequenceOf, stepAt, stepsOf } from '../protocol/tree.ts'
import { showDose } from '../quantity/show-amount.ts'
import type { Units } from '../quantity/units.ts'

/** Hands or eyes are at it for at least so long. */
const LEAST_MS = 60_000
/** As in next-due.ts: a heads-up only after five quiet minutes, one minute ahead. DESIGN: the alarm budget. */
const QUIET_MS = 5 * 60_000
const HEADS_UP_MS = 60_000
/** What may come sooner by more than this is "about": hands that are a little quicker are not meant. That it may come
 * later is no mark: "at least 30 min" calls at its half hour, and the dyer who lets it soak over night knows. Common
 * practice, no source. */
const ABOUT_MS = 5 * 60_000
/** A latest time so far off tells nothing. */
const LATEST_MOST_MS = 4 * 3_600_000
/** A day of looks at the water level, every quarter of an hour, is enough for a snapshot. */
const LOOKS_MOST = 96

/** A moment to be called for. `key` names it within its pot whatever becomes of its time: the path of the step (which
 * holds the round), or the limit. */
export type Coming = {
  key: string
  /** "Acid 2" */
  what: string
  /** Lines of the description. */
  say: string[]
  startMs: number
  /** How long hands are wanted; at least a minute. */
  forMs: number
  /** So long before the start it rings, ms; empty: it does not ring. */
  ringsBeforeMs: number[]
  /** The likely time of something whose time nobody knows yet. */
  about: boolean
  /** Earliest and latest, where it is about. */
  range: Range | null
}

/** `mostMs` null: nobody can say. */
export type Range = { leastMs: number; mostMs: number | null }

/** All that is to come for one pot after `nowMs`, in order of time: acts, doses, questions, ends of waits that want a
 * person, limits that are open now, and the end of all steps. What stands already is not among it: its dyer is being
 * called.
 *
 * Times that nobody knows yet (after a loop "until", after a choice, in a pot that was stopped) are kept, at their likely
 * time and marked "about", with the earliest and the latest: to be called early costs a look at the pot, not to be called
 * to the acid or to "heat off" costs the batch. Passes of a loop that may never come are left out, as is a wait that
 * the clock ends by itself where nothing follows for the hands. A turn or a stir stands in the calendar without a ring:
 * whoever is rung for each stir turns the calendar off, and the acid with it. */
export function comingOf(state: LiveState, nowMs: number, units: Units, expected?: Expectations): Coming[] {
  const knots = forecast(state, nowMs, expected).map((knot) => asCalled(state, knot, expected))
  const stopped = state.status === 'held' || state.trouble !== null
  const all = [
    ...knots.flatMap((knot) => ofKnot(state, knot, units)),
    ...limits(state),
    ...looks(state),
    ...theEnd(state, knots, nowMs)
  ]
  const ahead = all.filter(({ startMs }) => startMs > nowMs).sort((a, b) => a.startMs - b.startMs)
  return withHeadsUps(stopped ? ahead.map((one) => ({ ...one, about: true })) : ahead, nowMs)
}

function ofKnot(state: LiveState, knot: Knot, units: Units): Coming[] {
  const step = stepAt(state.programme, knot.path)
  if (!step || closesByItself(step)) return []
  const active = knot.active ? state.active.find(({ path }) => path === knot.path) : undefined
  // Without a due time, or while its count stands still, the forecast only guesses.
  const guessed = active !== undefined && (active.dueAtMs === null || active.remainingMs !== null)
  const about = knot.faint || guessed || knot.atMs - knot.leastMs > ABOUT_MS
  return [
    {
      key: active?.side ? `${knot.path}~${active.no}` : knot.path,
      what: knot.label,
      say: sayOf(state, step, units),
      startMs: knot.atMs,
      forMs: Math.max(LEAST_MS, knot.handsMs),
      ringsBeforeMs: step.soft ? [] : [0],
      about,
      range: about ? rangeOf(knot) : null
    }
  ]
}

function rangeOf({ atMs, leastMs, mostMs }: Pick<Knot, 'atMs' | 'leastMs' | 'mostMs'>): Range | null {
  if (mostMs <= leastMs) return null
  return { leastMs, mostMs: mostMs - atMs > LATEST_MOST_MS ? null : mostMs }
}

/** Nobody could answer a wait for time or for a named moment. */
function closesByItself(step: Step): boolean {
  return step.wait?.until.every(({ kind }) => kind === 'moment') ?? false
}

/** The act, the amount and its cup, one line more, and what is forbidden. */
function sayOf(state: LiveState, step: Step, units: Units): string[] {
  const { question, dose, detail, forbids } = step
  const act = step.behaviour === 'ask' && question && 'ask' in question ? question.ask : step.call
  const name = state.pot.colourway || state.pot.letter
  const cup = dose?.cup ? `, cup “${name}, ${dose.cup}”` : ''
  const amount = dose ? [`${showDose(dose.amount, units)} of ${dose.amount.of}${cup}`] : []
  const looked = nextStep(state, step)?.lookEveryMs
  const look = looked ? [`Then look at the water level every ${Math.round(looked / 60_000)} min`] : []
  const forbidden = forbids.length > 0 ? [`Do not ${forbids.join(', do not ')}`] : []
  return [act, ...amount, ...(detail ? [detail] : []), ...forbidden, ...look]
}

function nextStep(state: LiveState, { path }: Step): Step | null {
  const { siblings, index } = sequenceOf(state.programme, path)
  const next = siblings[index + 1]
  return next?.node === 'step' ? next : null
}

/** Limits that are open now: the event stands at the limit itself and rings when the app would call. */
function limits(state: LiveState): Coming[] {
  return nextDue({ ...state, raised: {} }).flatMap((due) => ofDue(state, due) ?? [])
}

function ofDue(state: LiveState, due: Due): Coming | null {
  const plain = { key: due.key, forMs: LEAST_MS, about: false, range: null }
  switch (due.kind) {
    case 'gap': {
      const gap = state.programme.gaps.find(({ from, to }) => due.key.startsWith(`gap ${from} > ${to} `))
      const startMs = (gap && gapLimit(state, gap)) ?? due.atMs
      const what = `${gap ? knotFor(state, gap.to) : 'A limit'}: its limit runs out`
      return { ...plain, what, say: [what], startMs, ringsBeforeMs: [startMs - due.atMs] }
    }
    case 'outOfBath': {
      const startMs = state.outLimitAtMs ?? due.atMs
      const say = ['The skeins may stay out no longer']
      return { ...plain, what: 'Back into the bath', say, startMs, ringsBeforeMs: [startMs - due.atMs] }
    }
    case 'heat': {
      const say = ['The pot was stopped, but at heat dyeing goes on']
      return { ...plain, what: 'Time at heat is over', say, startMs: due.atMs, ringsBeforeMs: [0] }
    }
    case 'call':
    case 'close':
    case 'headsUp':
    case 'look':
    case 'finish':
      return null
  }
}

function knotFor(state: LiveState, moment: string): string {
  return stepsOf(state.programme).find((s) => s.id === moment || s.marks.includes(moment))?.knot ?? moment
}

/** A dry-out hazard is looked at again and again while its step lasts: each look, as if the one before came at its time. */
function looks(state: LiveState): Coming[] {
  return state.active.flatMap(({ path, no, looks: done, lookedAtMs, dueAtMs }) => {
    const every = stepAt(state.programme, path)?.lookEveryMs
    if (!every || dueAtMs === null) return []
    const count = Math.min(LOOKS_MOST, Math.ceil((dueAtMs - lookedAtMs) / every) - 1)
    return Array.from({ length: Math.max(0, count) }, (_, nth) => ({
      key: `look ${path} ${no}.${done + nth}`,
      what: 'Look at the water level',
      say: ['Look at the water level'],
      startMs: lookedAtMs + (nth + 1) * every,
      forMs: LEAST_MS,
      ringsBeforeMs: [0],
      about: false,
      range: null
    }))
  })
}

/** Where the last thing is a wait that the clock ends (drying over night), its end is the moment to come back. */
function theEnd(state: LiveState, knots: Knot[], nowMs: number): Coming[] {
  const waits = trailingWaits(state.programme.steps)
  if (waits.length === 0 || state.stepsDone) return []
  const open = waits.findIndex(({ path }) => state.active.some((active) => active.path === path))
  const last = knots.at(-1)
  if (!last) return []
  const left = open < 0 ? waits : waits.slice(open + 1)
  const after = open < 0 ? last.handsMs : 0
  const sum = (pick: (step: Step) => number): number => left.reduce((total, step) => total + pick(step), after)
  // A last act that calls already is counted as done now.
  const from = (atMs: number): number => Math.max(atMs, nowMs)
  const leastMs = from(last.leastMs) + sum(({ clock }) => clock.leastMs)
  const mostMs = from(last.mostMs) + sum(({ clock }) => clock.mostMs)
  const startMs = from(last.atMs) + sum(({ clock }) => clock.likelyMs)
  const about = last.faint || startMs - leastMs > ABOUT_MS
  const say = ['All steps are done. Write down what becomes of the bath']
  const range = about ? rangeOf({ atMs: startMs, leastMs, mostMs }) : null
  return [{ key: '~end', what: 'All steps done', say, startMs, forMs: LEAST_MS, ringsBeforeMs: [0], about, range }]
}

function trailingWaits(nodes: Node[]): Step[] {
  const last = nodes.at(-1)
  if (last?.node !== 'step' || last.wait === null || !closesByItself(last)) return []
  return [...trailingWaits(nodes.slice(0, -1)), last]
}

/** A second ring a minute ahead, where nobody was wanted for a while before. */
function withHeadsUps(coming: Coming[], nowMs: number): Coming[] {
  let quietSinceMs = nowMs
  return coming.map((one) => {
    const rings = one.ringsBeforeMs
    const quiet = one.startMs - quietSinceMs >= QUIET_MS && rings.length === 1 && rings[0] === 0
    quietSinceMs = Math.max(quietSinceMs, one.startMs + one.forMs)
    return quiet ? { ...one, ringsBeforeMs: [HEADS_UP_MS, 0] } : one
  })
}
