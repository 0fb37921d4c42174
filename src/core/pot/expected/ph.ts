// What pH the doses so far would make of tap water: to stand beside a measured one, never in its place.
import { isRefused } from '../../chemistry/answer.ts'
import { bathPh } from '../../chemistry/bath/bath-ph.ts'
import type { Air, Bath } from '../../chemistry/bath/inputs.ts'
import type { Programme, SetOut } from '../../protocol/model.ts'
import type { PotIdentity } from '../events.ts'
import type { Dose } from '../state.ts'

export type PhEstimate = { low: number; high: number }

/** What is known of a bath's making. `toppedUpML`: water that came later. */
export type Made = { pot: PotIdentity; programme: Programme; doses: readonly Dose[]; toppedUpML: number }

/** Nobody asked how hard the water is: from rain to very hard, mg/L as CaCO3. Common practice, no source. */
const SOFT = 0
const HARD = 300
/** A strip is dipped into a cooled spoonful. */
const SPOON_C = 25
/** Wider than that an estimate tells nothing. Common practice, no source. */
const WIDEST_PH = 3

type Acid = 'acetic' | 'citric'

/** From the acid end of the softest water to the alkaline end of the hardest, boiled or not; without goods, which take up
 * acid and raise it. Null: the bath was used before, something is in it that is neither water, dye nor a named acid, the
 * acid's strength is not known, or nothing is known of the water. */
export function phOfDoses({ pot, programme, doses, toppedUpML }: Made): PhEstimate | null {
  if (pot.bath.parentBatchId !== null || pot.bath.unknownDyeLeft) return null
  const bath = { waterML: toppedUpML, vinegarML: 0, vinegarG: 0, citricG: 0 }
  for (const dose of doses) if (!takeIn(bath, dose, programme)) return null
  if (!doses.some((dose) => kindOf(dose, programme)?.kind === 'water')) bath.waterML += programme.liquorML ?? 0
  if (bath.waterML <= 0 || bath.vinegarG + bath.citricG <= 0) return null
  const low = endOf(bath, SOFT, 'closed')
  const high = endOf(bath, HARD, 'open') ?? endOf(bath, HARD, 'closed')
  if (low === null || high === null || high.highPh - low.lowPh > WIDEST_PH) return null
  return { low: tenth(low.lowPh), high: tenth(Math.max(high.highPh, low.highPh)) }
}

type Filling = { waterML: number; vinegarML: number; vinegarG: number; citricG: number }

/** False: nobody knows what it does to the pH. */
function takeIn(bath: Filling, dose: Dose, programme: Programme): boolean {
  const { value, unit, of } = dose.added
  const known = kindOf(dose, programme)
  if (value === 0) return true
  if (known?.kind === 'water' || known?.kind === 'stock') {
    // Dye powder hardly matters to the pH; its stock is water.
    if (unit === 'mL') bath.waterML += value
    return unit === 'mL'
  }
  const acid = known?.kind === 'acid' ? acidIn(known.material, of, programme) : null
  const grams = unit === 'g' ? value : known?.percent != null ? (value * known.percent) / 100 : null
  if (acid === null || grams === null) return false
  if (acid === 'citric') bath.citricG += grams
  else bath.vinegarG += grams
  if (acid === 'citric' && unit === 'mL') bath.waterML += value
  if (acid === 'acetic') bath.vinegarML += unit === 'mL' ? value : grams
  return true
}

function kindOf({ added }: Dose, { setOut }: Programme): Pick<SetOut, 'kind' | 'percent' | 'material'> | null {
  const known = setOut.find(({ amount }) => amount.of === added.of)
  if (known) return known
  return /^water$/i.test(added.of.trim()) ? { kind: 'water', percent: null } : null
}

/** As it was said at the start, on the form or by the bottle on the shelf; else by its name. */
function acidIn(material: string | undefined, name: string, { given }: Programme): Acid | null {
  const told = material === undefined ? undefined : given?.materials[material]?.acid
  if (told !== undefined) return told === 'other' ? null : told
  if (/citric/i.test(name)) return 'citric'
  return /vinegar|acetic/i.test(name) ? 'acetic' : null
}

function endOf({ waterML, vinegarML, vinegarG, citricG }: Filling, alkalinity: number, air: Air) {
  const bath: Bath = {
    waterML,
    vinegarML,
    vinegarPercentWV: vinegarML > 0 ? Math.min(100, (vinegarG * 100) / vinegarML) : 5,
    citricG,
    citricForm: 'monohydrate',
    alkalinityMgPerLCaCO3: alkalinity,
    tempC: SPOON_C,
    air
  }
  const found = bathPh(bath)
  return isRefused(found) ? null : found
}

function tenth(ph: number): number {
  return Math.round(ph * 10) / 10
}
