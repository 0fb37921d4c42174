// Moisture of goods. Regain is on the dry weight, content on the wet: content = R / (100 + R) · 100 (ASTM D2118, ISO 2060:
// definitions, from memory).
import { type Answer, refuse } from '../answer.ts'
import { allOutside, type Limit } from '../limits.ts'
import { goodsLimit } from './limits.ts'

const regainLimit: Limit = { field: 'regainPercent', name: 'the regain', unit: '%', least: 0, most: 100 }
const massLimitG: Limit = { ...goodsLimit, field: 'massG', name: 'the weight' }

/** Dry weight of goods weighed at a regain: dry = m / (1 + R/100). 0.05 g to 100 kg, regain 0 to 100 %. */
export function dryG(given: { massG: number; regainPercent: number }): Answer<number> {
  const problems = allOutside([
    [given.massG, massLimitG],
    [given.regainPercent, regainLimit]
  ])
  return problems.length > 0 ? refuse(...problems) : given.massG / (1 + given.regainPercent / 100)
}

/** Weight of dry goods at a regain: m = dry (1 + R/100). The regain that trade agrees on differs by form and authority:
 * wool 16 to 18.25 % (from memory). Ranges as of dryG. */
export function conditionedG(given: { goodsG: number; regainPercent: number }): Answer<number> {
  const problems = allOutside([
    [given.goodsG, goodsLimit],
    [given.regainPercent, regainLimit]
  ])
  return problems.length > 0 ? refuse(...problems) : given.goodsG * (1 + given.regainPercent / 100)
}

/** Regain in % of goods weighed moist and dry: R = (m - dry) / dry · 100. Refuses a moist weight under the dry one. */
export function regainPercent(given: { massG: number; goodsG: number }): Answer<number> {
  const { massG, goodsG } = given
  const problems = allOutside([
    [massG, massLimitG],
    [goodsG, goodsLimit]
  ])
  if (problems.length > 0) return refuse(...problems)
  const least = allOutside([[massG, { ...massLimitG, name: 'the weight of moist goods', least: goodsG }]])
  return least.length > 0 ? refuse(...least) : ((massG - goodsG) / goodsG) * 100
}

/** Moisture content in % of a regain in %, 0 to 100. */
export function contentOfRegain(regain: number): Answer<number> {
  const problems = allOutside([[regain, regainLimit]])
  return problems.length > 0 ? refuse(...problems) : (regain / (100 + regain)) * 100
}

/** Regain in % of a moisture content in %, 0 to 50. */
export function regainOfContent(content: number): Answer<number> {
  const limit: Limit = { field: 'contentPercent', name: 'the moisture content', unit: '%', least: 0, most: 50 }
  const problems = allOutside([[content, limit]])
  return problems.length > 0 ? refuse(...problems) : (content / (100 - content)) * 100
}
