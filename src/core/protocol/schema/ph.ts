import type { FieldPath, Reading } from '../reading.ts'
import type { AsWritten } from './fields.ts'

/** Reads a range of pH, 0 to 14: 4..5, 4.5, at least 4, at most 5. */
export function phRange(
  written: AsWritten,
  at: FieldPath,
  r: Reading
): { low: number | null; high: number | null } | null {
  const text = String(written).trim().replace(/^pH /i, '')
  const limit = /^(at least|at most) +(.*)$/i.exec(text)
  const [first = '', second, ...more] = (limit?.[2] ?? text).split(/ ?(?:\.\.\.?|…|–| to ) ?/)
  const low = r.number(first, at, { least: 0, most: 14 })
  const high = second === undefined ? low : r.number(second, at, { least: 0, most: 14 })
  if (low === null || high === null) return null
  if (more.length > 0 || high < low) {
    r.say(at, 'range-backwards', `"${text}" can't be read.`, 'Write the lower pH first, for example 4..5.')
    return null
  }
  if (limit) return /least/i.test(limit[1] ?? '') ? { low, high: null } : { low: null, high: low }
  return { low, high }
}
