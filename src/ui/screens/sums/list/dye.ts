// Dye: how much of it, from which stock.
import {
  depthOf,
  dilute,
  dilutionSeries,
  isRefused,
  makeUpStock,
  mixParts,
  type SeriesDose,
  scaleRecipe,
  smallDose,
  stockFor,
  usualSyringe
} from '../../../../core/chemistry/index.ts'
import { showMass, showNumber, showPercent, type Units } from '../../../../core/quantity/index.ts'
import { choice, name, optional, rows } from '../field.ts'
import {
  count,
  dose,
  goods,
  liquor,
  mass,
  number,
  owf,
  type PlainDose,
  percentage,
  portion,
  wv
} from '../quantities.ts'
import { mass as massFigure, put, smallSay, volume, volumeText } from '../shown.ts'
import { type Sum, sum } from '../sum.ts'

const stock = sum({
  id: 'stock',
  title: 'Stock for a depth',
  ask: 'How many mL of stock give this depth of shade?',
  group: 'Dye',
  words: 'dos depth of shade owf dye mL',
  uses: ['stockFor'],
  fields: { goodsG: goods(), percentOwf: owf('Depth of shade'), stockPercentWV: wv('Stock', { start: '1' }) },
  work(given, units) {
    const { goodsG, percentOwf, stockPercentWV } = given
    const answer = stockFor(given)
    if (isRefused(answer)) return answer
    const { dyeG, stockML } = answer
    return {
      figures: [volume('Stock', stockML, units), massFigure('Dye in it', dyeG, units)],
      say: smallSay(stockML),
      put: [
        `${put(goodsG)} g × ${put(percentOwf)} ÷ 100 = ${put(dyeG)} g of dye`,
        `${put(goodsG)} g × ${put(percentOwf)} ÷ ${put(stockPercentWV)} = ${put(stockML)} mL of stock`
      ]
    }
  }
})

const depth = sum({
  id: 'depth',
  title: 'Depth from a stock',
  ask: 'What depth do so many mL of stock give?',
  group: 'Dye',
  words: 'dos depth of shade owf back',
  uses: ['depthOf'],
  fields: {
    goodsG: goods(),
    stockML: dose('Stock taken'),
    stockPercentWV: wv('Strength of the stock', { start: '1' })
  },
  work(given, units) {
    const { goodsG, stockML, stockPercentWV } = given
    const answer = depthOf(given)
    if (isRefused(answer)) return answer
    const { dyeG, percentOwf } = answer
    return {
      figures: [
        { what: 'Depth of shade', figure: `${showPercent(percentOwf, units)} owf` },
        massFigure('Dye in it', dyeG, units)
      ],
      put: [
        `${put(stockML)} mL × ${put(stockPercentWV)} ÷ 100 = ${put(dyeG)} g of dye`,
        `${put(stockML)} mL × ${put(stockPercentWV)} ÷ ${put(goodsG)} g = ${put(percentOwf)} % owf`
      ]
    }
  }
})

const makeUp = sum({
  id: 'make-up',
  title: 'Make up a stock',
  ask: 'How much powder for a stock of this strength?',
  group: 'Dye',
  words: 'powder weigh solution new',
  uses: ['makeUpStock'],
  fields: { stockPercentWV: wv('Strength wanted', { start: '1' }), volumeML: liquor('Volume wanted') },
  work(given, units) {
    const { stockPercentWV, volumeML } = given
    const answer = makeUpStock(given)
    if (isRefused(answer)) return answer
    const { powderG, makeUpToML } = answer
    return {
      figures: [massFigure('Powder', powderG, units), volume('Made up to', makeUpToML, units)],
      say: [
        'Paste it with a little water, add hot water, stir, let it cool, then fill up to the mark: the powder is part of the volume.'
      ],
      put: [`${put(stockPercentWV)} × ${put(volumeML)} mL ÷ 100 = ${put(powderG)} g`]
    }
  }
})

const weaken = sum({
  id: 'dilute',
  title: 'Weaken a stock',
  ask: 'How much of the strong stock makes a weaker one?',
  group: 'Dye',
  words: 'dilution dilute C1V1 C2V2 water',
  uses: ['dilute'],
  fields: {
    fromPercentWV: wv('There is', { start: '1' }),
    toPercentWV: wv('Wanted', { start: '0.1' }),
    toML: liquor('Volume wanted')
  },
  work(given, units) {
    const { fromPercentWV, toPercentWV, toML } = given
    const answer = dilute(given)
    if (isRefused(answer)) return answer
    const { takeML, makeUpToML } = answer
    return {
      figures: [volume('Take', takeML, units), volume('Made up to', makeUpToML, units)],
      say: ['With water up to the mark, not so much water added.', ...smallSay(takeML)],
      put: [`${put(toPercentWV)} × ${put(toML)} mL ÷ ${put(fromPercentWV)} = ${put(takeML)} mL`]
    }
  }
})

