// Every sum against a worked example, from the words that are typed to the words that are shown. The examples are the
// dyehouse arithmetic that tests/reference/trade-arithmetic.test.ts checks (common practice, no source, unless said).
import { describe, expect, it } from 'vitest'
import { sums } from '../../../src/ui/screens/sums/sums.ts'
import { figures, result, table, usUnits, type Words } from './typing.ts'

type Example = [title: string, id: string, words: Words, shown: string[]]

const dye: Example[] = [
  ['50 g at 0.8 % of a 1 % stock', 'stock', { goodsG: '50', percentOwf: '0.8' }, ['Stock 40 mL', 'Dye in it 0.4 g']],
  [
    'with a decimal comma and the words behind it',
    'stock',
    { goodsG: '50 g', percentOwf: '0,8 % owf', stockPercentWV: '1 % w/v' },
    ['Stock 40 mL', 'Dye in it 0.4 g']
  ],
  [
    '40 mL of it the other way round',
    'depth',
    { goodsG: '50', stockML: '40' },
    ['Depth of shade 0.8 % owf', 'Dye in it 0.4 g']
  ],
  ['250 mL of a 1 % stock', 'make-up', { volumeML: '250' }, ['Powder 2.5 g', 'Made up to 250 mL']],
  ['250 mL of 0.1 % from 1 %', 'dilute', { toML: '250 mL' }, ['Take 25 mL', 'Made up to 250 mL']],
  [
    '3:1 blue and red at 0.8 % on 50 g',
    'mix',
    {
      goodsG: '50',
      percentOwf: '0.8',
      dyes: [
        { name: 'blue', parts: '3' },
        { name: 'red', parts: '1' }
      ]
    },
    ['blue 30 mL', 'red 10 mL']
  ],
  [
    'six tabs of 10 g from 2 % on',
    'series',
    { goodsG: '10', topPercentOwf: '2' },
    ['In all, of 1 % 37.5 mL', 'In all, of 0.1 % 18.8 mL']
  ],
  [
    '0.625 mL of 1 %: from 0.1 % instead',
    'small-dose',
    { goodsG: '10', percentOwf: '0.0625' },
    ['Of the 0.1 % stock 6.3 mL']
  ],
  [
    'twice the goods in a pot too small for the ratio',
    'scale',
    {
      fromGoodsG: '50',
      fromLiquorML: '1500',
      toGoodsG: '100',
      potHoldsML: '2 L',
      portions: [
        { name: 'stock', amount: '40 mL' },
        { name: 'salt', amount: '3 g', goesBy: 'liquor' }
      ]
    },
    ['Liquor 2 L', 'Liquor ratio 20:1']
  ]
]

const acid: Example[] = [
  ['2 % owf of 5 % vinegar on 50 g', 'acid-dose', { goodsG: '50' }, ['From the bottle 20 mL', 'Pure acid 1 g']],
  ['of 6 % vinegar', 'acid-dose', { goodsG: '50', percent: '6' }, ['From the bottle 16.7 mL', 'Pure acid 1 g']],
  [
    'of 56 % w/w acid (density 1.063)',
    'acid-dose',
    { goodsG: '50', percent: '56', basis: 'w/w', densityGPerML: '1.063' },
    ['From the bottle 1.7 mL', 'Pure acid 1 g']
  ],
  [
    'of 80 % w/w acid (density 1.070)',
    'acid-dose',
    { goodsG: '50', percent: '80', basis: 'w/w', densityGPerML: '1,07' },
    ['From the bottle 1.2 mL', 'Pure acid 1 g']
  ],
  ['1 g of acetic at pH 4.5', 'citric-for-acetic', { aceticG: '1', ph: '4.5' }, ['Citric acid 0.86 g']],
  [
    '1 g of acetic at pH 5, monohydrate',
    'citric-for-acetic',
    { aceticG: '1', ph: '5', citricForm: 'monohydrate' },
    ['Citric acid 1.3 g']
  ],
  // 2 % owf of acetic on 100 g in 3 L: 2 g in 40 mL of 5 % vinegar; pH 3.37 in soft water, 4.12 at 100 mg/L (computed
  // without activities, which are worth 0.1 here).
  [
    'soft water',
    'ph',
    { waterML: '3 L', alkalinityMgPerLCaCO3: '0', vinegarML: '40' },
    ['Fresh, lid on pH 3.4', 'After a long boil pH 3.4']
  ],
  [
    'hard water',
    'ph',
    { waterML: '3 L', alkalinityMgPerLCaCO3: '100', vinegarML: '40' },
    ['Fresh, lid on pH 4.1', 'After a long boil pH 4.1']
  ],
  [
    'the vinegar for pH 4.1 in it',
    'acid-for-ph',
    { targetPh: '4.1', waterML: '3 L', alkalinityMgPerLCaCO3: '100' },
    ['Vinegar 40 mL']
  ]
]

