// The pH that a bath is estimated to have after each portion of acid. To plan by: the record wants it measured.
import { isRefused } from '../../chemistry/answer.ts'
import { bathPh } from '../../chemistry/bath/bath-ph.ts'
import type { Programme, ProgrammeInputs } from '../model.ts'
import { acidOf } from './acid-of.ts'
import { carriedPerG } from './carried.ts'
import { type Pour, poursOf, type Vessel } from './pours.ts'

/** Tap waters from soft to very hard, where nobody measured. From memory, no source. */
export const presumedAlkalinity = { low: 20, high: 300 } as const
/** A spoonful that has cooled to the room, as strips are read. */
export const spoonC = 25

export type PhRange = { lowPh: number; highPh: number; tempC: number }

/** After one portion: on the cooled spoon, and in the bath at its hottest. `alkalinityLeft`: at the upper end the acid
 * does not use up the water's alkalinity. */
export type PhAfter = {
  after: string
  path: string
  vessel: string | null
  spoon: PhRange
  bath: PhRange | null
  alkalinityLeft: boolean
}

/** Why there is no estimate, from one portion on or at all. */
export type PhNot =
  | { code: 'no-acid'; field: null; of: null }
  | { code: 'used-bath'; field: string; of: null }
  | { code: 'which-acid' | 'other-acid' | 'strength' | 'effect'; field: string | null; of: string }
  | { code: 'no-water' | 'outside'; field: null; of: string }

export type PhEstimate = {
  alkalinity: { low: number; high: number; presumed: boolean }
  after: PhAfter[]
  not: PhNot[]
}

export function phOf(programme: Programme, inputs: ProgrammeInputs, usedBath: boolean): PhEstimate {
  const given = inputs.alkalinityMgPerL ?? null
  const alkalinity =
    given === null ? { ...presumedAlkalinity, presumed: true } : { low: given, high: given, presumed: false }
  const estimate: PhEstimate = { alkalinity, after: [], not: [] }
  if (usedBath) {
    estimate.not.push({ code: 'used-bath', field: 'bathOf', of: null })
    return estimate
  }
  const vessels = poursOf(programme).filter(({ pours }) => pours.some((pour) => isAcid(pour, inputs)))
  if (vessels.length === 0) estimate.not.push({ code: 'no-acid', field: null, of: null })
  for (const vessel of vessels) inVessel(vessel, programme, inputs, estimate)
  return estimate
}

type Contents = { waterML: number; vinegarML: number; aceticG: number; citricG: number }

function inVessel(vessel: Vessel, programme: Programme, inputs: ProgrammeInputs, estimate: PhEstimate): void {
  const fills = vessel.pours.filter(({ item }) => item.fills)
  const carriedML = vessel.vessel === null ? programme.goodsMassG * carriedPerG[inputs.carries ?? 'dry'] : 0
  const contents: Contents = {
    waterML: fills.reduce((sum, { item }) => sum + item.amount.value, carriedML),
    vinegarML: 0,
    aceticG: 0,
    citricG: 0
  }
  if (fills.length === 0) {
    estimate.not.push({ code: 'no-water', field: null, of: vessel.vessel ?? 'the pot' })
    return
  }
  for (const pour of vessel.pours) {
    if (pour.item.fills) continue
    const not = poured(pour, inputs, contents)
    if (not) {
      if (!estimate.not.some(({ code, of }) => code === not.code && of === not.of)) estimate.not.push(not)
      return
    }
    if (!isAcid(pour, inputs)) continue
    const after = afterPortion(pour, vessel, contents, estimate.alkalinity)
    if (after === null) {
      estimate.not.push({ code: 'outside', field: null, of: pour.item.label })
      return
    }
    estimate.after.push(after)
  }
}

/** Acids, and citric acid that is weighed as a powder. */
function isAcid({ item }: Pour, inputs: ProgrammeInputs): boolean {
  return item.kind === 'acid' || kindOf(item, inputs) === 'citric'
}

function kindOf(item: Pour['item'], { materials }: ProgrammeInputs): ReturnType<typeof acidOf> {
  const id = item.material ?? item.id
  const bottle = Object.hasOwn(materials, id) ? materials[id] : undefined
  return bottle?.acid ?? acidOf(item.amount.of, item.label, id)
}

/** Adds a portion to the bath; or says why what it does to the pH is not known. */
function poured({ item }: Pour, inputs: ProgrammeInputs, contents: Contents): PhNot | null {
  const { amount, kind, percent } = item
  const field = `materials.${item.material ?? item.id}`
  if (kind === 'water' || kind === 'stock') {
    contents.waterML += amount.unit === 'mL' ? amount.value : 0
    return null
  }
  const acid = kindOf(item, inputs)
  if (kind !== 'acid' && acid !== 'citric') return { code: 'effect', field: null, of: amount.of }
  if (acid === null) return { code: 'which-acid', field: `${field}.acid`, of: amount.of }
  if (acid === 'other') return { code: 'other-acid', field: `${field}.acid`, of: amount.of }
  if (amount.unit === 'g') {
    if (acid === 'acetic') return { code: 'strength', field: `${field}.percent`, of: amount.of }
    contents.citricG += amount.value
    return null
  }
  if (percent === null || amount.unit !== 'mL') return { code: 'strength', field: `${field}.percent`, of: amount.of }
  const grams = (amount.value * percent) / 100
  if (acid === 'citric') {
    contents.citricG += grams
    contents.waterML += amount.value
  } else {
    contents.aceticG += grams
    contents.vinegarML += amount.value
  }
  return null
}

function afterPortion(
  { item, step }: Pour,
  { vessel, hottestC }: Vessel,
  contents: Contents,
  alkalinity: PhEstimate['alkalinity']
): PhAfter | null {
  const spoon = rangeAt(spoonC, contents, alkalinity)
  if (spoon === null) return null
  const bath = hottestC === null || hottestC <= spoonC ? null : rangeAt(Math.min(hottestC, 100), contents, alkalinity)
  return {
    after: item.label,
    path: step.path,
    vessel,
    spoon: spoon.range,
    bath: bath?.range ?? null,
    alkalinityLeft: spoon.left
  }
}

/** From the soft water's closed bath to the hard water's open one: a real pot has lost some of its carbon dioxide. */
function rangeAt(
  tempC: number,
  { waterML, vinegarML, aceticG, citricG }: Contents,
  { low, high }: PhEstimate['alkalinity']
): { range: PhRange; left: boolean } | null {
  const bath = {
    waterML,
    vinegarML,
    vinegarPercentWV: vinegarML > 0 ? (aceticG / vinegarML) * 100 : 5,
    citricG,
    tempC
  }
  // Packets rarely say which citric acid they hold: the stronger at the low end, the weaker at the high one.
  const hard = { ...bath, citricForm: 'monohydrate' as const, alkalinityMgPerLCaCO3: high }
  const soft = bathPh({ ...bath, citricForm: 'anhydrous', alkalinityMgPerLCaCO3: low, air: 'closed' })
  const closed = bathPh({ ...hard, air: 'closed' })
  const open = bathPh({ ...hard, air: 'open' })
  if (isRefused(soft) || isRefused(closed)) return null
  const left = isRefused(open)
  const highPh = left ? closed.highPh : Math.max(open.highPh, closed.highPh)
  return { range: { lowPh: soft.lowPh, highPh, tempC }, left }
}
