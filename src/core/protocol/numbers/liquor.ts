// How much liquor there is in the pot once all is in, against its goods, its ratio and its size.

import { waterFor } from '../../chemistry/amounts/liquor.ts'
import { isRefused } from '../../chemistry/answer.ts'
import type { Programme, ProgrammeInputs } from '../model.ts'
import { carriedPerG } from './carried.ts'
import { poursOf } from './pours.ts'

/** All in mL. `ratio`: the liquor that the protocol counts on for each g; `trueRatio`: all that is then in the pot.
 * `pourML`: the water to pour so that all of it comes to that ratio; null: what else goes in is more than that. */
export type Liquor = {
  ratio: number
  waterML: number
  stockML: number
  acidML: number
  otherML: number
  carriedML: number
  wholeML: number
  trueRatio: number
  pourML: number | null
}

/** Null: the programme fills no pot. */
export function liquorOf(programme: Programme, inputs: ProgrammeInputs): Liquor | null {
  const pot = poursOf(programme).find((vessel) => vessel.vessel === null)
  const { goodsMassG, liquorRatio } = programme
  if (!pot || liquorRatio === null || !pot.pours.some(({ item }) => item.fills)) return null
  const sum = (kinds: readonly string[]): number =>
    pot.pours.reduce(
      (mL, { item }) => mL + (kinds.includes(item.kind) && item.amount.unit === 'mL' ? item.amount.value : 0),
      0
    )
  const [waterML, stockML, acidML, otherML] = [sum(['water']), sum(['stock']), sum(['acid']), sum(['other'])]
  const carriedML = goodsMassG * carriedPerG[inputs.carries ?? 'dry']
  const wholeML = waterML + stockML + acidML + otherML + carriedML
  const poured = waterFor({
    goodsG: goodsMassG,
    ratio: liquorRatio,
    stockML: stockML + otherML,
    acidML,
    carriedML,
    countCarried: true
  })
  return {
    ratio: liquorRatio,
    waterML,
    stockML,
    acidML,
    otherML,
    carriedML,
    wholeML,
    trueRatio: wholeML / goodsMassG,
    pourML: isRefused(poured) ? null : poured.waterML
  }
}
