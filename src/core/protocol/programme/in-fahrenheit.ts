// The words of a programme for a dyer whose thermometer reads °F: its temperatures are figured in °C and stand so in the
// texts that are made, and in those a protocol's writer wrote.
import { fahrenheitFromCelsius } from '../../quantity/temperature-scale.ts'
import type { Programme } from '../model.ts'

/** A temperature stands at the beginning, or after "to" or "at". "By 5 °C" and "3 to 5 °C more" are differences, which go
 * by another sum: they stay as they were written. */
const told = /(^|; |\bat |^to |[^\d\s]\sto )(\d+(?:\.\d+)?)(?:(–|\.\.| to )(\d+(?:\.\d+)?))?\s?°C(\/min)?/g
/** What is read on a screen. All else of a step is figures or names. */
const spoken = new Set(['call', 'doing', 'done', 'detail', 'knot', 'label', 'ask'])

/** "to 80–85 °C" is "to 176–185 °F", in whole degrees; "at 1.5 °C/min" is "at 2.7 °F/min". */
export function fahrenheitWords(text: string): string {
  return text.replace(told, (_, before: string, low: string, joint = '', high = '', rate = '') => {
    const shown = (written: string): number =>
      rate ? Math.round(Number(written) * 18) / 10 : Math.round(fahrenheitFromCelsius(Number(written)))
    return `${before}${shown(low)}${joint}${high && shown(high)} °F${rate}`
  })
}

export function inFahrenheit(programme: Programme): Programme {
  return { ...programme, steps: worded(programme.steps) }
}

/** The same with every spoken text said anew. */
function worded<T>(value: T): T {
  if (Array.isArray(value)) return value.map(worded) as T
  if (value === null || typeof value !== 'object') return value
  const fields = Object.entries(value).map(([name, held]) => [
    name,
    typeof held === 'string' ? (spoken.has(name) ? fahrenheitWords(held) : held) : worded(held)
  ])
  return Object.fromEntries(fields) as T
}
