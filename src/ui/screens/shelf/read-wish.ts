// What is typed for a stock that is to be made, read and worked out; every problem at its field.
import { type Read, readNumber, readPercent, type Units } from '../../../core/quantity/index.ts'
import { thingProblems } from '../../../core/shelf/check.ts'
import { planStock, type Source, type StockPlan, type StockWish } from '../../../core/shelf/make.ts'
import type { Stock } from '../../../core/shelf/thing.ts'
import type { OnShelf } from '../../shelf.ts'
import type { Problems } from './read-draft.ts'
import { problemWords, readVolumeTyped } from './typed.ts'
import { dayOf } from './words.ts'

/** As typed. */
export type Wish = {
  how: 'powder' | 'dilution' | 'mix'
  name: string
  dye: string
  percentWV: string
  volumeML: string
  lot: string
  powderLot: string
  water: string
  note: string
  /** The bottle that is thinned. */
  from: string
  mix: { itemId: string; parts: string }[]
}

export type ReadWish = { ok: true; thing: Stock; plan: StockPlan } | { ok: false; problems: Problems }

export function readWish(wish: Wish, stocks: readonly OnShelf[], units: Units, nowMs: number): ReadWish {
  const problems: Problems = {}
  const number = (field: string, read: Read<number>): number => {
    if (read.ok) return read.value
    problems[field] = problemWords(read)
    return Number.NaN
  }
  const made = planStock(stockWish(wish, stocks, units, number))
  // Rows without a bottle are none of the mix: its parts are counted without them.
  const rows = [...wish.mix.keys()].filter((i) => sourceOf(stocks, wish.mix[i]?.itemId ?? '') !== null)
  const place = (field: string): string => field.replace(/^parts\.(\d+)$/, (_, i) => `parts.${rows[Number(i)]}`)
  if (!made.ok) for (const { field, what, instead } of made.problems) problems[place(field)] ??= `${what} ${instead}`
  const source = sourceOf(stocks, wish.from)
  const thing: Stock = {
    kind: 'stock',
    name: wish.name.trim(),
    // Thinned it is the dye it was.
    dye: wish.dye.trim() || (wish.how === 'dilution' ? (source?.dye ?? '') : ''),
    percentWV: made.ok ? made.plan.percentWV : 1,
    lot: wish.lot.trim(),
    madeOn: dayOf(nowMs),
    parts: made.ok ? made.plan.parts : [],
    note: wish.note.trim()
  }
  for (const { field, what, instead } of thingProblems(thing, nowMs)) problems[field] ??= `${what} ${instead}`
  return made.ok && Object.keys(problems).length === 0 ? { ok: true, thing, plan: made.plan } : { ok: false, problems }
}

function stockWish(
  wish: Wish,
  stocks: readonly OnShelf[],
  units: Units,
  number: (field: string, read: Read<number>) => number
): StockWish {
  const { how, powderLot } = wish
  const water = wish.water.trim()
  const volumeML = number('volumeML', readVolumeTyped(wish.volumeML, units))
  if (how === 'mix') {
    const from = wish.mix.flatMap(({ itemId, parts }, i) => {
      const source = sourceOf(stocks, itemId)
      return source === null ? [] : [{ source: source.label, parts: number(`parts.${i}`, readNumber(parts)) }]
    })
    return { how, from, volumeML }
  }
  const percentWV = number('percentWV', readPercent(wish.percentWV, { bare: true }))
  if (how === 'powder') return { how, percentWV, volumeML, powderLot: powderLot.trim(), water }
  return { how, from: sourceOf(stocks, wish.from)?.label ?? null, percentWV, volumeML, water }
}

function sourceOf(stocks: readonly OnShelf[], itemId: string): { label: Source; dye: string } | null {
  const thing = stocks.find(({ item }) => item.itemId === itemId)?.item.thing
  if (thing?.kind !== 'stock') return null
  const { name, lot, percentWV, madeOn, dye } = thing
  return { label: { itemId, name, lot, percentWV, madeOn }, dye }
}
