// A pair of hands is counted down to its act: bands in a row are beats, not alarms.
import { nextDue } from '../pot/next-due.ts'
import type { ActiveStep, LiveState, PotState } from '../pot/state.ts'
import type { Step } from '../protocol/model.ts'
import type { Units } from '../quantity/units.ts'
import { actAfter } from './act-after.ts'
import { potWords } from './alert-sentence.ts'
import { firstThatFits, fits, phrase } from './phrase.ts'
import { bandWords, doseWords, shortAct } from './spoken-act.ts'

/** A sentence for a coming moment. `atMs`: when it is to begin; what would come late is better not said. */
export type Cue = {
  atMs: number
  /** Of the wait's own due moment, so that a clock that was set makes no cue new. */
  key: string
  say: string
  urgency: 'soon' | 'now'
  /** The name of the pot where `say` does not begin with it: it is needed when another pot was spoken of last. */
  pot: string | null
  /** The act that the last word calls, so that its call need not be said right after; null where more is to be said. */
  calls: string | null
}

const AHEAD_MS = 10_000
/** So long before the moment the count begins that its last word falls on it: "three, two, one" took 1.9 s from one voice
 * (espeak-ng at 175 words a minute, measured); a tenth more at our rate, and what a browser needs to begin. */
const COUNT_MS = 2_400
/** A cue is not looked for earlier than this: a forecast costs more than a look at the clock. */
const SIGHT_MS = 60_000
/** Ten seconds' notice of what began five seconds ago is chatter. */
const AFTER_START_MS = 5_000
/** A count ends in a word or three, not in a sentence. */
const SHORT_WORDS_MOST = 3

/** The cues for acts that follow a timed wait and come within a minute, earliest first; `state` as of `nowMs`. Of a held
 * pot there are none. Pure: whoever speaks knows what was said. */
export function cuesOf(state: PotState, nowMs: number, units: Units): Cue[] {
  if (state.status !== 'running') return []
  const cues: Cue[] = []
  for (const due of nextDue(state)) {
    if (due.kind !== 'close' || due.path === null || due.atMs - nowMs > SIGHT_MS) continue
    const wait = state.active.find(({ path }) => path === due.path)
    const step = wait ? actAfter(state, wait) : null
    if (!wait || step === null || step.behaviour === 'ask' || step.soft) continue
    cues.push(...cuesFor(state, wait, step, due, units))
  }
  return cues.sort((a, b) => a.atMs - b.atMs)
}

function cuesFor(
  state: LiveState,
  wait: ActiveStep,
  step: Step,
  due: { key: string; atMs: number },
  units: Units
): Cue[] {
  const pot = potWords(state, units)
  const ahead: Cue = {
    atMs: due.atMs - AHEAD_MS,
    key: `ahead ${due.key}`,
    say: cueSentence(state, step, 'ahead', units),
    urgency: 'soon',
    pot: null,
    calls: null
  }
  const count: Cue = {
    atMs: due.atMs - COUNT_MS,
    key: `count ${due.key}`,
    say: cueSentence(state, step, 'count', units),
    urgency: 'now',
    pot,
    // An amount wants to be heard at the act: the call says it.
    calls: step.dose === null && endsInAct(step, units) ? step.path : null
  }
  const startMs = wait.startedAtMs
  return [...(ahead.atMs - startMs >= AFTER_START_MS ? [ahead] : []), ...(count.atMs > startMs ? [count] : [])]
}

/** "Plum. Band three of six. Lower in ten.", "Plum. Lift in ten.", "Plum. Acid two in ten. Eight millilitres of vinegar."; the count: "Three.
 * Two. One. Lower." */
export function cueSentence(state: LiveState, step: Step, kind: 'ahead' | 'count', units: Units): string {
  const short = shortAct(step, units)
  if (kind === 'count') {
    return phrase(['Three', 'Two', 'One', endsInAct(step, units) ? short : 'Now'])
  }
  const pot = potWords(state, units)
  const band = bandWords(state, step, units)
  const dose = doseWords(step, units)
  const full = [pot, ...(band === null ? [] : [band]), `${short} in ten`, ...(dose === null ? [] : [dose])]
  return fits(phrase(full))
    ? phrase(full)
    : firstThatFits([
        [pot, `${short} in ten`],
        [pot, 'In ten']
      ])
}

function endsInAct(step: Step, units: Units): boolean {
  return shortAct(step, units).split(' ').length <= SHORT_WORDS_MOST
}
