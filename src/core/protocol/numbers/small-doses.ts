// Doses that a syringe measures badly, each with a weaker stock that mends it.

import { dilute } from '../../chemistry/amounts/dilution.ts'
import { usualSyringe } from '../../chemistry/amounts/series.ts'
import { isRefused } from '../../chemistry/answer.ts'
import type { Programme, SetOut } from '../model.ts'
import type { Flag, WeakerStock } from './flag.ts'

const tenfold = [10, 100, 1000] as const
/** Volumes a dilution is made up to: jars and measuring flasks of a kitchen. Common practice, no source. */
const flasksML = [50, 100, 250, 500, 1000] as const

type SmallDose = Extract<Flag, { code: 'small-dose' }>

export function smallDoses({ setOut }: Programme): SmallDose[] {
  return setOut.flatMap((item) => {
    const { amount, kind } = item
    if ((kind !== 'stock' && kind !== 'acid') || amount.unit !== 'mL' || !(amount.value > 0)) return []
    const errorPercent = (usualSyringe.doubtML / amount.value) * 100
    if (errorPercent <= usualSyringe.errorMostPercent) return []
    return [
      {
        code: 'small-dose' as const,
        field: `materials.${item.material ?? item.id}.percent`,
        setOutId: item.id,
        label: item.label,
        of: amount.of,
        doseML: amount.value,
        errorPercent,
        percent: item.percent,
        way: weakerStock(item)
      }
    ]
  })
}

/** The strongest dilution by tens from which the dose can be measured, made up to a flask that holds it twice. */
function weakerStock({ amount, percent }: SetOut): WeakerStock | null {
  if (percent === null) return null
  for (const times of tenfold) {
    const doseML = amount.value * times
    const errorPercent = (usualSyringe.doubtML / doseML) * 100
    const makeUpToML = flasksML.find((mL) => mL >= doseML * 2)
    if (errorPercent > usualSyringe.errorMostPercent || makeUpToML === undefined) continue
    const made = dilute({ fromPercentWV: percent, toPercentWV: percent / times, toML: makeUpToML })
    if (!isRefused(made)) return { percent: percent / times, ...made, doseML, errorPercent }
  }
  return null
}
