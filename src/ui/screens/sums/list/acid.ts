// Acid: how much, and what pH comes of it.
import {
  acidDose,
  acidFor,
  type BathPh,
  bathPh,
  citricForAcetic,
  isRefused,
  statedDoubt
} from '../../../../core/chemistry/index.ts'
import { showMass } from '../../../../core/quantity/index.ts'
import { acidCautions } from '../../../../core/safety/acid-cautions.ts'
import { choice, chosen, optional, type Typed } from '../field.ts'
import { alkalinity, dose, goods, liquor, number, owf, percentage, powder, temperature, wv } from '../quantities.ts'
import { mass, put, rough, smallSay, volume, volumeText } from '../shown.ts'
import { type Sum, sum } from '../sum.ts'

const citricForm = choice('The citric acid is', [
  ['anhydrous', 'anhydrous'],
  ['monohydrate', 'monohydrate']
])
const measure = 'Without goods: wool takes up acid and raises the pH.'
const alkaline = alkalinity('Alkalinity of the water', {
  hint: 'As CaCO3, from a drop test or the water works. It moves the pH by whole units.'
})
const bathTemperature = temperature('Bath at', { startC: '25', startF: '77', hint: 'Where the pH is measured.' })
const vinegarStrength = wv('Strength of the vinegar', { start: '5', hint: 'Acetic acid in it.' })
const ph = (value: number): string => value.toFixed(1)

const isIn = (typed: Typed, id: string): boolean => {
  const cell = typed[id]
  return cell !== undefined && !Array.isArray(cell) && cell.text.trim() !== ''
}

const ofBath = sum({
  id: 'ph',
  title: 'pH of a bath',
  ask: 'Which pH does a bath with so much acid have?',
  group: 'Acid and pH',
  words: 'vinegar citric alkalinity hardness',
  uses: ['bathPh'],
  fields: {
    waterML: liquor('Water in the bath'),
    alkalinityMgPerLCaCO3: alkaline,
    vinegarML: optional(dose('Vinegar'), 0),
    vinegarPercentWV: { ...vinegarStrength, when: (typed: Typed) => isIn(typed, 'vinegarML') },
    citricG: optional(powder('Citric acid'), 0),
    citricForm: { ...citricForm, when: (typed: Typed) => isIn(typed, 'citricG') },
    tempC: bathTemperature
  },
  work(given) {
    const bath = {
      ...given,
      vinegarPercentWV: given.vinegarPercentWV ?? 5,
      citricForm: given.citricForm ?? 'anhydrous'
    }
    const closed = bathPh({ ...bath, air: 'closed' })
    if (isRefused(closed)) return closed
    const opened = bathPh({ ...bath, air: 'open' })
    const open: BathPh | null = isRefused(opened) ? null : opened
    const fresh = { what: 'Fresh, lid on', figure: `pH ${ph(closed.ph)}` }
    return {
      figures: [fresh, ...(open ? [{ what: 'After a long boil', figure: `pH ${ph(open.ph)}` }] : [])],
      doubt: `Between ${ph(closed.lowPh)} and ${ph((open ?? closed).highPh)}: an estimate, measure for the record.`,
      say: [
        measure,
        ...(open || bath.alkalinityMgPerLCaCO3 === 0
          ? []
          : [
              "The acid does not use up the water's alkalinity: the pH rises as the bath boils, how far can't be told."
            ]),
        `Counted in: acid to ${statedDoubt.acidPercent} %, alkalinity to ${statedDoubt.alkalinityPercent} %.`
      ],
      put: [
        `${put(given.waterML)} mL of water with ${put(given.alkalinityMgPerLCaCO3)} mg/L as CaCO3`,
        `${put(given.vinegarML)} mL of vinegar at ${put(bath.vinegarPercentWV)} %, ${put(given.citricG)} g of citric acid (${bath.citricForm})`,
        `at ${put(given.tempC)} °C: pH ${put(closed.ph)} with all carbon dioxide in it${open ? `, ${put(open.ph)} with none` : ''}`
      ],
      cautions: [
        ...(given.vinegarML > 0 ? acidCautions({ acetic: bath.vinegarPercentWV }) : []),
        ...(given.citricG > 0 ? acidCautions('citric') : [])
      ]
    }
  }
})

