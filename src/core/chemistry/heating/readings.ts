// Whether readings can be reckoned with at all: what is wrong, where, and what would be right.
import { coldestC, hottestC } from '../../quantity/temperature-term.ts'

export type Reading = { atMin: number; tempC: number }

export type Asked = {
  /** In any order; `atMin` minutes from any start, −10 to 120 °C. */
  readings: readonly Reading[]
  /** −10 to 120 °C. */
  targetC: number
  /** Standard deviation of what the thermometer and the stirring do to one reading, °C, 0 to 20. */
  sdC: number
  /** The step in which the thermometer shows, °C (0.1, 0.5, 1, 5/9 for whole °F), 0 to 20; 0: not rounded. */
  resolutionC: number
  /** Where the water of this place boils, °C, 60 to 120. */
  boilC?: number
  /** What is being done. Without it, readings that move away from the target are told as that and no more. */
  towards?: 'up' | 'down'
}

const coarsestC = 20
/** The highest kitchens have their boil over it, a pressure cooker under the other. */
const [boilLowestC, boilHighestC] = [60, 120]

/** A sentence, or null when all is well. */
export function wrongIn({ readings, targetC, sdC, resolutionC, boilC, towards }: Asked): string | null {
  if (!Array.isArray(readings)) return 'There are no readings: give a list of them, each with its minute and °C.'
  for (const [i, reading] of readings.entries()) {
    const wrong = wrongReading(reading)
    if (wrong) return `Reading ${i + 1}: ${wrong}`
  }
  return (
    outside('The target', targetC, coldestC, hottestC) ??
    outside('The standard deviation of a reading', sdC, 0, coarsestC) ??
    outside('The step of the thermometer', resolutionC, 0, coarsestC) ??
    (boilC === undefined ? null : outside('The boiling point', boilC, boilLowestC, boilHighestC)) ??
    (towards === undefined || towards === 'up' || towards === 'down'
      ? null
      : `"${towards}" is no direction: write up or down.`)
  )
}

function wrongReading(reading: Reading | null | undefined): string | null {
  if (typeof reading !== 'object' || reading === null) return 'it wants its minute and its temperature in °C.'
  if (!Number.isFinite(reading.atMin)) return `its minute is ${said(reading.atMin)}: write a number of minutes.`
  return outside('its temperature', reading.tempC, coldestC, hottestC)
}

function outside(what: string, value: number, least: number, most: number): string | null {
  if (Number.isFinite(value) && value >= least && value <= most) return null
  return `${what} is ${said(value)}: write ${`${least}`.replace('-', '−')} to ${most} °C as a number.`
}

/** "missing" is said of what is not there; a text is shown as it stands. */
function said(value: unknown): string {
  if (value === undefined || value === null) return 'missing'
  return typeof value === 'string' ? `the text "${value}"` : `${value}`
}
