import type { Programme, SetOut, Step } from '../protocol/model.ts'
import { stepsOf } from '../protocol/tree.ts'
import type { Caution } from './caution.ts'
import { cautionsFor, ownCaution } from './cautions-for.ts'
import type { CautionContext } from './hazard.ts'
import { general } from './rules.ts'

/** All cautions a programme will meet, each once, in the order they are met; first those of the whole session. */
export function cautionsBeforeStart(programme: Programme): Caution[] {
  const met = new Map<string, Caution>()
  const meet = (caution: Caution): void => {
    if (!met.has(caution.id)) met.set(caution.id, caution)
  }
  general.forEach(meet)
  programme.cautions.map(ownCaution).forEach(meet)
  for (const { step, context } of expected(programme)) cautionsFor(step, context).forEach(meet)
  return [...met.values()]
}

/** The cautions of each step as the programme expects it to be found: for reading a protocol before it is run. */
export function expectedCautions(programme: Programme): { path: string; cautions: Caution[] }[] {
  return expected(programme).map(({ step, context }) => ({ path: step.path, cautions: cautionsFor(step, context) }))
}

/** What is added at a step, as set out on the bench. */
export function setOutOf(programme: Programme, step: Step): SetOut | null {
  return programme.setOut.find((s) => s.id === step.dose?.setOutId) ?? null
}

/** Each step with the bath as it should be by then: the set-points stand in for readings. */
function expected(programme: Programme): { step: Step; context: CautionContext }[] {
  let heatOn = false
  let bathTempC: number | null = programme.roomC
  return stepsOf(programme).map((step) => {
    const setOut = setOutOf(programme, step)
    if (step.heat === 'on') heatOn = true
    bathTempC = step.ramp?.lowC ?? step.setPoint?.lowC ?? bathTempC
    const context: CautionContext = {
      bathTempC,
      heatOn,
      strengthPercent: setOut?.percent ?? null,
      kind: setOut?.kind ?? null
    }
    if (step.heat === 'off') heatOn = false
    const cooled = step.wait?.until.find((u) => u.kind === 'temperature' && u.going === 'down')
    if (cooled?.kind === 'temperature' && cooled.highC !== null) bathTempC = cooled.highC
    return { step, context }
  })
}
