import { type Answer, refuse } from '../answer.ts'
import { allOutside, type Limit } from '../limits.ts'

/** Heat in kJ/K of a litre of water (a kg of it), and of a kg of wool. Water: 4.186, the calorie at 15 °C. Wool 1.4: from
 * memory. */
const WATER_KJ_PER_K_L = 4.186
const WOOL_KJ_PER_K_KG = 1.4

const rateLimit: Limit = { field: 'rateCPerMin', name: 'the rate', unit: '°C/min', least: 0, most: 20, above: true }

/** Minutes of a ramp: |to - from| / rate. Temperatures 0 to 105 °C, rate above 0 and up to 20 °C/min. */
export function rampMin(given: { fromC: number; toC: number; rateCPerMin: number }): Answer<number> {
  const { fromC, toC, rateCPerMin } = given
  const problems = allOutside([
    [fromC, { field: 'fromC', name: 'the temperature at first', unit: '°C', least: 0, most: 105 }],
    [toC, { field: 'toC', name: 'the temperature at last', unit: '°C', least: 0, most: 105 }],
    [rateCPerMin, rateLimit]
  ])
  return problems.length > 0 ? refuse(...problems) : Math.abs(toC - fromC) / rateCPerMin
}

/** Power in kW that the bath must take up to rise at a rate, what the pot gives off meanwhile not counted:
 * kW = (4.186 · L + 1.4 · kg wool + pot) · rate / 60. Liquor 0.001 to 1000 L, goods 0 to 100 kg, the pot 0 to 100 kJ/K
 * (steel: 0.5 for each kg), rate above 0 and up to 20 °C/min. Refuses what lies outside, is missing or is no number.
 * Source: heat capacities as above. */
export function rampPowerKW(given: {
  liquorL: number
  goodsKg: number
  potKJPerK: number
  rateCPerMin: number
}): Answer<number> {
  const problems = allOutside([...heatChecks(given), [given.rateCPerMin, rateLimit]])
  if (problems.length > 0) return refuse(...problems)
  return (heatKJPerK(given) * given.rateCPerMin) / 60
}

/** The rate in °C/min that a net power in kW gives, the other way round. Power 0 to 100 kW, the rest as of rampPowerKW. */
export function rampRate(given: {
  liquorL: number
  goodsKg: number
  potKJPerK: number
  powerKW: number
}): Answer<number> {
  const power: Limit = { field: 'powerKW', name: 'the power', unit: 'kW', least: 0, most: 100 }
  const problems = allOutside([...heatChecks(given), [given.powerKW, power]])
  return problems.length > 0 ? refuse(...problems) : (given.powerKW * 60) / heatKJPerK(given)
}

type Heated = { liquorL: number; goodsKg: number; potKJPerK: number }

function heatChecks({ liquorL, goodsKg, potKJPerK }: Heated): [unknown, Limit][] {
  return [
    [liquorL, { field: 'liquorL', name: 'the liquor', unit: 'L', least: 0.001, most: 1000 }],
    [goodsKg, { field: 'goodsKg', name: 'the goods', unit: 'kg', least: 0, most: 100 }],
    [potKJPerK, { field: 'potKJPerK', name: 'the heat of the pot', unit: 'kJ/K', least: 0, most: 100 }]
  ]
}

function heatKJPerK({ liquorL, goodsKg, potKJPerK }: Heated): number {
  return WATER_KJ_PER_K_L * liquorL + WOOL_KJ_PER_K_KG * goodsKg + potKJPerK
}
