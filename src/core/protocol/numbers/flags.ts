// Everything about a pot's numbers that wants a look, the gravest first.
import { scaleRecipe } from '../../chemistry/amounts/scaling.ts'
import { isRefused } from '../../chemistry/answer.ts'
import type { Programme, ProgrammeInputs } from '../model.ts'
import { stepsOf } from '../tree.ts'
import { carriedPerG } from './carried.ts'
import type { Flag } from './flag.ts'
import type { Liquor } from './liquor.ts'
import type { PhEstimate } from './ph.ts'
import { smallDoses } from './small-doses.ts'

/** How full a pot may be: the caution at every heating step (fire services' advice, with room for the boil). */
export const fullMost = 2 / 3
/** From here on a step is near enough to the boil for the place to matter. */
const nearBoilC = 95
const presumedBoilC = 100
/** A ratio that is off by more is told. Common practice, no source. */
const ratioOffMost = 0.05

/** The pot this one is the same again as, with other goods. `name` as it is called. */
export type Earlier = { name: string; goodsG: number; liquorML: number | null }

export function flagsOf(
  programme: Programme,
  inputs: ProgrammeInputs,
  liquor: Liquor | null,
  ph: PhEstimate,
  wantedRatio: number | null,
  earlier: Earlier | null
): Flag[] {
  return [
    ...potFlags(programme, inputs, liquor, wantedRatio),
    ...overBoil(programme, inputs),
    ...phFlags(programme, ph),
    ...smallDoses(programme),
    ...liquorFlags(inputs, liquor),
    ...scaled(programme, earlier)
  ]
}

function potFlags(
  { goodsMassG, liquorML }: Programme,
  { potML, liquorMostML }: ProgrammeInputs,
  liquor: Liquor | null,
  wantedRatio: number | null
): Flag[] {
  if (liquor === null) return []
  const flags: Flag[] = []
  const kept = liquorMostML ?? null
  if (potML && potML > 0 && liquor.wholeML > potML * fullMost * (1 + 1e-9)) {
    // What is poured beside the water and what the goods carry have to fit in too.
    const keptML = Math.floor(potML * fullMost - (liquor.wholeML - liquor.waterML))
    const share = liquor.wholeML / goodsMassG
    flags.push({
      code: 'pot-full',
      field: 'potML',
      wholeML: liquor.wholeML,
      potML,
      keptML: Math.max(0, keptML),
      keptRatio: Math.max(0, keptML) / goodsMassG,
      goodsFitG: Math.floor((potML * fullMost) / share),
      over: liquor.wholeML > potML
    })
  }
  if (kept !== null && wantedRatio !== null && liquorML !== null) {
    const by = scaleRecipe({
      fromGoodsG: goodsMassG,
      toGoodsG: goodsMassG,
      fromLiquorML: wantedRatio * goodsMassG,
      portions: [],
      potHoldsML: kept
    })
    if (!isRefused(by) && by.ratioChanged) {
      flags.push({ code: 'ratio-changed', field: 'potML', from: wantedRatio, to: by.ratio, why: 'pot', than: null })
    }
  }
  return flags
}

function overBoil(programme: Programme, { boilC }: ProgrammeInputs): Flag[] {
  const flags: Flag[] = stepsOf(programme).flatMap((step): Flag[] => {
    const { overBoil: over, path, knot } = step
    // Of a ramp and its hold the hold says more: how much longer.
    if (!over || (step.ramp && heldAfter(programme, path))) return []
    return [{ code: 'over-boil', field: 'boilC', path, label: knot, ...over }]
  })
  if (boilC !== null) return flags
  const askedC = Math.max(0, ...stepsOf(programme).map((step) => step.ramp?.lowC ?? step.setPoint?.lowC ?? 0))
  if (askedC < nearBoilC) return flags
  return [...flags, { code: 'boil-presumed', field: 'boilC', askedC, presumedC: presumedBoilC }]
}

function heldAfter(programme: Programme, path: string): boolean {
  const steps = stepsOf(programme)
  const from = steps.findIndex((step) => step.path === path)
  const next = steps.slice(from + 1).find((step) => step.ramp || step.heat === 'off' || step.overBoil?.longer)
  return Boolean(next?.overBoil?.longer)
}

function phFlags(programme: Programme, { after, alkalinity }: PhEstimate): Flag[] {
  const flags: Flag[] = []
  // Of portions that follow each other the last one counts.
  const lastOf = new Map(after.map((one) => [one.vessel, one]))
  for (const { alkalinityLeft, after: label } of lastOf.values()) {
    if (!alkalinityLeft || alkalinity.presumed) continue
    flags.push({ code: 'alkalinity-left', field: 'alkalinity', after: label, alkalinityMgPerL: alkalinity.high })
    break
  }
  const steps = stepsOf(programme)
  const place = new Map(steps.map((step, i) => [step.path, i]))
  for (const [i, { question }] of steps.entries()) {
    if (question?.kind !== 'ph' || (question.low === null && question.high === null)) continue
    const before = after.filter((one) => one.vessel === null && (place.get(one.path) ?? Infinity) < i).at(-1)
    if (!before) continue
    const { lowPh, highPh } = before.spoon
    if ((question.high !== null && lowPh > question.high) || (question.low !== null && highPh < question.low)) {
      const [wantLow, wantHigh] = [question.low, question.high]
      flags.push({ code: 'ph-outside', field: 'alkalinity', wantLow, wantHigh, lowPh, highPh })
    }
  }
  return flags
}

function liquorFlags({ carries = 'dry' }: ProgrammeInputs, liquor: Liquor | null): Flag[] {
  if (liquor === null) return []
  const { ratio, trueRatio, carriedML, pourML } = liquor
  const flags: Flag[] = []
  const takesUp = carriedPerG.dripping
  // Dry goods take up from the bath what dripping ones bring along.
  const free = carries === 'dry' ? trueRatio - takesUp : trueRatio - carriedPerG[carries]
  if (free <= 0) flags.push({ code: 'not-covered', field: 'skeins.0.mass', trueRatio, takesUp })
  if (Math.abs(trueRatio / ratio - 1) > ratioOffMost) {
    flags.push({ code: 'ratio-counted', field: 'carries', ratio, trueRatio, carriedML, pourML })
  }
  return flags
}

function scaled({ goodsMassG, liquorML }: Programme, earlier: Earlier | null): Flag[] {
  if (earlier === null || earlier.liquorML === null || liquorML === null) return []
  const from = earlier.liquorML / earlier.goodsG
  const to = liquorML / goodsMassG
  if (Math.abs(to / from - 1) <= ratioOffMost) return []
  return [{ code: 'ratio-changed', field: 'skeins.0.mass', from, to, why: 'scaled', than: earlier.name }]
}
