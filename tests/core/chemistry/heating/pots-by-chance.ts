// Pots of a kitchen by chance, with the truth beside the readings.
import { newtonC, newtonMin } from '../../../../src/core/chemistry/heating/laws.ts'
import type { Reading } from '../../../../src/core/chemistry/heating/readings.ts'
import type { Chance } from '../../../simulation/chance.ts'

export type ChancePot = {
  readings: Reading[]
  targetC: number
  sdC: number
  resolutionC: number
  boilC: number
  /** When it truly is at the target. */
  truthMin: number
}

const between = (chance: Chance, least: number, most: number): number => least + chance.next() * (most - least)

/** By G. E. P. Box & M. E. Muller, 1958 (from memory). */
const normal = (chance: Chance): number =>
  Math.sqrt(-2 * Math.log(1 - chance.next())) * Math.cos(2 * Math.PI * chance.next())

/** A thermometer that shows tenths, halves, whole °C or whole °F; one reading is off by 0.2 to 0.6 °C. */
const thermometer = (chance: Chance): { sdC: number; resolutionC: number } => ({
  sdC: between(chance, 0.2, 0.6),
  resolutionC: chance.pick([0.1, 0.5, 1, 5 / 9])
})

/** 2 to 10 L from the tap or warm, on a ring that would bring it to 95 to 160 °C if water could. */
const heating = (chance: Chance) => {
  const pot = {
    fromC: between(chance, 10, 45),
    towardsC: between(chance, 95, 160),
    perMin: 1 / between(chance, 15, 60)
  }
  return { pot, targetC: between(chance, 60, Math.min(96, pot.towardsC - 3)) }
}

/** A hot bath in a kitchen, lidded or not. */
const cooling = (chance: Chance) => {
  const pot = {
    fromC: between(chance, 70, 97),
    towardsC: between(chance, 12, 28),
    perMin: 1 / between(chance, 30, 120)
  }
  return { pot, targetC: between(chance, pot.towardsC + 5, 60) }
}

/** 4 to 16 readings at uneven times, the last when 30 to 110 % of the way to the target has gone by. */
export function potByChance(chance: Chance, kind: 'heating' | 'cooling'): ChancePot {
  const { pot, targetC } = kind === 'heating' ? heating(chance) : cooling(chance)
  const truthMin = newtonMin(pot, targetC) ?? Number.NaN
  const { sdC, resolutionC } = thermometer(chance)
  const count = chance.whole(4, 16)
  const everyMin = (truthMin * between(chance, 0.3, 1.1)) / (count - 1)
  const readings = Array.from({ length: count }, (_, i) => {
    const atMin = i === 0 ? 0 : (i + between(chance, -0.3, 0.3)) * everyMin
    const shownC = Math.round((newtonC(pot, atMin) + sdC * normal(chance)) / resolutionC) * resolutionC
    return { atMin, tempC: shownC }
  })
  // A pot cannot be hotter than its boil; here that of high pressure, so that Newton's law holds in every reading.
  return { readings, targetC, sdC, resolutionC, boilC: 120, truthMin }
}
