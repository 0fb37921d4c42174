// The limits that amounts share.
import type { Limit } from '../limits.ts'

/** Goods from a twentieth of a gram to 100 kg, dry. */
export const goodsLeastG = 0.05
export const goodsMostG = 100_000

export const goodsLimit: Limit = {
  field: 'goodsG',
  name: 'the dry weight of the goods',
  unit: 'g',
  least: goodsLeastG,
  most: goodsMostG
}
/** Salt and levelling agents go by it too, so it may be far above a depth of shade. */
export const owfLimit: Limit = {
  field: 'percentOwf',
  name: 'the share of the goods',
  unit: '% owf',
  least: 0,
  most: 1000
}
export const stockLimit: Limit = {
  field: 'stockPercentWV',
  name: 'the strength of the stock',
  unit: '% w/v',
  least: 0,
  most: 100,
  above: true
}
export const ratioLimit: Limit = {
  field: 'ratio',
  name: 'the liquor ratio',
  unit: 'mL for each g',
  least: 1,
  most: 1000
}

/** Up to 1000 L. */
export function volumeLimit(field: string, name: string): Limit {
  return { field, name, unit: 'mL', least: 0, most: 1e6 }
}

/** Up to 1000 kg. */
export function massLimit(field: string, name: string): Limit {
  return { field, name, unit: 'g', least: 0, most: 1e6 }
}

/** The same, more than nothing of it. */
export function some(limit: Limit): Limit {
  return { ...limit, above: true }
}