const mix = sum({
  id: 'mix',
  title: 'Mix dyes by parts',
  ask: 'How much of each stock for 3 parts of one and 1 of another?',
  group: 'Dye',
  words: 'recipe proportion blend parts ratio',
  uses: ['mixParts'],
  fields: {
    goodsG: goods(),
    percentOwf: owf('Depth of all dyes together'),
    dyes: rows(
      'Dyes',
      'Dye',
      { name: name('Dye'), parts: number('Parts'), stockPercentWV: wv('Stock', { start: '1' }) },
      [{}, {}]
    )
  },
  work(given, units) {
    const dyes = given.dyes.map((dye, i) => ({ ...dye, name: dye.name || `dye ${i + 1}` }))
    const answer = mixParts({ ...given, dyes })
    if (isRefused(answer)) return answer
    const { doses, mixedPercentWV } = answer
    const [first, ...others] = doses.map((each) => volume(each.name, each.stockML, units))
    const whole = doses.reduce((total, { parts }) => total + parts, 0)
    return {
      figures: [first ?? volume('Stock', 0, units), ...others],
      alike: true,
      table: {
        caption: 'Each dye',
        head: ['Dye', 'Parts', 'Depth', 'Weight', 'Stock'],
        rows: doses.map((each) => [
          each.name,
          showNumber(each.parts, 2),
          `${showPercent(each.percentOwf, units)} owf`,
          showMass(each.dyeG, units),
          `${volumeText(each.stockML, units)} of ${showPercent(each.stockPercentWV)}`
        ])
      },
      say: [
        `Poured together these stocks are ${showPercent(mixedPercentWV)} w/v. Keep the parts: a mixture kept as mL alone can't be varied later.`,
        ...doses.flatMap((each) => smallSay(each.stockML).map((say) => `${each.name}: ${say}`))
      ],
      put: doses.map(
        (each) =>
          `${each.name}: ${put(given.goodsG)} g × ${put(given.percentOwf)} × ${put(each.parts)} ÷ ${put(whole)} ÷ ${put(each.stockPercentWV)} = ${put(each.stockML)} mL`
      )
    }
  }
})

const stocksField = rows(
  'Stocks to take it from',
  'Stock',
  { percent: wv('Strength') },
  [{ percent: '1' }, { percent: '0.1' }],
  { most: 10 }
)
const syringe = {
  doubtML: dose('Your syringe is out by', { start: String(usualSyringe.doubtML) }),
  errorMostPercent: percentage('Which may be, of a dose', { start: String(usualSyringe.errorMostPercent) })
}

const doseCells = (each: SeriesDose, units: Units): string[] => [
  `${showPercent(each.percentOwf, units)} owf`,
  `${volumeText(each.stockML, units)} of ${showPercent(each.stockPercentWV)}`,
  `±\u00a0${showNumber(each.errorPercent, 1)}\u00a0%${each.measurable ? '' : ': too small to measure'}`
]

const series = sum({
  id: 'series',
  title: 'Dilution series',
  ask: 'Which doses for tabs that halve from one to the next?',
  group: 'Dye',
  words: 'tabs mini skeins halving ladder small dose floor steps',
  uses: ['dilutionSeries'],
  fields: {
    goodsG: goods({ hint: 'Of each tab.' }),
    topPercentOwf: owf('Deepest shade'),
    steps: count('How many', { start: '6' }),
    factor: number('Each is the one before, divided by', { start: '2' }),
    stocksPercentWV: stocksField,
    ...syringe
  },
  work(given, units) {
    const stocksPercentWV = given.stocksPercentWV.map(({ percent }) => percent)
    const doses = dilutionSeries({ ...given, stocksPercentWV })
    if (isRefused(doses)) return doses
    const used = [...new Set(doses.map((each) => each.stockPercentWV))]
    const [first, ...others] = used.map((percent) => {
      const all = doses.filter((each) => each.stockPercentWV === percent)
      const sumML = all.reduce((total, each) => total + each.stockML, 0)
      return volume(`In all, of ${showPercent(percent)}`, sumML, units)
    })
    const small = doses.filter(({ measurable }) => !measurable).length
    return {
      figures: [first ?? volume('In all', 0, units), ...others],
      alike: true,
      table: {
        caption: 'The doses',
        head: ['Depth', 'Take', 'Syringe'],
        rows: doses.map((each) => doseCells(each, units))
      },
      say: [
        ...(small > 0
          ? [`${small} of them can't be measured well enough: make a weaker stock and add it to the list.`]
          : []),
        'Same liquor ratio, pH, temperature and time for all of them.'
      ],
      put: doses.map(
        (each) =>
          `${put(given.goodsG)} g × ${put(each.percentOwf)} ÷ ${put(each.stockPercentWV)} = ${put(each.stockML)} mL`
      )
    }
  }
})