const goods: Example[] = [
  [
    '30:1 on 50 g, spun',
    'water',
    { goodsG: '50', ratio: '30:1', stockML: '40', acidML: '20', carriedML: '30' },
    ['Pour 1.41 L', 'Liquor in all 1.5 L']
  ],
  [
    '30:1 on 50 g, dripping',
    'water',
    { goodsG: '50', ratio: '30', stockML: '40', acidML: '20', carriedML: '100' },
    ['Pour 1.34 L', 'Liquor in all 1.5 L']
  ],
  ['80 g wet of 50 g dry', 'carried', { goodsG: '50', wetG: '80' }, ['Water in them 30 mL', 'Of the dry weight 60 %']],
  ['50 g in 1.5 L', 'ratio', { goodsG: '50', liquorML: '1.5 L' }, ['Liquor ratio 30:1']],
  [
    '10 % owf at 30:1',
    'salt',
    { goodsG: '100', percentOwf: '10', ratio: '30:1' },
    ['Salt 10 g', 'In the liquor 3.3 g/L']
  ],
  ['100 g at 12 % regain', 'dry-weight', { massG: '100', regainPercent: '12' }, ['Dry 89.3 g', 'At 16 % 103.6 g']],
  ['100 g at 18.25 % regain', 'dry-weight', { massG: '100', regainPercent: '18.25' }, ['Dry 84.6 g', 'At 16 % 98.1 g']],
  ['116 g of 100 g dry', 'regain', { massG: '116', goodsG: '100' }, ['Regain, on the dry weight 16 %']],
  // ASTM D2118, seen in a secondary text: 12.0 and 13.04 % content are 13.6 and 15.0 % regain.
  ['12 % content', 'moisture', { from: 'content', contentPercent: '12' }, ['Regain, on the dry weight 13.6 %']],
  ['15 % regain', 'moisture', { regainPercent: '15' }, ['Moisture content, on the wet weight 13 %']]
]

const heat: Example[] = [
  ['at the sea', 'boil', { altitudeM: '0' }, ['Water boils at 100 °C']],
  // 2000 m: 79 495 Pa (US Standard Atmosphere 1976, table) and there 93.3 °C (steam tables).
  ['2000 m', 'boil', { altitudeM: '2000' }, ['Water boils at 93.3 °C']],
  // At 90 kJ/mol: e^(90,000 ÷ 8.314 × (1 ÷ 368.15 - 1 ÷ 371.15)) = 1.268 times as long, 45 min and 12 more.
  [
    '45 min at 98 °C, at a boil of 95 °C',
    'cooler-hold',
    { holdMin: '45', meantC: '98', atC: '95' },
    ['Hold longer by about 12 min']
  ],
  ['40 to 95 °C at 1 °C/min', 'ramp-time', { fromC: '40', toC: '95' }, ['It takes 55 min']],
  // 3 L of water alone at 1 °C/min: 0.21 kW.
  ['3 L at 1 °C/min', 'ramp-power', { liquorL: '3 L' }, ['Into the bath 0.21 kW']],
  [
    '1.5 kW into 3 L and 100 g',
    'ramp-rate',
    { liquorL: '3 L', goodsKg: '100', powerKW: '1500 W' },
    ['It rises by 7.1 °C/min']
  ],
  // Newton's law with 20 °C around and k 0.0112 per min: 95, 80, 68 and 58.4 °C after 0, 20, 40 and 60 min, 40 °C at 118.
  [
    'a pot that cools',
    'time-to-temperature',
    {
      towards: 'down',
      targetC: '40',
      step: '0.1C',
      sdC: '0.1',
      readings: [
        { atMin: '0', tempC: '95' },
        { atMin: '20', tempC: '80' },
        { atMin: '40', tempC: '67.9' },
        { atMin: '1 h', tempC: '58.3' }
      ]
    },
    ['At 40 °C minute 117', 'After the last reading 57 min']
  ]
]

