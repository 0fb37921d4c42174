// What went on: how much of the dye is on the goods, by measure or by a model.
import {
  diffusedFraction,
  exhaustionAfter,
  exhaustionFromLadder,
  exhaustionFromReadings,
  halfTimeMin,
  isRefused,
  rateAt,
  usualLadder
} from '../../../../core/chemistry/index.ts'
import { showDuration, showNumber, showTemperature } from '../../../../core/quantity/index.ts'
import { choice, optional, rows } from '../field.ts'
import { liquor, minutes, number, percentage, temperature } from '../quantities.ts'
import { put } from '../shown.ts'
import { type Sum, sum } from '../sum.ts'

const percent = (value: number, digits: 0 | 1 = 1): string => `${showNumber(value, digits)}\u00a0%`
const model = 'A model, not a law.'
const strip = 'Dye on wool often follows another. This is for planning; a strip test tells.'

const readings = sum({
  id: 'exhaustion',
  title: 'Exhaustion from readings',
  ask: 'How much dye has gone out of the bath, by a photometer?',
  group: 'What went on',
  words: 'absorbance spectrophotometer uptake bath clear',
  uses: ['exhaustionFromReadings'],
  fields: {
    startAbsorbance: number('Reading at the start', { hint: 'Absorbance. Two dyes need two wavelengths.' }),
    startML: liquor('Liquor at the start'),
    nowAbsorbance: number('Reading now'),
    nowML: liquor('Liquor now')
  },
  work(given) {
    const answer = exhaustionFromReadings(given)
    if (isRefused(answer)) return answer
    const { startAbsorbance, startML, nowAbsorbance, nowML } = given
    return {
      figures: [{ what: 'Exhaustion', figure: percent(answer) }],
      say: answer < 0 ? ['The bath reads deeper than at the start: a reading, or a volume, is wrong.'] : [],
      put: [
        `100 × (1 - ${put(nowAbsorbance)} × ${put(nowML)} ÷ (${put(startAbsorbance)} × ${put(startML)})) = ${put(answer)} %`
      ]
    }
  }
})

const cups = usualLadder.flatMap((rung, i): [string, string][] => {
  const next = usualLadder[i + 1]
  const own: [string, string] = [`${rung}`, `the ${rung} % cup`]
  return next === undefined ? [own] : [own, [`${rung} ${next}`, `between ${rung} and ${next} %`]]
})

const ladder = sum({
  id: 'ladder',
  title: 'Exhaustion from cups',
  ask: 'How much dye has gone out of the bath, by a ladder of cups?',
  group: 'What went on',
  words: 'eye ladder white spoon bath clear residual',
  uses: ['exhaustionFromLadder'],
  fields: {
    like: choice('The bath looks like', cups, {
      hint: `Cups of the start liquor at ${usualLadder.join(', ')} %, filled alike, on white.`
    }),
    startML: optional(
      liquor('Liquor at the start', { hint: 'Both or none: left empty, no liquor was lost.' }),
      undefined
    ),
    nowML: optional(liquor('Liquor now'), undefined)
  },
  work({ like, startML, nowML }) {
    const [first = 0, second] = like.split(' ').map(Number)
    const both = startML !== undefined && nowML !== undefined ? { startML, nowML } : {}
    const answer = exhaustionFromLadder({ like: second === undefined ? first : [first, second], ...both })
    if (isRefused(answer)) return answer
    const left = both.startML === undefined ? '' : ` × ${put(both.nowML)} ÷ ${put(both.startML)}`
    return {
      figures: [{ what: 'Exhaustion', figure: percent(answer.percent, 0) }],
      doubt: `Between ${percent(answer.lowPercent, 0)} and ${percent(answer.highPercent, 0)}: a ladder tells to about one cup.`,
      say: [
        'Of several dyes it tells only the total.',
        ...((startML === undefined) !== (nowML === undefined)
          ? ['Of the liquor both figures are wanted: it was not counted.']
          : [])
      ],
      put: [`100 - ${put(second === undefined ? first : (first + second) / 2)}${left} = ${put(answer.percent)} %`]
    }
  }
})

const halfTime = minutes('Half-dyeing time', {
  hint: 'Until half of what is taken up in the end is on. From a strip test.'
})
const rateAtC = temperature('At', { startC: '80', startF: '176' })
const energy = number('Activation energy', {
  sign: 'kJ/mol',
  start: '80',
  hint: 'An assumption: 50 to 100 for acid dyes (from memory).'
})

