// What is said of a thing on the shelf: its facts, its age, its level.
import { showMass, showNumber, showPercent, showVolume, type Units } from '../../../core/quantity/index.ts'
import { localDay } from '../../../core/record/local-time.ts'
import { ageDays } from '../../../core/shelf/age.ts'
import type { Level } from '../../../core/shelf/levels.ts'
import type { Acid, Thing, ThingKind } from '../../../core/shelf/thing.ts'

export const kindWords: Record<ThingKind, { one: string; many: string }> = {
  stock: { one: 'Stock', many: 'Stocks' },
  acid: { one: 'Acid', many: 'Acids' },
  yarn: { one: 'Yarn', many: 'Yarns' },
  water: { one: 'Water', many: 'Waters' },
  pot: { one: 'Pot', many: 'Pots' },
  burner: { one: 'Burner', many: 'Burners' }
}

/** Today on the dyer's own calendar, "2031-06-14". */
export function dayOf(atMs: number): string {
  return localDay(atMs, -new Date(atMs).getTimezoneOffset())
}

/** Its age, and never an end of its life: none is known for any stock. */
export function ageWords(madeOn: string | null, nowMs: number): string {
  const days = ageDays(madeOn, dayOf(nowMs))
  if (days === null) return 'age not known'
  if (days === 0) return 'made today'
  return days === 1 ? 'made yesterday' : `made ${days} days ago`
}

/** The line under its name. */
export function factsOf(thing: Thing, nowMs: number, units: Units): string[] {
  switch (thing.kind) {
    case 'stock':
      return [`${showPercent(thing.percentWV, units)} w/v`, lotWords(thing.lot), ageWords(thing.madeOn, nowMs)].filter(
        Boolean
      )
    case 'acid':
      return [thing.acid, strengthWords(thing, units), lotWords(thing.lot)].filter(Boolean)
    case 'yarn':
      return [thing.fibre, treatedWords[thing.treated], lotWords(thing.lot)].filter(Boolean)
    case 'water':
      return [alkalinityWords(thing.alkalinityMgPerL, units)]
    case 'pot': {
      const size = thing.volumeML === null ? '' : showVolume(thing.volumeML, units)
      return [size, thing.material, thing.lid ? 'with a lid' : 'no lid'].filter(Boolean)
    }
    case 'burner':
      return [thing.heat].filter(Boolean)
  }
}

const lotWords = (lot: string): string => (lot === '' ? '' : `lot ${lot}`)

export const treatedWords = {
  yes: 'shrink-resist treated',
  no: 'not treated',
  unknown: 'treatment not known'
} as const

export function strengthWords({ percent, basis, densityGPerML, form }: Acid, units: Units): string {
  if (percent === null) return form === 'powder' ? 'powder' : ''
  const density = basis === 'w/w' && densityGPerML !== null ? `, ${showNumber(densityGPerML, 3, units)} g/mL` : ''
  return `${showPercent(percent, units)} ${basis}${density}`
}

export function alkalinityWords(mgPerL: number | null, units: Units): string {
  return mgPerL === null ? 'alkalinity not measured' : `alkalinity ${showNumber(mgPerL, 0, units)} mg/L as CaCO₃`
}

export function amountWords(amount: number, unit: 'mL' | 'g', units: Units): string {
  return unit === 'mL' ? showVolume(amount, units) : showMass(amount, units)
}

/** The level in words: what is left, what today's pots may still take, and where the figures can't be right. */
export function levelWords(level: Level, units: Units): { left: string; more: string[] } {
  const { left, known, reserved, free, unit, otherUnits } = level
  const say = (amount: number): string => amountWords(amount, unit, units)
  // A thousandth is the rounding of many draws.
  const over = left < -0.0005
  const more: string[] = []
  if (over) more.push(`${say(-left)} more was drawn than was there: correct the level.`)
  if (reserved > 0) {
    more.push(`Pots that are on may take ${say(reserved)} of it.`)
    if (!over && free < -0.0005) more.push(`That is ${say(-free)} more than is left.`)
  }
  if (otherUnits) more.push('Some was drawn in another unit, and is not taken off.')
  const there = say(Math.max(0, left))
  // A full bottle is not "250 mL of 250 mL".
  return { left: over ? 'Nothing left' : left < known ? `${there} left of ${say(known)}` : `${there} left`, more }
}