const uptake: Example[] = [
  [
    'absorbance 0.80 in 1500 mL to 0.04 in 1350 mL',
    'exhaustion',
    { startAbsorbance: '0.80', startML: '1500', nowAbsorbance: '0.04', nowML: '1350' },
    ['Exhaustion 95.5 %']
  ],
  ['like the 6 % cup', 'ladder', { like: '6' }, ['Exhaustion 94 %']],
  // Ea 75 kJ/mol: ten degrees from 70 to 80 °C make 2.1 times the rate.
  [
    'Ea 75 from 80 to 70 °C',
    'half-time',
    { halfMin: '10', energyKJPerMol: '75', tempC: '70' },
    ['Half-dyeing time at 70 °C 21 min', 'Speed × 0.48']
  ],
  // Four half-times: 93.75 % of a first-order process.
  [
    'four half-times',
    'exhaustion-after',
    { halfMin: '10', stretches: [{ fromC: '80', toC: '80', min: '40' }] },
    ['On the goods after 40 min 94 %']
  ],
  // Radius 10 µm, D t / r² = 1e-12 · 1e5 s / 1e-6 cm² = 0.1; alpha 1: 0.793 (tests/reference/data/05_dye_uptake.json).
  [
    'half of the dye in the end',
    'diffusion',
    { finalPercent: '50', micrometres: '20', diffusion: '1', min: '100000 s' },
    ['Of what is taken up in the end 79 %', 'Of the dye in the bath 40 %']
  ]
]

describe.each([
  ['dye', dye],
  ['acid and pH', acid],
  ['water and goods', goods],
  ['heat', heat],
  ['what went on', uptake]
] as const)('%s', (_, examples) => {
  it.each(examples)('%s (%s)', (_title, id, words, shown) => {
    expect(figures(id, words)).toEqual(shown)
  })
})

const scaling: Words = {
  fromGoodsG: '50',
  fromLiquorML: '1500',
  toGoodsG: '100',
  potHoldsML: '2 L',
  portions: [
    { name: 'stock', amount: '40' },
    { name: 'salt', amount: '3 g', goesBy: 'liquor' }
  ]
}

