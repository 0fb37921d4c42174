import { type Answer, refuse } from '../answer.ts'
import { constantsAt } from '../bath/constants.ts'
import { ACETIC_G_PER_MOL, bathLimits, CITRIC_G_PER_MOL, type CitricForm, citricForms } from '../bath/inputs.ts'
import { allOutside, unknownWord } from '../limits.ts'
import { massLimit } from './limits.ts'

/** Citric acid that gives off as many protons at a pH as so much acetic acid (100 %): there is no fixed ratio, for citric
 * acid has three protons and lets them go one after the other. 0.22 g for a g at pH 3.5, 1.22 g at pH 5 (anhydrous).
 * Acetic 0 to 1000 kg, pH 2 to 7, temperature 0 to 100 °C (left out: 25). Refuses what lies outside, is missing or is no
 * number. Activity ignored: good to some 5 %. Source: mass action, with the constants of constants.ts. */
export function citricForAcetic(given: {
  aceticG: number
  ph: number
  citricForm: CitricForm
  tempC?: number
}): Answer<{ citricG: number }> {
  const { aceticG, ph, citricForm, tempC = 25 } = given
  const word = unknownWord(citricForm, 'citricForm', 'the kind of citric acid', citricForms)
  const problems = allOutside([
    [aceticG, massLimit('aceticG', 'the acetic acid')],
    [ph, { field: 'ph', name: 'the pH', unit: '', least: 2, most: 7 }],
    [tempC, bathLimits.tempC]
  ])
  if (word) problems.push(word)
  if (problems.length > 0) return refuse(...problems)
  const h = 10 ** -ph
  const k = constantsAt(tempC)
  const one = k.citric1 / h
  const two = (one * k.citric2) / h
  const three = (two * k.citric3) / h
  const perCitric = (one + 2 * two + 3 * three) / (1 + one + two + three)
  const perAcetic = k.acetic / (k.acetic + h)
  const citricMol = (aceticG / ACETIC_G_PER_MOL) * (perAcetic / perCitric)
  return { citricG: citricMol * CITRIC_G_PER_MOL[citricForm] }
}
