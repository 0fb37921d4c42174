// What there is to be careful of in a step: read off its fields, and where a protocol says it only in words, off those.
import type { SetOut, Step } from '../protocol/model.ts'

/** `bathTempC`: the last fresh reading; null: not known. `strengthPercent`: of what is added, % w/v; null: not known.
 * `kind`: of what is added, where known. `firstOfDay: false` gives the short line in place of the full caution. */
export type CautionContext = {
  bathTempC: number | null
  heatOn: boolean
  strengthPercent: number | null
  kind?: SetOut['kind'] | null
  firstOfDay?: boolean
}

/** From here on hands and liquor don't go together: 60 °C water burns within seconds (scald.ts). */
export const HOT_C = 60

export function isHot(step: Step, context: CautionContext): boolean {
  if (context.bathTempC !== null) return context.bathTempC >= HOT_C
  // Without a reading a heated bath counts as hot.
  return context.heatOn || (step.ramp?.lowC ?? 0) >= HOT_C || (step.setPoint?.lowC ?? 0) >= HOT_C
}

const reaching: Step['word'][] = [
  'add',
  'enter',
  'lower',
  'turn',
  'sample',
  'check',
  'measure',
  'squeeze',
  'rinse',
  'fill'
]
const lifting: Step['word'][] = ['lift', 'transfer']

export function handsIn(step: Step): boolean {
  return reaching.includes(step.word) && step.hands.mostMs > 0
}

export function lifts(step: Step): boolean {
  return lifting.includes(step.word) || step.yarn === 'lifted' || step.yarn === 'out'
}

/** All words of a step that a dyer reads. */
function wordsOf(step: Step): string {
  return [step.call, step.doing, step.detail ?? '', step.knot, step.dose?.amount.of ?? ''].join(' ').toLowerCase()
}

function says(step: Step, pattern: RegExp): boolean {
  return pattern.test(wordsOf(step))
}

function addedName(step: Step): string {
  return step.dose ? `${step.dose.amount.of} ${step.knot}`.toLowerCase() : ''
}

const citric = /citric/
const acetic = /acetic|vinegar/
const otherAcid = /formic|sulph?uric|sulfamic|hydrochloric|muriatic|oxalic|nitric|phosphoric/
const reducer = /hydros|dithionite|hydrosul|thiourea|reducer|reducing/
const alkali = /soda ash|washing soda|sodium carbonate|caustic|lye|hydroxide|lime\b|ammonia|alkali|potash/
const mordant = /alum\b|alumin|iron|ferrous|copperas|copper|mordant|titanium/
const bleach = /bleach|hypochlorite|peroxide|oxidis/

export type AcidKind = 'acetic' | 'citric' | 'other'

/** The acid a step adds; an acid without a name is taken for acetic, the stove's usual one. */
export function acidOf(step: Step, context: CautionContext): AcidKind | null {
  const name = addedName(step)
  if (!step.dose) return null
  if (citric.test(name)) return 'citric'
  if (acetic.test(name)) return 'acetic'
  if (otherAcid.test(name)) return 'other'
  return context.kind === 'acid' ||
    /\bacid\b/.test(name.replace(/acid (red|blue|yellow|black|orange|violet|green|brown)/g, ''))
    ? 'acetic'
    : null
}

export function isPowder(step: Step, context: CautionContext): boolean {
  if (context.kind === 'powder') return true
  return step.dose?.amount.unit === 'g' || says(step, /\bpowder\b|\bweigh (out|the)\b/)
}

export const isReducer = (step: Step): boolean => reducer.test(addedName(step)) || says(step, /\bhydros\b/)
export const isAlkali = (step: Step): boolean => alkali.test(addedName(step))
export const isMordant = (step: Step): boolean => mordant.test(addedName(step))
export const isBleach = (step: Step): boolean => bleach.test(addedName(step))
export const isSteam = (step: Step): boolean => says(step, /\bsteam/)
export const isMicrowave = (step: Step): boolean => says(step, /\bmicrowave/)
export const isOven = (step: Step): boolean => says(step, /\boven\b/)
export const isVat = (step: Step): boolean => says(step, /\bvat\b|indigo/)
/** The liquor goes away in this step. */
export const isDisposal = (step: Step): boolean =>
  step.word === 'rinse' || says(step, /\b(drop|empty|pour away|discard|throw out) (the )?(bath|liquor|vat|pot)|dispos/)
