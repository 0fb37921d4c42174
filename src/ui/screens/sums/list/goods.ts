// Water, goods, and what goes by the litre.
import {
  carriedML,
  conditionedG,
  contentOfRegain,
  dryG,
  isRefused,
  ratioOf,
  regainOfContent,
  regainPercent,
  saltFor,
  waterFor
} from '../../../../core/chemistry/index.ts'
import { showNumber, showPercent } from '../../../../core/quantity/index.ts'
import { choice, chosen, optional, type Typed } from '../field.ts'
import { dose, goods, liquor, mass, owf, percentage, ratio } from '../quantities.ts'
import { mass as massFigure, put, volume } from '../shown.ts'
import { type Sum, sum } from '../sum.ts'

const water = sum({
  id: 'water',
  title: 'Water for a liquor ratio',
  ask: 'How much water do I pour for this liquor ratio?',
  group: 'Water and goods',
  words: 'lr mlr bath volume fill wet carried',
  uses: ['waterFor'],
  fields: {
    goodsG: goods(),
    ratio: ratio('Liquor ratio', { hint: 'mL of liquor for each g of goods.' }),
    stockML: optional(dose('Stock that goes in'), 0),
    acidML: optional(dose('Acid that goes in'), 0),
    carriedML: optional(
      dose('Water that the wet goods carry', {
        hint: 'Spun, some 0.6 of the dry weight; dripping, twice it (common practice, no source).'
      }),
      0
    ),
    countCarried: choice('The ratio counts that water', [
      ['yes', 'Yes'],
      ['no', 'No']
    ])
  },
  work(given, units) {
    const { goodsG, stockML, acidML } = given
    const countCarried = given.countCarried === 'yes'
    const answer = waterFor({ ...given, countCarried })
    if (isRefused(answer)) return answer
    const { totalML, waterML, trueRatio } = answer
    const counted = countCarried ? ` - ${put(given.carriedML)} carried` : ''
    return {
      figures: [volume('Pour', waterML, units), volume('Liquor in all', totalML, units)],
      say:
        countCarried || given.carriedML === 0
          ? []
          : [`With what the goods carry the pot stands at ${showNumber(trueRatio, 1)}:1.`],
      put: [
        `${put(given.ratio)} × ${put(goodsG)} g = ${put(totalML)} mL in all`,
        `${put(totalML)} - ${put(stockML)} stock - ${put(acidML)} acid${counted} = ${put(waterML)} mL`
      ]
    }
  }
})

const carried = sum({
  id: 'carried',
  title: 'Water in wet goods',
  ask: 'How much water do wet goods carry into the bath?',
  group: 'Water and goods',
  words: 'pick-up spun dripping squeezed',
  uses: ['carriedML'],
  fields: { goodsG: goods(), wetG: mass('Wet weight') },
  work(given, units) {
    const answer = carriedML(given)
    if (isRefused(answer)) return answer
    const share = (answer / given.goodsG) * 100
    return {
      figures: [
        volume('Water in them', answer, units),
        { what: 'Of the dry weight', figure: showPercent(Math.round(share)) }
      ],
      put: [`${put(given.wetG)} g - ${put(given.goodsG)} g = ${put(answer)} mL`]
    }
  }
})

const ratioNow = sum({
  id: 'ratio',
  title: 'Liquor ratio of a pot',
  ask: 'At which liquor ratio does this pot stand?',
  group: 'Water and goods',
  words: 'lr mlr',
  uses: ['ratioOf'],
  fields: {
    goodsG: goods(),
    liquorML: liquor('Liquor in the pot', { hint: 'With stock, acid and what the goods carried.' })
  },
  work(given) {
    const answer = ratioOf(given)
    if (isRefused(answer)) return answer
    return {
      figures: [{ what: 'Liquor ratio', figure: `${showNumber(answer, 1)}:1` }],
      put: [`${put(given.liquorML)} mL ÷ ${put(given.goodsG)} g = ${put(answer)}`]
    }
  }
})

