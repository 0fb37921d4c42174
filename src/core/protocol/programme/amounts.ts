// From words to mL and g, with the sum in figures beside it.
import { gramsAt, liquorML, owfG } from '../../chemistry/amounts/formulas.ts'
import {
  metricUnits,
  readAmount,
  showDose,
  showMass,
  showNumber,
  showPart,
  showPercent,
  showVolume,
  type WrittenAmount
} from '../../quantity/index.ts'
import type { Amount } from '../model.ts'
import { fillIn } from '../scope.ts'
import type { Setting, Stuff } from './setting.ts'

/** What an amount comes to, before rounding. */
export type Worked = { value: number; unit: Amount['unit']; sum: string }
export type WorkedOut = { ok: true; worked: Worked } | { ok: false; code: string; what: string; instead: string }

/** The goods and the liquor that an amount is worked out for: the pot's, or one jar's. */
export type Basis = { massG: number; liquorML: number | null }

/** What a syringe, a cup and a kitchen scale can measure: 0.01 under 1, 0.1 under 10 mL or 100 g, else whole. Common
 * practice, no source. */
function doseStep(value: number, unit: Amount['unit']): number {
  if (unit === 'count') return 1
  if (value < 1) return 0.01
  return value < (unit === 'g' ? 100 : 10) ? 0.1 : 1
}

/** Rounded to that step, without the dust of binary fractions. */
export function roundDose(value: number, unit: Amount['unit']): number {
  const step = doseStep(value, unit)
  return Number((Math.round(value / step + 1e-9) * step).toFixed(2))
}

/** Works out one amount. Shares are of the whole of their material, which is worked out for all the goods. */
export function workOut(amount: WrittenAmount, stuff: Stuff, basis: Basis, setting: Setting, pot: Basis): WorkedOut {
  const goods = showMass(basis.massG, metricUnits)
  switch (amount.kind) {
    case 'volume':
    case 'mass':
    case 'count':
      return asWritten(amount.value, amount.kind === 'count' ? 'count' : amount.unit)
    case 'liquor': {
      const wanted = liquorML(amount.ratio, basis.massG)
      const value = potLiquorML(amount.ratio, basis.massG, basis === pot ? setting.liquorMostML : null)
      const sum = `${showNumber(amount.ratio, 2)} × ${goods} = ${showVolume(wanted, metricUnits)}`
      const kept = value < wanted ? `; kept to ${showVolume(value, metricUnits)} for the pot` : ''
      return good(value, 'mL', `${sum}${kept}`)
    }
    case 'owf':
      return ofGrams(owfG(amount.percent, basis.massG), `${showPercent(amount.percent)} × ${goods}`, stuff)
    case 'gPerL': {
      if (basis.liquorML === null) {
        return bad('liquor-missing', 'Grams for a litre, of how many litres?', 'Give the liquor ratio.')
      }
      const sum = `${showNumber(amount.value, 2)} g/L × ${showVolume(basis.liquorML, metricUnits)}`
      return ofGrams(gramsAt(amount.value, basis.liquorML), sum, stuff)
    }
    case 'share': {
      const whole = wholeOf(stuff, setting, pot)
      return whole.ok ? good(...partOf(whole.worked, amount.share)) : whole
    }
    // What is left is known only when all shares are; it is put in afterwards.
    case 'rest':
      return wholeOf(stuff, setting, pot)
  }
}

/** The liquor of a ratio, or what the pot is kept to where that is less. */
export function potLiquorML(ratio: number, massG: number, mostML: number | null): number {
  const wanted = liquorML(ratio, massG)
  return mostML === null ? wanted : Math.min(wanted, mostML)
}

/** The whole amount of a material, of which shares are taken. */
export function wholeOf(stuff: Stuff, setting: Setting, pot: Basis): WorkedOut {
  const filled = fillIn(stuff.amount ?? '', setting.quantities)
  const read = readAmount(filled.text, { kitchen: setting.kitchen })
  if (!read.ok) {
    return bad(read.problem.code, `${stuff.label}: "${read.problem.found}" can't be read.`, read.problem.instead)
  }
  if (read.value.kind === 'share' || read.value.kind === 'rest') {
    const what = `The whole of ${stuff.label} is a share of something.`
    return bad('share-of-nothing', what, 'Give it as % owf, g/L, mL or g.')
  }
  return workOut(read.value, stuff, pot, setting, pot)
}

/** A share of a whole, as the parts of a worked amount. */
export function partOf(whole: Worked, share: number): [number, Amount['unit'], string] {
  const value = whole.value * share
  const name = share === 0.5 ? 'half' : showPart(share)
  const words =
    Math.abs(share - 1) < 1e-9 ? '' : `; ${name} of it ${showDose({ value, unit: whole.unit }, metricUnits)}`
  return [value, whole.unit, `${whole.sum}${words}`]
}

/** Grams of what is active, as the volume that holds them where it comes as a liquid. */
function ofGrams(grams: number, sum: string, stuff: Stuff): WorkedOut {
  const weighed = stuff.kind === 'powder' || (stuff.kind === 'other' && stuff.gPerML === null)
  if (weighed) return good(grams, 'g', `${sum} = ${showMass(grams, metricUnits)}`)
  if (stuff.kind === 'water') return good(grams, 'mL', `${sum} = ${showVolume(grams, metricUnits)}`)
  if (stuff.gPerML === null) {
    return bad('strength-missing', `How strong is ${stuff.name}?`, 'Give its strength, for example 5 % w/v.')
  }
  const value = grams / stuff.gPerML
  return good(value, 'mL', `${sum} ÷ ${stuff.strengthShown} = ${showVolume(value, metricUnits)}`)
}

function asWritten(value: number, unit: Amount['unit']): WorkedOut {
  return good(value, unit, `${showDose({ value, unit }, metricUnits)}, as written`)
}

function good(value: number, unit: Amount['unit'], sum: string): WorkedOut {
  return { ok: true, worked: { value, unit, sum } }
}

function bad(code: string, what: string, instead: string): WorkedOut {
  return { ok: false, code, what, instead }
}
