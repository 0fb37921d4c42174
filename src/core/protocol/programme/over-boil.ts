// A step that wants more heat than an open pot gets where it stands: "98 °C or the boil, whichever is lower, and 12 min
// longer".
import { isRefused } from '../../chemistry/answer.ts'
import { longerHold } from '../../chemistry/uptake/longer-hold.ts'
import type { Draft, RangeDraft } from '../draft.ts'
import type { Step } from '../model.ts'

/** Where a writer says "the boil", he boils near the sea; the weather alone moves it by nearly 1 °C. */
const boilAtSeaC = 100
const weatherC = 0.8

type Expecting = { heatOn: boolean; askedC: number | null }
export type OverBoil = NonNullable<Step['overBoil']>

/** What a ramp is meant to reach, °C. */
export function askedByRamp({ range }: NonNullable<Draft['ramp']>): number | null {
  return range.boil ? boilAtSeaC : (range.lowC ?? range.highC)
}

/** Null: the step is as hot as it was meant. `boilC`: the boil here. */
export function overBoilOf(draft: Draft, boilC: number, counted: boolean, now: Expecting): OverBoil | null {
  const askedC = draft.ramp ? askedByRamp(draft.ramp) : draft.wait ? askedByHold(draft, boilC, now) : null
  if (askedC === null || askedC <= boilC + weatherC) return null
  const longer = longerFor(draft, askedC, boilC)
  return { askedC, boilC, longer, counted: counted && longer !== null }
}

/** A hold is as hot as its own temperature says, else as the ramp before it was meant to make the bath. */
function askedByHold({ setPoint, bench }: Draft, boilC: number, { heatOn, askedC }: Expecting): number | null {
  if (bench) return null
  if (setPoint === null) return heatOn ? askedC : null
  const { range, aimC } = setPoint
  if (range.boil) return boilAtSeaC
  if (aimC !== null) return aimC
  if (heatOn && askedC !== null && reaches(range, askedC)) return askedC
  return range.lowC !== null && range.lowC >= boilC ? range.lowC : null
}

function reaches({ lowC, highC }: RangeDraft, tempC: number): boolean {
  return (lowC === null || tempC >= lowC) && (highC === null || tempC <= highC)
}

function longerFor({ wait }: Draft, askedC: number, boilC: number): OverBoil['longer'] {
  if (wait === null || wait.forMs === null) return null
  const longer = longerHold({ holdMin: wait.forMs / 60_000, meantC: Math.min(askedC, 105), atC: boilC })
  if (isRefused(longer)) return null
  const wholeMs = (min: number): number => Math.round(min) * 60_000
  const { leastMin, likelyMin, mostMin } = longer
  return Math.round(likelyMin) < 1
    ? null
    : { leastMs: wholeMs(leastMin), likelyMs: wholeMs(likelyMin), mostMs: wholeMs(mostMin) }
}

/** The hold with what it needs more, where the dyer wants that counted in. */
export function lengthened(draft: Draft, over: OverBoil | null): Draft {
  if (!over?.counted || over.longer === null || draft.wait === null || draft.wait.forMs === null) return draft
  return { ...draft, wait: { ...draft.wait, forMs: draft.wait.forMs + over.longer.likelyMs } }
}

/** The line on the step. `asked`: what its own range says, °C. */
export function overBoilWords(over: OverBoil | null, asked: number | null, boilC: number): string | null {
  const wantedC = over?.askedC ?? (asked !== null && asked >= boilC ? asked : null)
  if (wantedC === null) return null
  const capped = `${Math.round(wantedC * 10) / 10} °C or the boil, whichever is lower`
  if (!over?.longer) return capped
  const min = Math.round(over.longer.likelyMs / 60_000)
  return `${capped}, and ${over.counted ? `${min} min longer, counted in` : `about ${min} min longer`}`
}