const salt = sum({
  id: 'salt',
  title: 'Salt or levelling agent',
  ask: 'How much salt are so many % owf, and how many g/L is that?',
  group: 'Water and goods',
  words: 'glauber g/L assistant leveller',
  uses: ['saltFor'],
  fields: { goodsG: goods(), percentOwf: owf('Salt'), ratio: ratio('Liquor ratio') },
  work(given, units) {
    const answer = saltFor(given)
    if (isRefused(answer)) return answer
    const { saltG, gPerL } = answer
    return {
      figures: [
        massFigure('Salt', saltG, units),
        { what: 'In the liquor', figure: `${showNumber(gPerL, gPerL < 1 ? 2 : 1)}\u00a0g/L` }
      ],
      say: ['Whether salt levels or not depends on the class of the dye: milling dyes are dyed without it.'],
      put: [
        `${put(given.goodsG)} g × ${put(given.percentOwf)} ÷ 100 = ${put(saltG)} g`,
        `${put(given.percentOwf)} × 10 ÷ ${put(given.ratio)} = ${put(gPerL)} g/L`
      ]
    }
  }
})

const dry = sum({
  id: 'dry-weight',
  title: 'Dry weight from a regain',
  ask: 'What do goods weigh dry, and on a damper or drier day?',
  group: 'Water and goods',
  words: 'moisture conditioned bone dry humidity',
  uses: ['dryG', 'conditionedG'],
  renamed: { goodsG: 'massG' },
  fields: {
    massG: mass('Weighed'),
    regainPercent: percentage('At a regain of', { hint: 'Wool 10 to 18 % with the weather (from memory).' }),
    otherPercent: percentage('And at a regain of', {
      start: '16',
      hint: 'What trade agrees on: wool 16 to 18.25 %, by form and authority (from memory).'
    })
  },
  work({ massG, regainPercent: regain, otherPercent }, units) {
    const goodsG = dryG({ massG, regainPercent: regain })
    if (isRefused(goodsG)) return goodsG
    const other = conditionedG({ goodsG, regainPercent: otherPercent })
    if (isRefused(other)) {
      const problems = other.problems.map((each) =>
        each.field === 'regainPercent' ? { ...each, field: 'otherPercent' } : each
      )
      return { ...other, problems }
    }
    return {
      figures: [massFigure('Dry', goodsG, units), massFigure(`At ${showPercent(otherPercent)}`, other, units)],
      put: [
        `${put(massG)} g ÷ (1 + ${put(regain)} ÷ 100) = ${put(goodsG)} g`,
        `${put(goodsG)} g × (1 + ${put(otherPercent)} ÷ 100) = ${put(other)} g`
      ]
    }
  }
})

const regainNow = sum({
  id: 'regain',
  title: 'Regain of goods',
  ask: 'How much moisture is in goods weighed before and after drying?',
  group: 'Water and goods',
  words: 'moisture content dry oven',
  uses: ['regainPercent'],
  fields: { massG: mass('Weighed as they are'), goodsG: mass('Weighed dry') },
  work(given) {
    const answer = regainPercent(given)
    if (isRefused(answer)) return answer
    const { massG, goodsG } = given
    return {
      figures: [{ what: 'Regain, on the dry weight', figure: `${showNumber(answer, 1)}\u00a0%` }],
      put: [`(${put(massG)} g - ${put(goodsG)} g) ÷ ${put(goodsG)} g × 100 = ${put(answer)} %`]
    }
  }
})

const moisture = sum({
  id: 'moisture',
  title: 'Regain and moisture content',
  ask: 'Which moisture content is this regain, and the other way round?',
  group: 'Water and goods',
  words: 'convert wet basis dry basis',
  uses: ['contentOfRegain', 'regainOfContent'],
  fields: {
    from: choice('From', [
      ['regain', 'regain'],
      ['content', 'content']
    ]),
    regainPercent: percentage('Regain, on the dry weight', { when: (typed: Typed) => chosen(typed, 'from', 'regain') }),
    contentPercent: percentage('Moisture content, on the wet weight', {
      when: (typed: Typed) => chosen(typed, 'from', 'content')
    })
  },
  work({ from, regainPercent: regain, contentPercent: content }) {
    const answer = from === 'regain' ? contentOfRegain(regain) : regainOfContent(content)
    if (isRefused(answer)) return answer
    const what = from === 'regain' ? 'Moisture content, on the wet weight' : 'Regain, on the dry weight'
    return {
      figures: [{ what, figure: `${showNumber(answer, 1)}\u00a0%` }],
      put: [
        from === 'regain'
          ? `${put(regain)} ÷ (100 + ${put(regain)}) × 100 = ${put(answer)} %`
          : `${put(content)} ÷ (100 - ${put(content)}) × 100 = ${put(answer)} %`
      ]
    }
  }
})

export const goodsSums: readonly Sum[] = [water, carried, ratioNow, salt, dry, regainNow, moisture]
