import { showNumber } from '../../quantity/show-number.ts'
import { type Answer, isRefused, type Problem, refuse } from '../answer.ts'
import { type Limit, outside, unknownWord } from '../limits.ts'
import { type BathPh, bathPh } from './bath-ph.ts'
import { ACETIC_G_PER_MOL, ACID_MOST, type Bath, bathLimits, CITRIC_G_PER_MOL, molesOf } from './inputs.ts'

export type Acid = 'vinegar' | 'citric'

/** A bath and the pH it shall have. `acid`: which of the two is looked for; of the other there may be some already
 * (`vinegarML`, `citricG`; left out: none). What is given of the acid looked for is not read. */
export type AcidWanted = Omit<Bath, 'vinegarML' | 'citricG'> & {
  acid: Acid
  targetPh: number
  vinegarML?: number
  citricG?: number
}

/** Vinegar in mL, citric acid in g. `lowAmount`: the least that might do, where bathPh's lowPh is the target.
 * `highAmount`: what does it for sure, where highPh is; null: no amount does for sure. */
export type AcidDose = { amount: number; unit: 'mL' | 'g'; lowAmount: number; highAmount: number | null }

const targetLimit: Limit = { field: 'targetPh', name: 'the pH wanted', unit: '', least: 1.5, most: 9 }
const fields = { vinegar: 'vinegarML', citric: 'citricG' } as const
const units = { vinegar: 'mL', citric: 'g' } as const

/** How much vinegar or citric acid brings a bath to a pH: the inverse of bathPh, with its units, ranges, refusals, doubt
 * and source. pH 1.5 to 9. Refuses also a pH that the bath is at or under without that acid, and one that no amount of it
 * reaches (up to 1 mol of acid in a kg of water). */
export function acidFor(wanted: AcidWanted): Answer<AcidDose> {
  const problems = problemsOf(wanted)
  if (problems.length > 0) return refuse(...problems)
  const { targetPh } = wanted
  const least = leastAmount(wanted)
  const most = mostAmount(wanted)
  const reach = outOfReach(wanted, least, most)
  if (reach) return refuse(reach)
  const amount = amountWhere(targetPh, least, most, (x) => at(wanted, x).ph)
  const lowAmount = amountWhere(targetPh, least, amount, (x) => at(wanted, x).lowPh)
  const isSure = at(wanted, most).highPh <= targetPh
  const highAmount = isSure ? amountWhere(targetPh, amount, most, (x) => at(wanted, x).highPh) : null
  return { amount, unit: units[wanted.acid], lowAmount, highAmount }
}

function problemsOf(wanted: AcidWanted): Problem[] {
  const own = [
    unknownWord(wanted.acid, 'acid', 'the acid', Object.keys(fields)),
    outside(wanted.targetPh, targetLimit),
    wanted.acid === 'vinegar' ? outside(wanted.vinegarPercentWV, { ...bathLimits.vinegarPercentWV, above: true }) : null
  ].filter((problem) => problem !== null)
  // Without acid an open bath is refused for its alkalinity, which the acid looked for will use up.
  const without = bathPh({ ...withAmount(wanted, 0), ...(wanted.air === 'open' ? { air: 'closed' as const } : {}) })
  const others = isRefused(without) ? without.problems : []
  return [...own, ...others.filter(({ field }) => own.every((problem) => problem.field !== field))]
}

function outOfReach(wanted: AcidWanted, least: number, most: number): Problem | null {
  const { acid, targetPh } = wanted
  const firstPh = at(wanted, least).ph
  if (firstPh < targetPh) {
    const when = least === 0 ? 'without it' : 'as soon as its alkalinity is used up'
    const what = `The bath is at pH ${showNumber(firstPh, 2)} ${when}; more acid can't raise that to ${targetPh}.`
    const instead = `Give a pH under ${showNumber(firstPh, 2)}.`
    return { code: 'out-of-reach', field: 'targetPh', what, instead }
  }
  const lastPh = at(wanted, most).ph
  if (lastPh > targetPh) {
    const what = `No amount of ${acid === 'citric' ? 'citric acid' : 'this vinegar'} brings the bath to pH ${targetPh}.`
    const instead = `Give a pH of ${showNumber(Math.ceil(lastPh * 100) / 100, 2)} or more, or a stronger acid.`
    return { code: 'out-of-reach', field: 'targetPh', what, instead }
  }
  return null
}

/** None; or, in an open bath, what just uses up the alkalinity. */
function leastAmount(wanted: AcidWanted): number {
  if (wanted.air === 'closed') return 0
  const { acetic, citric, alkalinity } = molesOf(withAmount(wanted, 0))
  const missing = Math.max(0, alkalinity - acetic - 3 * citric) * (1 + 1e-9)
  return missing / (wanted.acid === 'citric' ? 3 * molesPerUnit(wanted) : molesPerUnit(wanted))
}

/** Up to 1 mol of acid in a kg of water, or the most that bathPh takes. Vinegar brings its own water. */
function mostAmount(wanted: AcidWanted): number {
  const { acetic, citric, waterKg } = molesOf(withAmount(wanted, 0))
  const room = ACID_MOST * waterKg - acetic - citric
  const takes = molesPerUnit(wanted) - (wanted.acid === 'vinegar' ? ACID_MOST / 1000 : 0)
  const { most } = bathLimits[fields[wanted.acid]]
  return takes > 0 ? Math.min(most, room / takes) : most
}

function molesPerUnit({ acid, vinegarPercentWV, citricForm }: AcidWanted): number {
  return acid === 'vinegar' ? vinegarPercentWV / 100 / ACETIC_G_PER_MOL : 1 / CITRIC_G_PER_MOL[citricForm]
}

function withAmount({ acid, vinegarML = 0, citricG = 0, ...rest }: AcidWanted, amount: number): Bath {
  const bath = { ...rest, vinegarML, citricG }
  return acid === 'citric' ? { ...bath, citricG: amount } : { ...bath, vinegarML: amount }
}

/** The bath's pH with that much acid. Called only within the range that bathPh answers for. */
function at(wanted: AcidWanted, amount: number): BathPh {
  const answer = bathPh(withAmount(wanted, amount))
  if (isRefused(answer)) throw new Error(answer.problems.map(({ what }) => what).join(' '))
  return answer
}

/** Adding acid lowers the pH, so it passes the target once: halved until the two ends meet. */
function amountWhere(targetPh: number, least: number, most: number, phAt: (amount: number) => number): number {
  let low = least
  let high = most
  while (high - low > 1e-12 * high) {
    const middle = (low + high) / 2
    if (middle <= low || middle >= high) break
    if (phAt(middle) > targetPh) low = middle
    else high = middle
  }
  return high
}
