// The water to pour so that all that goes into the pot stands at the liquor ratio, and not the water alone.
import { metricUnits, showVolume } from '../../quantity/index.ts'
import type { InputProblem, Programme, ProgrammeInputs } from '../model.ts'
import { liquorOf } from '../numbers/liquor.ts'
import { poursOf } from '../numbers/pours.ts'
import { roundDose } from './amounts.ts'

/** Changes the pot's first fill, in the step and on the bench; for a programme that nobody has seen yet. */
export function countAll(programme: Programme, inputs: ProgrammeInputs, problems: InputProblem[]): void {
  const liquor = liquorOf(programme, inputs)
  const fill = poursOf(programme)
    .find(({ vessel }) => vessel === null)
    ?.pours.find(({ item }) => item.fills)
  if (!liquor || !fill) return
  if (liquor.pourML === null) {
    const what = 'Stock, acid and the water in the goods come to more than the whole liquor.'
    problems.push({ code: 'does-not-fit', field: 'carries', what, instead: 'Take stronger stocks, or more liquor.' })
    return
  }
  const value = roundDose(liquor.pourML, 'mL')
  const rest = showVolume(liquor.wholeML - liquor.waterML, metricUnits)
  fill.item.amount = { ...fill.item.amount, value }
  fill.item.sum = `${fill.item.sum}; less ${rest} that else goes in = ${showVolume(value, metricUnits)}`
  if (fill.step.dose) fill.step.dose = { ...fill.step.dose, amount: fill.item.amount }
}
