// What can't be is refused at its field, with what would be right.
import { describe, expect, it } from 'vitest'
import { answer, figures, problems, usUnits, type Words } from './typing.ts'

const stock: Words = { goodsG: '50', percentOwf: '0.8' }
const pot: Words = { waterML: '3 L', alkalinityMgPerLCaCO3: '100', vinegarML: '40' }

type Bad = [id: string, words: Words, place: string, say: RegExp]

const bad: Bad[] = [
  ['stock', { ...stock, goodsG: '-50' }, 'goodsG', /^It can’t be -50\. Write 0 or more, for example 50 g\.$/],
  ['stock', { ...stock, goodsG: '0' }, 'goodsG', /can't be 0 g\. Give 0\.05 to 100000 g\./],
  ['stock', { ...stock, goodsG: 'fifty' }, 'goodsG', /^“fifty” can’t be read\. Begin with a number, for example 50 g/],
  ['stock', { ...stock, goodsG: '50 furlongs' }, 'goodsG', /“50 furlongs” can’t be read\. .*g/],
  ['stock', { ...stock, goodsG: '50 mL' }, 'goodsG', /“50 mL” can’t be read\. Write it in .*g/],
  ['stock', { ...stock, goodsG: '5000 kg' }, 'goodsG', /^It can’t be 5000 kg\. Write at most 1000 kg\.$/],
  [
    'stock',
    { ...stock, goodsG: '1,500' },
    'goodsG',
    /“1,500” can’t be read\. Write 1\.5 or 1500: this comma could mean either/
  ],
  ['stock', { ...stock, goodsG: '1.500,5' }, 'goodsG', /“1\.500,5” can’t be read\. Write thousands without marks/],
  ['stock', { ...stock, goodsG: '1e9' }, 'goodsG', /Write the number out, without an exponent/],
  ['stock', { ...stock, percentOwf: '5000' }, 'percentOwf', /between 0 % and 1000 %/],
  [
    'stock',
    { ...stock, percentOwf: '2 g/L' },
    'percentOwf',
    /“2 g\/L” can’t be read\. Write the number alone, for example 0\.8 \(% owf\)/
  ],
  [
    'stock',
    { ...stock, stockPercentWV: '0' },
    'stockPercentWV',
    /can't be 0 % w\/v\. Give more than 0 and at most 100 % w\/v/
  ],
  [
    'stock',
    { ...stock, stockPercentWV: '1 % w/w' },
    'stockPercentWV',
    /Write the number alone, for example 1 \(% w\/v/
  ],
  ['depth', { goodsG: '50', stockML: '2 tbsp' }, 'stockML', /Say which: US tbsp \(14\.8 mL\) or metric tbsp \(15 mL\)/],
  [
    'ph',
    { ...pot, waterML: '6 cups' },
    'waterML',
    /“6 cups” can’t be read\. Say which: US cup \(236\.6 mL\) or metric cup \(250 mL\)/
  ],
  ['ph', { ...pot, vinegarML: '3 oz' }, 'vinegarML', /An oz is a mass; a volume is written 3 US fl oz or 30 mL/],
  ['ph', { ...pot, tempC: '110' }, 'tempC', /can't be 110 °C\. Give 0 to 100 °C/],
  ['ph', { ...pot, tempC: '182' }, 'tempC', /Write −10 to 120 °C; 182 °F is 83 °C/],
  [
    'ph',
    { ...pot, vinegarML: '900', vinegarPercentWV: '80', waterML: '100' },
    'vinegarML',
    /more than 1 mol of acid in a litre/
  ],
  [
    'acid-for-ph',
    { ...noVinegar(pot), targetPh: '9' },
    'targetPh',
    /more acid can't raise that to 9\. Give a pH under/
  ],
  ['acid-for-ph', { ...noVinegar(pot), targetPh: '14' }, 'targetPh', /can't be 14\. Give 1\.5 to 9/],
  ['acid-dose', { goodsG: '50', percent: '0' }, 'percent', /can't be 0 % strong\. Give more than 0 and at most 100 %/],
  [
    'acid-dose',
    { goodsG: '50', percent: '80', basis: 'w/w', densityGPerML: '10.7' },
    'densityGPerML',
    /No such liquid .* Give 0\.5 to 2 g\/mL/
  ],
  ['dilute', { toPercentWV: '2', toML: '250' }, 'toPercentWV', /Water makes no 2 % out of 1 %\. Give at most 1 %/],
  ['water', { goodsG: '50', ratio: '20:30' }, 'ratio', /Write the liquor ratio with 1 for the goods/],
  ['water', { goodsG: '50', ratio: '1', stockML: '40', acidML: '20' }, 'ratio', /comes to 60 mL.*ratio of at least 2/],
  ['carried', { goodsG: '50', wetG: '40' }, 'wetG', /wet goods can't be 40 g\. Give 50 to/],
  [
    'dry-weight',
    { massG: '100', regainPercent: '12', otherPercent: '300' },
    'otherPercent',
    /regain can't be 300 %\. Give 0 to 100 %/
  ],
  ['dry-weight', { massG: '100', regainPercent: '120' }, 'regainPercent', /regain can't be 120 %/],
  ['moisture', { from: 'content', contentPercent: '80' }, 'contentPercent', /Give 0 to 50 %/],
  ['series', { goodsG: '10', topPercentOwf: '2', steps: '2.5' }, 'steps', /Write a whole number/],
  ['series', { goodsG: '10', topPercentOwf: '2', factor: '1' }, 'factor', /factor can't be 1\. Give more than 1/],
  [
    'series',
    { goodsG: '10', topPercentOwf: '2', stocksPercentWV: [{ percent: '0' }] },
    'stocksPercentWV',
    /can't be 0 % w\/v/
  ],
  [
    'mix',
    { goodsG: '50', percentOwf: '1', dyes: [{ parts: '3' }, {}, { name: 'red', parts: '-1' }] },
    'dyes.2.parts',
    /part of red can't be −1/
  ],
  ['boil', { altitudeM: '9000 m' }, 'altitudeM', /altitude can't be 9000 m\. Give −430 to 5500 m/],
  ['boil', { altitudeM: '2 miles' }, 'altitudeM', /Write 2 m or 2 ft/],
  [
    'boil',
    { by: 'pressure', stationPressureHPa: '29.9 psi' },
    'stationPressureHPa',
    /Write 29\.9 hPa, 29\.9 kPa, 29\.9 inHg or 29\.9 mmHg/
  ],
  ['ramp-time', { fromC: '40', toC: '95', rateCPerMin: '0' }, 'rateCPerMin', /It can’t be 0\. Write a rate above 0/],
  ['ramp-power', { liquorL: '3 L', rateCPerMin: '30' }, 'rateCPerMin', /Give more than 0 and at most 20 °C\/min/],
  [
    'exhaustion',
    { startAbsorbance: '0', startML: '1500', nowAbsorbance: '0', nowML: '1500' },
    'startAbsorbance',
    /can't be 0\./
  ],
  ['half-time', { halfMin: '0', tempC: '70' }, 'halfMin', /Give more than 0/],
  ['half-time', { halfMin: '20 to 30 min', tempC: '70' }, 'halfMin', /Write one time, for example 20 min/],
  [
    'exhaustion-after',
    { halfMin: '10', stretches: [{ fromC: '110', toC: '80', min: '5' }] },
    'stretches.0.fromC',
    /can't be 110 °C\. Give 0 to 105 °C/
  ],
  ['diffusion', { finalPercent: '100', diffusion: '1', min: '60' }, 'finalPercent', /at most 99\.9 %/],
  ['diffusion', { diffusion: '0.0001', min: '1' }, 'min', /D t ÷ r² is 0\.001 to 1000/],
  [
    'scale',
    { fromGoodsG: '50', fromLiquorML: '1500', toGoodsG: '100', portions: [{ amount: '2 % owf' }] },
    'portions.0.amount',
    /Write a volume or a mass/
  ]
]

function noVinegar({ vinegarML: _, ...others }: Words): Words {
  return others
}

describe('bad input is refused where it stands', () => {
  it.each(bad)('%s %j: %s', (id, words, place, say) => {
    const found = problems(id, words)
    expect(Object.keys(found)).toEqual([place])
    expect(found[place]).toMatch(say)
  })

  it('all of it at once', () => {
    expect(Object.keys(problems('stock', { goodsG: '-1', percentOwf: 'x', stockPercentWV: '1,000' }))).toEqual([
      'goodsG',
      'percentOwf',
      'stockPercentWV'
    ])
  })

  it('speaking of °F where the dyer does', () => {
    expect(problems('ph', { ...pot, tempC: '230' }, usUnits).tempC).toMatch(/can't be 230 °F\. Give 32 to 212 °F\./)
  })
})

describe('what is missing is no mistake', () => {
  it.each([
    ['stock', {}, ['Dry weight of the goods', 'Depth of shade']],
    ['stock', { goodsG: '50' }, ['Depth of shade']],
    ['mix', { goodsG: '50', percentOwf: '1', dyes: [{ name: 'blue' }, {}] }, ['Dye 1, parts']],
    [
      'time-to-temperature',
      { targetC: '85', readings: [{ atMin: '0', tempC: '40' }, {}, {}] },
      ['Reading 2, at', 'Reading 2, it read', 'Reading 3, at', 'Reading 3, it read']
    ],
    ['acid-dose', { goodsG: '50', percent: '80', basis: 'w/w' }, ['Density']]
  ] as [string, Words, string[]][])('%s %j', (id, words, missing) => {
    expect(answer(id, words)).toEqual({ kind: 'wanted', missing })
  })

  it('a row that nobody filled in is left out, and one behind it keeps its number', () => {
    const dyes: Words[string] = [{ name: 'blue', parts: '3' }, {}, { name: 'red', parts: '1' }]
    expect(figures('mix', { goodsG: '50', percentOwf: '0.8', dyes })).toEqual(['blue 30 mL', 'red 10 mL'])
  })
})

describe('what people write is understood', () => {
  it.each([
    ['1.5 against 1,5', 'stock', { goodsG: '50', percentOwf: '1,5' }, 'Stock 75 mL'],
    ['a fraction', 'stock', { goodsG: '50', percentOwf: '1 1/2 %' }, 'Stock 75 mL'],
    ['oz', 'stock', { goodsG: '2 oz', percentOwf: '1' }, 'Stock 56.7 mL'],
    ['lb and oz', 'stock', { goodsG: '1 lb 4 oz', percentOwf: '1' }, 'Stock 567 mL'],
    ['spoons with a country', 'depth', { goodsG: '50', stockML: '2 US tbsp' }, 'Depth of shade 0.591 % owf'],
    ['°F in a field of °C', 'ramp-time', { fromC: '104 °F', toC: '95', rateCPerMin: '60 °C/h' }, 'It takes 55 min'],
    ['feet', 'boil', { altitudeM: '6562 ft' }, 'Water boils at 93.3 °C'],
    ['a barometer in inches', 'boil', { by: 'pressure', stationPressureHPa: '29.92 inHg' }, 'Water boils at 100 °C'],
    ['German degrees', 'ph', { ...pot, alkalinityMgPerLCaCO3: '5.6 °dH' }, 'Fresh, lid on pH 4.1'],
    ['a ratio with "to"', 'salt', { goodsG: '100', percentOwf: '10', ratio: '30 to 1' }, 'Salt 10 g'],
    [
      'half an hour',
      'exhaustion-after',
      { halfMin: 'half an hour', stretches: [{ fromC: '80', toC: '80', min: '1 h' }] },
      'On the goods after 1 h 75 %'
    ]
  ] as [string, string, Words, string][])('%s', (_, id, words, first) => {
    expect(figures(id, words)[0]).toBe(first)
  })
})