describe('a sum that makes a series gives a table', () => {
  it('of the tabs of a dilution series: the small doses come from the weak stock', () => {
    expect(table('series', { goodsG: '10', topPercentOwf: '2' })).toEqual([
      '2 % owf | 20 mL of 1 % | ± 0.5 %',
      '1 % owf | 10 mL of 1 % | ± 1 %',
      '0.5 % owf | 5 mL of 1 % | ± 2 %',
      '0.25 % owf | 2.5 mL of 1 % | ± 4 %',
      '0.125 % owf | 12.5 mL of 0.1 % | ± 0.8 %',
      '0.063 % owf | 6.3 mL of 0.1 % | ± 1.6 %'
    ])
  })

  it('and marks the dose that no stock of the list measures', () => {
    const words = { goodsG: '10', topPercentOwf: '2', stocksPercentWV: [{ percent: '1' }] }
    expect(table('series', words).slice(3)).toEqual([
      '0.25 % owf | 2.5 mL of 1 % | ± 4 %',
      '0.125 % owf | 1.3 mL of 1 % | ± 8 %: too small to measure',
      '0.063 % owf | 0.63 mL of 1 % | ± 16 %: too small to measure'
    ])
    expect(result('series', words).say?.[0]).toMatch(/^2 of them can't be measured/)
  })

  it('of the dyes of a mixture, and of a recipe that is scaled', () => {
    const dyes: Words[string] = [
      { name: 'blue', parts: '3' },
      { parts: '1', stockPercentWV: '0.5' }
    ]
    expect(table('mix', { goodsG: '50', percentOwf: '0.8', dyes })).toEqual([
      'blue | 3 | 0.6 % owf | 0.3 g | 30 mL of 1 %',
      'dye 2 | 1 | 0.2 % owf | 0.1 g | 20 mL of 0.5 %'
    ])
    expect(table('scale', scaling)).toEqual(['stock | 40 mL | 80 mL', 'salt | 3 g | 4 g'])
    expect(result('scale', scaling).say?.[0]).toMatch(/liquor ratio is another/)
  })
})

describe('in US units', () => {
  it.each([
    [
      'a quarter of a pound',
      'stock',
      { goodsG: '4', percentOwf: '0.8' },
      ['Stock 0.38 US cups (90.7 mL)', 'Dye in it 0.907 g']
    ],
    ['a mile up: 834 hPa, and there 94.6 °C', 'boil', { altitudeM: '5280' }, ['Water boils at 202.3 °F']],
    ['104 to 203 °F', 'ramp-time', { fromC: '104', toC: '203', rateCPerMin: '1.8' }, ['It takes 55 min']],
    [
      'an oz of goods',
      'water',
      { goodsG: '1 lb', ratio: '30' },
      ['Pour 3.59 US gallons (13.61 L)', 'Liquor in all 3.59 US gallons (13.61 L)']
    ]
  ] as Example[])('%s (%s)', (_title, id, words, shown) => {
    expect(figures(id, words, usUnits)).toEqual(shown)
  })
})

it('every unit that a field offers is read, and none is offered twice', () => {
  for (const sum of sums) {
    for (const field of Object.values(sum.fields).flatMap((each) =>
      each.form === 'rows' ? Object.values(each.each) : [each]
    )) {
      if (field.form !== 'quantity') continue
      const units = field.units(usUnits)
      expect(new Set(units).size, `${sum.id} ${field.label}`).toBe(units.length)
      for (const unit of units) expect(field.read(`50 ${unit}`).ok, `${sum.id} ${field.label} ${unit}`).toBe(true)
    }
  }
})

describe('a doubt stands beside what is estimated', () => {
  it('a pH goes from the closed low to the open high, and asks to be measured', () => {
    const words = { waterML: '3 L', alkalinityMgPerLCaCO3: '100', vinegarML: '40' }
    expect(result('ph', words).doubt).toMatch(/^Between 4\.0 and 4\.2: an estimate, measure for the record\.$/)
  })

  it('a bath whose acid does not use up the alkalinity says that it rises as it boils', () => {
    const { figures: shown, say } = result('ph', { waterML: '3 L', alkalinityMgPerLCaCO3: '200', vinegarML: '5' })
    expect(shown).toHaveLength(1)
    expect(say?.[1]).toMatch(/the pH rises as the bath boils/)
  })

  it('a ladder of cups tells to about a rung, a time to a temperature its interval', () => {
    expect(result('ladder', { like: '6' }).doubt).toMatch(/^Between 88.% and 97.%/)
    expect(result('ladder', { like: '12 6' }).doubt).toMatch(/^Between 88.% and 94.%/)
  })

  it('a pot that levels off below never gets there; two readings do not tell', () => {
    const readings = [
      [0, 40],
      [5, 52],
      [10, 58.4],
      [15, 61.7],
      [20, 63.5],
      [25, 64.4],
      [30, 64.9],
      [35, 65.2]
    ].map(([at, t]) => ({ atMin: `${at}`, tempC: `${t}` }))
    expect(figures('time-to-temperature', { targetC: '85', sdC: '0.1', readings })).toEqual(['At 85 °C never'])
    const soon = readings.slice(0, 3).map((each) => ({ ...each, atMin: '0' }))
    const told = result('time-to-temperature', { targetC: '85', readings: soon })
    expect(told.figures[0].figure).toBe('can’t tell yet')
    expect(told.say).toEqual(['It takes three readings below the boil, at three different times.'])
  })
})

describe('cautions of acid', () => {
  const titles = (words: Words): string[] =>
    (result('acid-dose', { goodsG: '50', ...words }).cautions ?? []).map(({ title }) => title)

  it.each([
    ['5', null],
    ['12', 'Acid that irritates'],
    ['56', 'Corrosive acid'],
    ['95', 'Concentrated acetic acid']
  ])('%s %%: %s', (percent, title) => {
    expect(titles({ percent })).toEqual(title === null ? [] : [title])
  })

  it('citric acid is a powder', () => {
    const citric: Words = { acid: 'citric', targetPh: '4', waterML: '3 L', alkalinityMgPerLCaCO3: '100' }
    const bath: Words = { waterML: '3 L', alkalinityMgPerLCaCO3: '100', citricG: '2' }
    for (const [id, words] of [
      ['acid-for-ph', citric],
      ['ph', bath],
      ['citric-for-acetic', { aceticG: '1', ph: '4' }]
    ] as [string, Words][]) {
      expect(
        result(id, words).cautions?.map(({ title }) => title),
        id
      ).toEqual(['Citric acid dust'])
    }
  })

  it('concentrated acid is told to go into cold water, and where that comes from', () => {
    const [caution] = result('acid-dose', { goodsG: '50', percent: '80' }).cautions ?? []
    expect(caution?.say).toMatch(/acid into cold water, never into a hot bath/)
    expect(caution?.source).toMatch(/ICSC 0363/)
  })
})
