// An alert as one spoken sentence or three: pot, act, amount.
import type { Alert } from '../pot/due.ts'
import { gapLimit } from '../pot/next-due.ts'
import type { LiveState } from '../pot/state.ts'
import type { Gap, Step } from '../protocol/model.ts'
import { stepAt, stepsOf } from '../protocol/tree.ts'
import type { Units } from '../quantity/units.ts'
import { actAfter } from './act-after.ts'
import { lengthWords } from './length-words.ts'
import { calledPot, firstThatFits } from './phrase.ts'
import { sayable } from './sayable.ts'
import { actWords, bandWords, doseWords, shortAct } from './spoken-act.ts'

/** `again`: it was said before. `guide`: bands are counted. */
export type Manner = { units: Units; guide: boolean; again: boolean }

/** "Plum. Acid two. Eight millilitres of vinegar." Late: "Plum. Late by three minutes. Acid two." Under ten seconds from
 * a slow voice; what does not fit into that is on the screen, and it says so. */
export function alertSentence(state: LiveState, alert: Alert, manner: Manner): string {
  const pot = potWords(state, manner.units)
  const late = alert.urgency === 'late' ? [`Late by ${lengthWords(lateMs(state, alert))}`] : []
  const acts = actsOf(state, alert, manner)
  // Said once in full, a late call is short: it comes every few seconds.
  const amount = late.length > 0 && manner.again ? null : amountOf(state, alert, manner.units)
  const full = [pot, ...late, ...acts]
  return firstThatFits([
    amount === null ? full : [...full, amount],
    [...full, 'See the screen'],
    [pot, ...late, 'See the screen']
  ])
}

export function potWords(state: LiveState, units: Units): string {
  return calledPot(sayable(state.pot.colourway, units), sayable(state.pot.letter, units))
}

function actsOf(state: LiveState, alert: Alert, { units, guide }: Manner): string[] {
  const step = alert.path === null ? null : stepAt(state.programme, alert.path)
  switch (alert.kind) {
    case 'call':
      return callWords(state, step, alert.path, { units, guide })
    case 'headsUp':
      return ['Soon', ...soonWords(state, alert.path, units)]
    case 'look':
      return step?.open ? ['Heat is on', 'Look at the pot'] : ['Look at the water level']
    case 'outOfBath':
      return ['Back into the bath']
    case 'gap': {
      const gap = gapOf(state, alert)
      return [...(gap ? [momentWords(state, gap.to, units)] : []), 'Its limit runs out']
    }
    case 'heat':
      return ['Its time at heat is over']
    case 'finish':
      return state.heatOn ? ['Heat off', 'All steps are done'] : ['All steps are done']
  }
}

function callWords(
  state: LiveState,
  step: Step | null,
  path: string | null,
  { units, guide }: Pick<Manner, 'units' | 'guide'>
): string[] {
  if (step === null) return ['Look at the pot']
  const standsStill = state.active.some((active) => active.path === path && active.remainingMs !== null)
  if (standsStill) return ['Measure the bath again']
  const band = guide ? bandWords(state, step, units) : null
  return band === null ? [actWords(step, units)] : [band, shortAct(step, units)]
}

function soonWords(state: LiveState, path: string | null, units: Units): string[] {
  const active = state.active.find((open) => open.path === path)
  const after = active ? actAfter(state, active) : null
  return [after === null ? 'Hands wanted' : actWords(after, units)]
}

function amountOf(state: LiveState, alert: Alert, units: Units): string | null {
  const step = alert.kind !== 'call' || alert.path === null ? null : stepAt(state.programme, alert.path)
  return step === null ? null : doseWords(step, units)
}

/** How late an answer is; a limit counts from where it ran out, its call came before. */
function lateMs(state: LiveState, alert: Alert): number {
  const nowMs = alert.atMs + alert.lateMs
  const gap = alert.kind === 'gap' ? gapOf(state, alert) : null
  const limitAtMs = alert.kind === 'outOfBath' ? state.outLimitAtMs : gap && gapLimit(state, gap)
  return limitAtMs === null ? alert.lateMs : nowMs - limitAtMs
}

/** The key of a gap's alert names both its moments: next-due.ts. */
function gapOf(state: LiveState, alert: Alert): Gap | null {
  return state.programme.gaps.find((gap) => alert.key.startsWith(`gap ${gap.from} > ${gap.to} `)) ?? null
}

function momentWords(state: LiveState, moment: string, units: Units): string {
  const step = stepsOf(state.programme).find(({ id, marks }) => id === moment || marks.includes(moment))
  return sayable(step?.knot ?? moment, units)
}