const forPh = sum({
  id: 'acid-for-ph',
  title: 'Acid for a pH',
  ask: 'How much vinegar or citric acid brings the bath to this pH?',
  group: 'Acid and pH',
  words: 'target vinegar citric alkalinity',
  uses: ['acidFor'],
  fields: {
    acid: choice('With', [
      ['vinegar', 'vinegar'],
      ['citric', 'citric acid']
    ]),
    targetPh: number('pH wanted'),
    waterML: liquor('Water in the bath'),
    alkalinityMgPerLCaCO3: alkaline,
    vinegarPercentWV: { ...vinegarStrength, when: (typed: Typed) => chosen(typed, 'acid', 'vinegar') },
    citricForm: { ...citricForm, when: (typed: Typed) => chosen(typed, 'acid', 'citric') },
    tempC: bathTemperature
  },
  work(given, units) {
    const { acid, targetPh } = given
    const bath = {
      ...given,
      vinegarPercentWV: given.vinegarPercentWV ?? 5,
      citricForm: given.citricForm ?? 'anhydrous'
    }
    const closed = acidFor({ ...bath, air: 'closed' })
    if (isRefused(closed)) return closed
    const open = acidFor({ ...bath, air: 'open' })
    const { amount, unit } = closed
    const all = isRefused(open) ? [closed] : [closed, open]
    const low = Math.min(...all.map(({ lowAmount }) => lowAmount))
    const highs = all.map(({ highAmount }) => highAmount)
    const high = highs.some((each) => each === null) ? null : Math.max(...highs.map(Number))
    const shown = (value: number): string =>
      unit === 'g' ? showMass(rough(value), units) : volumeText(rough(value), units)
    const what = acid === 'citric' ? 'Citric acid' : 'Vinegar'
    return {
      figures: [unit === 'g' ? mass(what, rough(amount), units) : volume(what, rough(amount), units)],
      doubt:
        high === null
          ? `At least ${shown(low)}; no amount does it for sure: an estimate, measure.`
          : `Between ${shown(low)} and ${shown(high)}: an estimate, measure for the record.`,
      say: [
        `Add ${shown(low)}, stir, measure, and add the rest as it is wanted.`,
        measure,
        ...(unit === 'mL' ? smallSay(amount) : [])
      ],
      put: [
        `${put(given.waterML)} mL of water with ${put(given.alkalinityMgPerLCaCO3)} mg/L as CaCO3, at ${put(given.tempC)} °C`,
        `pH ${put(targetPh)} with ${put(amount)} ${unit}${acid === 'citric' ? ` (${bath.citricForm})` : ` at ${put(bath.vinegarPercentWV)} %`}, all carbon dioxide in it`
      ],
      cautions: acidCautions(acid === 'citric' ? 'citric' : { acetic: bath.vinegarPercentWV })
    }
  }
})

const byGoods = sum({
  id: 'acid-dose',
  title: 'Acid by the goods',
  ask: 'How many mL of this bottle are so many % owf of acid?',
  group: 'Acid and pH',
  words: 'vinegar acetic owf percent density w/w w/v',
  uses: ['acidDose'],
  renamed: { strength: 'percent' },
  fields: {
    goodsG: goods(),
    percentOwf: owf('Pure acid', { start: '2' }),
    percent: percentage('Strength on the label', { start: '5' }),
    basis: choice(
      'That is',
      [
        ['w/v', 'g in 100 mL (w/v)'],
        ['w/w', 'g in 100 g (w/w)']
      ],
      { hint: 'Labels rarely say. Vinegar is mostly w/v, strong acid w/w.' }
    ),
    densityGPerML: number('Density', {
      sign: 'g/mL',
      hint: 'From the label or the data sheet; or weigh 100 mL of it.',
      when: (typed: Typed) => chosen(typed, 'basis', 'w/w')
    })
  },
  work({ goodsG, percentOwf, percent, basis, densityGPerML }, units) {
    const strength =
      basis === 'w/v'
        ? ({ percent, basis: 'w/v' } as const)
        : ({ percent, basis: 'w/w', densityGPerML: densityGPerML ?? null } as const)
    const answer = acidDose({ goodsG, percentOwf, strength })
    if (isRefused(answer)) {
      const problems = answer.problems.map((each) =>
        each.code.startsWith('density') ? { ...each, field: 'densityGPerML' } : each
      )
      return { ...answer, problems }
    }
    const { acidG, acidML } = answer
    const by = basis === 'w/v' ? put(percent) : `(${put(percent)} × ${put(densityGPerML ?? 1)})`
    return {
      figures: [volume('From the bottle', acidML, units), mass('Pure acid', acidG, units)],
      say: smallSay(acidML),
      put: [
        `${put(goodsG)} g × ${put(percentOwf)} ÷ 100 = ${put(acidG)} g of acid`,
        `${put(acidG)} g × 100 ÷ ${by} = ${put(acidML)} mL`
      ],
      cautions: acidCautions({ acetic: percent })
    }
  }
})

const citric = sum({
  id: 'citric-for-acetic',
  title: 'Citric for acetic',
  ask: 'How much citric acid does the work of so much acetic acid?',
  group: 'Acid and pH',
  words: 'vinegar instead replace equivalent',
  uses: ['citricForAcetic'],
  fields: {
    aceticG: powder('Pure acetic acid', { hint: 'In 100 mL of 5 % vinegar are 5 g.' }),
    ph: number('pH of the bath', { hint: 'There is no fixed ratio: it changes with the pH.' }),
    citricForm,
    tempC: temperature('Bath at', { startC: '25', startF: '77' })
  },
  work(given, units) {
    const answer = citricForAcetic(given)
    if (isRefused(answer)) return answer
    const { citricG } = answer
    return {
      figures: [mass('Citric acid', rough(citricG), units)],
      doubt: 'Good to some 5 %, at that pH only.',
      put: [
        `${put(given.aceticG)} g of acetic acid at pH ${put(given.ph)} and ${put(given.tempC)} °C: ${put(citricG)} g, ${given.citricForm}`
      ],
      cautions: acidCautions('citric')
    }
  }
})

export const acidSums: readonly Sum[] = [ofBath, forPh, byGoods, citric]
