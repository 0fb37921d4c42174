// Every dose of a programme as a portion to set out: its amount, its cup, and the step it belongs to.
import { liquorML, partOfWhole } from '../../chemistry/amounts/formulas.ts'
import type { DoseDraft } from '../draft.ts'
import type { Amount, DoseFrom, InputProblem, SetOut, Step } from '../model.ts'
import { water } from '../reading.ts'
import { capital } from '../words.ts'
import { type Basis, partOf, potLiquorML, roundDose, type Worked, wholeOf, workOut } from './amounts.ts'
import type { Setting, Stuff } from './setting.ts'

export type Portion = {
  step: Step
  dose: DoseDraft
  /** The jar or skein with goods of its own, null: the pot. */
  vessel: string | null
  massG: number
  /** Inside an until, an answer or an otherwise: it may not be needed. */
  ifWanted: boolean
  /** The writer's own words stand. */
  ownCall: boolean
  ownKnot: boolean
}

type Liquors = { pot: Basis; of: (portion: Portion) => Basis }

/** Works out all portions, writes the doses into their steps and gives the list to set out. */
export function setOutOf(
  portions: Portion[],
  setting: Setting,
  ratio: number | null,
  problems: InputProblem[]
): SetOut[] {
  const liquors = liquorsOf(portions, setting, ratio)
  const byMaterial = new Map<string, Portion[]>()
  for (const portion of portions) {
    const { id } = portion.dose.material
    byMaterial.set(id, [...(byMaterial.get(id) ?? []), portion])
  }
  const list: SetOut[] = []
  for (const [id, same] of byMaterial) {
    const stuff = setting.stuff.get(id) ?? plainWater
    list.push(...materialSetOut(same, stuff, setting, liquors, problems))
  }
  return list
}

const plainWater: Stuff = { ...water, name: 'water', gPerML: 1, strengthShown: null, onShelf: false }

/** Liquor of the pot, and of each vessel with goods of its own. */
export function liquorsOf(portions: Portion[], setting: Setting, ratio: number | null): Liquors {
  const { liquorMostML: most } = setting
  const filled = new Map<string | null, number>()
  for (const { dose, vessel, massG } of portions) {
    if (!dose.fills || (vessel === null && dose.into !== null)) continue
    const value =
      dose.amount.kind === 'liquor'
        ? potLiquorML(dose.amount.ratio, massG, vessel === null ? most : null)
        : dose.amount.kind === 'volume'
          ? dose.amount.value
          : 0
    if (!filled.has(vessel)) filled.set(vessel, value)
  }
  const vessels = [...filled].filter(([vessel]) => vessel !== null)
  const inVessels = vessels.length > 0 ? vessels.reduce((sum, [, value]) => sum + value, 0) : null
  const byRatio = ratio === null ? null : potLiquorML(ratio, setting.goodsMassG, most)
  const pot: Basis = { massG: setting.goodsMassG, liquorML: filled.get(null) ?? inVessels ?? byRatio }
  return {
    pot,
    of: ({ vessel, massG }) => {
      if (vessel === null) return pot
      return { massG, liquorML: filled.get(vessel) ?? (ratio === null ? null : liquorML(ratio, massG)) }
    }
  }
}

function materialSetOut(
  portions: Portion[],
  stuff: Stuff,
  setting: Setting,
  liquors: Liquors,
  problems: InputProblem[]
): SetOut[] {
  const worked: { portion: Portion; worked: Worked }[] = []
  for (const portion of portions) {
    const out = workOut(portion.dose.amount, stuff, liquors.of(portion), setting, liquors.pot)
    if (out.ok) worked.push({ portion, worked: out.worked })
    else if (!problems.some((p) => p.code === out.code && p.field === `materials.${stuff.id}`)) {
      problems.push({ code: out.code, field: `materials.${stuff.id}`, what: out.what, instead: out.instead })
    }
  }
  fillRests(worked, stuff, setting, liquors, problems)
  const rounded = roundTogether(worked)
  const counted = worked.filter(({ portion }) => isCounted(portion)).length
  let no = 0
  const list = worked.map(({ portion, worked: one }, i): SetOut => {
    if (isCounted(portion)) no++
    const cup = labelOf(portion, stuff, no, counted)
    const value = rounded[i] ?? one.value
    const amount: Amount = { value, unit: one.unit, of: stuff.name, asEntered: portion.dose.amount.asEntered }
    const id = portions.length > 1 ? `${stuff.id}-${i + 1}` : stuff.id
    portion.step.dose = { amount, cup, setOutId: id, ...fromShelf(stuff, setting) }
    nameStep(portion, stuff, no, counted)
    return {
      id,
      label: cup,
      amount,
      sum: one.sum,
      kind: stuff.kind,
      percent: stuff.percent,
      paths: [portion.step.path],
      material: stuff.id,
      ...placeOf(portion)
    }
  })
  return [...list, ...partsOfMix(list, worked, stuff, setting)]
}