const atHeat = sum({
  id: 'half-time',
  title: 'Strike at another heat',
  ask: 'How much slower does a dye strike when the bath is cooler?',
  group: 'What went on',
  words: 'half-dyeing time arrhenius rate temperature kinetics',
  uses: ['rateAt', 'halfTimeMin'],
  renamed: { ratePerMin: 'halfMin' },
  fields: { halfMin: halfTime, rateAtC, energyKJPerMol: energy, tempC: temperature('And at') },
  work(given, units) {
    const ratePerMin = Math.LN2 / given.halfMin
    const rate = rateAt({ ...given, ratePerMin })
    if (isRefused(rate)) return rate
    const answer = halfTimeMin(rate)
    if (isRefused(answer)) return answer
    const faster = rate / ratePerMin
    return {
      figures: [
        {
          what: `Half-dyeing time at ${showTemperature(given.tempC, units)}`,
          figure: showDuration(round(answer) * 60_000)
        },
        { what: 'Speed', figure: `×\u00a0${showNumber(faster, 2)}` }
      ],
      doubt: model,
      say: [strip],
      put: [
        `k0 = ln 2 ÷ ${put(given.halfMin)} min = ${put(ratePerMin)} per min`,
        `k at ${put(given.tempC)} °C = ${put(rate)} per min; ln 2 ÷ k = ${put(answer)} min`
      ]
    }
  }
})

const after = sum({
  id: 'exhaustion-after',
  title: 'Exhaustion after a time',
  ask: 'How far is a dye on after a ramp and a hold?',
  group: 'What went on',
  words: 'first order kinetics model ramp hold arrhenius',
  uses: ['exhaustionAfter'],
  renamed: { ratePerMin: 'halfMin' },
  fields: {
    halfMin: halfTime,
    rateAtC,
    energyKJPerMol: energy,
    finalPercent: percentage('Taken up in the end', { start: '100' }),
    stretches: rows(
      'Stretches of time',
      'Stretch',
      { fromC: temperature('From'), toC: temperature('To'), min: minutes('Takes') },
      [{}]
    )
  },
  work(given) {
    const ratePerMin = Math.LN2 / given.halfMin
    const answer = exhaustionAfter({ ...given, ratePerMin })
    if (isRefused(answer)) return answer
    const min = given.stretches.reduce((total, stretch) => total + stretch.min, 0)
    return {
      figures: [{ what: `On the goods after ${showDuration(round(min) * 60_000)}`, figure: percent(answer, 0) }],
      doubt: model,
      say: [strip],
      put: [
        `k0 = ln 2 ÷ ${put(given.halfMin)} min = ${put(ratePerMin)} per min at ${put(given.rateAtC)} °C`,
        `${given.stretches.map(({ fromC, toC, min: takes }) => `${put(fromC)} to ${put(toC)} °C in ${put(takes)} min`).join('; ')}: ${put(answer)} %`
      ]
    }
  }
})

const diffusion = sum({
  id: 'diffusion',
  title: 'Uptake by diffusion',
  ask: 'How far has dye wandered into a fibre?',
  group: 'What went on',
  words: 'crank model fibre radius micron',
  uses: ['diffusedFraction'],
  renamed: { alpha: 'finalPercent', time: 'min' },
  fields: {
    finalPercent: percentage('Taken up in the end', {
      start: '95',
      hint: 'Of the dye in the bath; over 0 and under 100 %.'
    }),
    micrometres: number('Diameter of the fibre', {
      sign: 'µm',
      start: '22',
      hint: 'Fine wool some 20, coarse 40 (from memory).'
    }),
    diffusion: number('Diffusion coefficient', {
      sign: '10⁻¹² cm²/s',
      hint: 'From a paper on that dye, fibre and heat.'
    }),
    min: minutes('After')
  },
  work({ finalPercent, micrometres, diffusion: d, min }) {
    const alpha = finalPercent > 0 ? (100 - finalPercent) / finalPercent : Number.NaN
    const radiusCm = micrometres / 2 / 10_000
    const time = (d * 1e-12 * min * 60) / radiusCm ** 2
    const answer = diffusedFraction({ alpha, time })
    if (isRefused(answer)) {
      return {
        ...answer,
        problems: answer.problems.map((each) => ({ ...each, ...inWords[each.field === 'alpha' ? 'alpha' : 'time'] }))
      }
    }
    return {
      figures: [
        { what: 'Of what is taken up in the end', figure: percent(answer * 100, 0) },
        { what: 'Of the dye in the bath', figure: percent(answer * finalPercent, 0) }
      ],
      doubt: model,
      say: [strip],
      put: [
        `alpha = (100 - ${put(finalPercent)}) ÷ ${put(finalPercent)} = ${put(alpha)}`,
        `D t ÷ r² = ${put(d)} × 10⁻¹² × ${put(min * 60)} s ÷ (${put(micrometres / 2)} × 10⁻⁴ cm)² = ${put(time)}: ${put(answer)}`
      ]
    }
  }
})

/** The series asks for a number without a unit; a dyer gave a share, or a time. */
const inWords = {
  alpha: { what: 'No bath is taken up so far.', instead: 'Give more than 0 % and at most 99.9 %.' },
  time: {
    what: 'The series holds for no such time.',
    instead: 'Give a diameter, coefficient and time for which D t ÷ r² is 0.001 to 1000.'
  }
} as const

/** A model's minutes: to the tenth below ten. */
function round(min: number): number {
  return min < 10 ? Math.round(min * 10) / 10 : Math.round(min)
}

export const uptakeSums: readonly Sum[] = [readings, ladder, atHeat, after, diffusion]
