// Values that only the bench asks for, each in a few units: an altitude, the pressure of the air, a power, an alkalinity,
// a difference of temperatures.
import { splitNumber } from './form-field.ts'
import { good, type Read, refuse } from './read.ts'

/** `words`: how it is written, in lower case. `size`: how many of the first unit of its table one of it is. */
type Known = { unit: string; words: RegExp; size: number }

// The foot is 0.3048 m exactly. Inch and millimetre of mercury, Btu per hour: NIST SP 811 App. B, from memory. A German
// degree is 10 mg/L of CaO, a French one 10 mg/L of CaCO3; from memory.
const tables = {
  altitude: [
    { unit: 'm', words: /^(?:m|met(?:re|er)s?)$/, size: 1 },
    { unit: 'ft', words: /^(?:ft|foot|feet|'|′)$/, size: 0.3048 }
  ],
  pressure: [
    { unit: 'hPa', words: /^(?:hpa|mbar|mb|millibars?)$/, size: 1 },
    { unit: 'kPa', words: /^kpa$/, size: 10 },
    { unit: 'inHg', words: /^(?:inhg|in hg|inches of mercury|")$/, size: 33.86389 },
    { unit: 'mmHg', words: /^(?:mmhg|mm hg|torr)$/, size: 1.333224 }
  ],
  power: [
    { unit: 'kW', words: /^kw$/, size: 1 },
    { unit: 'W', words: /^(?:w|watts?)$/, size: 0.001 },
    { unit: 'Btu/h', words: /^btu(?:\/h| per hour)$/, size: 0.0002930711 }
  ],
  alkalinity: [
    { unit: 'mg/L', words: /^(?:mg\/l|ppm)(?: (?:as )?caco3)?$/, size: 1 },
    { unit: '°dH', words: /^°? ?d[kg]?h$/, size: 17.848 },
    { unit: '°fH', words: /^°? ?fh?$/, size: 10 },
    { unit: 'meq/L', words: /^meq\/l$/, size: 50.0435 }
  ],
  difference: [
    { unit: '°C', words: /^(?:°? ?c|k)$/, size: 1 },
    { unit: '°F', words: /^°? ?f$/, size: 5 / 9 }
  ]
} as const satisfies Record<string, readonly Known[]>

export type BenchUnit = keyof typeof tables

/** Reads one value with its unit, in the first unit of its table: m, hPa, kW, mg/L as CaCO3, °C of a difference. Any
 * number is taken: what can be is for the formula to say. */
export function readIn(raw: string, kind: BenchUnit): Read<number> {
  const table: readonly Known[] = tables[kind]
  const example = `1 ${table[0]?.unit}`
  const split = splitNumber(raw, example)
  if (!split.ok) return split
  const { value, unitText, text } = split.value
  const units = table.map(({ unit }) => `${value} ${unit}`)
  const instead = `Write ${units.slice(0, -1).join(', ')} or ${units.at(-1)}.`
  if (unitText === '') return refuse('unit-missing', text, instead)
  const known = table.find(({ words }) => words.test(unitText.toLowerCase()))
  return known ? good(value * known.size) : refuse('unit-unknown', unitText, instead)
}

/** The units that can be written, the plain one first. */
export function unitsIn(kind: BenchUnit): string[] {
  return tables[kind].map(({ unit }) => unit)
}