const small = sum({
  id: 'small-dose',
  title: 'A small dose',
  ask: 'Can this dose be measured, and from which stock?',
  group: 'Dye',
  words: 'syringe floor error pale weak',
  uses: ['smallDose'],
  fields: { goodsG: goods(), percentOwf: owf('Depth of shade'), stocksPercentWV: stocksField, ...syringe },
  work(given, units) {
    const stocksPercentWV = given.stocksPercentWV.map(({ percent }) => percent)
    const answer = smallDose({ ...given, stocksPercentWV })
    if (isRefused(answer)) return answer
    const { stockML, stockPercentWV, errorPercent, measurable } = answer
    return {
      figures: [volume(`Of the ${showPercent(stockPercentWV)} stock`, stockML, units)],
      doubt: `The syringe may be out by ${showNumber(errorPercent, 1)} % of it.`,
      say: measurable ? [] : ['Too small to measure, even from the weakest of these: make a weaker stock.'],
      put: [
        `${put(given.goodsG)} g × ${put(given.percentOwf)} ÷ ${put(stockPercentWV)} = ${put(stockML)} mL`,
        `${put(given.doubtML)} mL ÷ ${put(stockML)} mL × 100 = ${put(errorPercent)} %`
      ]
    }
  }
})

const scale = sum({
  id: 'scale',
  title: 'Scale a recipe',
  ask: 'What does a recipe come to for other goods, or a smaller pot?',
  group: 'Dye',
  words: 'other weight bigger smaller batch pot',
  uses: ['scaleRecipe'],
  fields: {
    fromGoodsG: mass('Goods of the recipe'),
    fromLiquorML: liquor('Liquor of the recipe'),
    toGoodsG: mass('Your goods'),
    potHoldsML: optional(liquor('Your pot holds, at most', { hint: 'Left empty: enough.' }), undefined),
    portions: rows(
      'Amounts of the recipe',
      'Amount',
      {
        name: name('What'),
        amount: portion('How much'),
        goesBy: choice('It goes by', [
          ['goods', 'the goods'],
          ['liquor', 'the litre']
        ])
      },
      [{}, {}]
    )
  },
  work(given, units) {
    const named = given.portions.map((each, i) => ({ ...each, name: each.name || `amount ${i + 1}` }))
    const plain = named.map((each) => ({ ...each, amount: each.amount.value }))
    const answer = scaleRecipe({ ...given, portions: plain })
    if (isRefused(answer)) return answer
    const { liquorML, portions, ratio, ratioChanged } = answer
    return {
      figures: [volume('Liquor', liquorML, units), { what: 'Liquor ratio', figure: `${showNumber(ratio, 1)}:1` }],
      table: {
        caption: 'Amounts',
        head: ['What', 'Recipe', 'Yours'],
        rows: portions.map((each, i) => {
          const was = named[i]?.amount ?? ({ value: 0, unit: 'g' } as const)
          return [each.name, amountText(was, units), amountText({ ...was, value: each.amount }, units)]
        })
      },
      say: [
        ...(ratioChanged
          ? ['The pot holds less than the recipe asks for: the liquor ratio is another, and the uptake with it.']
          : []),
        'Times and temperatures stay; heating up takes longer with more liquor.'
      ],
      put: [
        `by the goods: × ${put(given.toGoodsG)} g ÷ ${put(given.fromGoodsG)} g`,
        `by the litre: × ${put(liquorML)} mL ÷ ${put(given.fromLiquorML)} mL`
      ]
    }
  }
})

const amountText = ({ value, unit }: PlainDose, units: Units): string =>
  unit === 'mL' ? volumeText(value, units) : showMass(value, units)

export const dyeSums: readonly Sum[] = [stock, depth, makeUp, weaken, mix, series, small, scale]