function placeOf({ vessel, ifWanted, dose }: Portion): Pick<SetOut, 'vessel' | 'ifWanted' | 'fills'> {
  const place = vessel ?? dose.into
  return {
    ...(place !== null && { vessel: place }),
    ...(ifWanted && { ifWanted: true as const }),
    ...(dose.fills && { fills: true as const })
  }
}

type Pair = { portion: Portion; worked: Worked }

/** The rest is the whole less every other share. */
function fillRests(pairs: Pair[], stuff: Stuff, setting: Setting, liquors: Liquors, problems: InputProblem[]): void {
  const shares = pairs.reduce(
    (sum, { portion: { dose } }) => sum + (dose.amount.kind === 'share' ? dose.amount.share : 0),
    0
  )
  const rests = pairs.filter(({ portion }) => portion.dose.amount.kind === 'rest')
  if (shares > 1 + 1e-6 || (rests.length > 0 && shares > 1 - 1e-6)) {
    const what = `The shares of ${stuff.label} come to ${Math.round(shares * 100)} %.`
    problems.push({
      code: 'shares-over-whole',
      field: `materials.${stuff.id}`,
      what,
      instead: 'Make them come to the whole.'
    })
    return
  }
  const whole = rests.length > 0 ? wholeOf(stuff, setting, liquors.pot) : null
  if (!whole?.ok) return
  for (const pair of rests) {
    const [value, unit, sum] = partOf(whole.worked, 1 - shares)
    pair.worked = { value, unit, sum }
  }
}

/** Each cup is rounded with what the cups before it are short of or over, so that together they come to the whole. */
function roundTogether(pairs: Pair[]): number[] {
  let carried = 0
  return pairs.map(({ portion: { dose }, worked: { value, unit } }) => {
    if (dose.amount.kind !== 'share' && dose.amount.kind !== 'rest') return roundDose(value, unit)
    const cup = Math.max(0, roundDose(value + carried, unit))
    carried += value - cup
    return cup
  })
}

function labelOf({ vessel, ifWanted, dose }: Portion, stuff: Stuff, no: number, of: number): string {
  const place = vessel ?? dose.into
  const name = place === null ? stuff.label : `${stuff.label}, ${place}`
  const counted = place === null && of > 1 ? `${name} ${no} of ${of}` : name
  return ifWanted ? `${counted}, if wanted` : counted
}

/** Cups for the pot are numbered; those for a vessel are named after it. */
function isCounted({ vessel, dose }: Portion): boolean {
  return vessel === null && dose.into === null
}

function nameStep(portion: Portion, stuff: Stuff, no: number, of: number): void {
  if (portion.dose.fills || !isCounted(portion) || of < 2) return
  const name = `${capital(stuff.label)} ${no}`
  if (!portion.ownCall) portion.step.call = `${name} in`
  if (!portion.ownKnot) portion.step.knot = name
}

/** What bottles a dose comes out of, where one of them stands on the shelf. A mix is drawn from what it is mixed from. */
function fromShelf({ id, parts, gPerML }: Stuff, { stuff }: Setting): { from?: DoseFrom[] } {
  const all = parts?.reduce((sum, one) => sum + one.parts, 0) ?? 0
  const from: DoseFrom[] =
    parts && gPerML !== null
      ? parts.map((one) => {
          const each = partOfWhole(gPerML, one.parts, all) / (stuff.get(one.id)?.gPerML ?? 1)
          return { material: one.id, each }
        })
      : [{ material: id, each: 1 }]
  return from.some(({ material }) => stuff.get(material)?.onShelf) ? { from } : {}
}

/** A mixed stock is mixed from its parts first. */
function partsOfMix(list: SetOut[], pairs: Pair[], stuff: Stuff, setting: Setting): SetOut[] {
  if (!stuff.parts || stuff.gPerML === null) return []
  const total = pairs.reduce((sum, { portion, worked }) => sum + (portion.ifWanted ? 0 : worked.value), 0)
  const dyeG = total * stuff.gPerML
  const all = stuff.parts.reduce((sum, { parts }) => sum + parts, 0)
  return stuff.parts.map(({ id, parts }): SetOut => {
    const part = setting.stuff.get(id) ?? plainWater
    const value = partOfWhole(dyeG, parts, all) / (part.gPerML ?? 1)
    const sum = `${parts} of ${all} parts of the dye in ${roundDose(total, 'mL')} mL of ${stuff.label} = ${roundDose(value, 'mL')} mL`
    const amount: Amount = { value: roundDose(value, 'mL'), unit: 'mL', of: part.name, asEntered: `${parts} parts` }
    const label = `${part.label} for ${stuff.label}`
    const paths = list.flatMap((one) => one.paths)
    return {
      id: `${stuff.id}-of-${id}`,
      label,
      amount,
      sum,
      kind: part.kind,
      percent: part.percent,
      paths,
      material: id
    }
  })
}
