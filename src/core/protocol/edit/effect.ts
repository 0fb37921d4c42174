// Whether two ways of writing a quantity come to the same: 30 mL and 0.03 L.
import {
  type KitchenCountry,
  readAmount,
  readDepth,
  readDuration,
  readNumber,
  readRate,
  readTemperatureRange
} from '../../quantity/index.ts'
import type { Fields } from './data.ts'

export function kitchenOf(header: Fields): KitchenCountry | null {
  const { kitchen } = header
  return kitchen === 'us' || kitchen === 'metric' || kitchen === 'imperial' ? kitchen : null
}

type Reader = (text: string, kitchen: KitchenCountry | null) => { ok: true; value: unknown } | { ok: false }

const readers: Reader[] = [
  (text) => readNumber(text),
  (text) => readDuration(text),
  (text) => readTemperatureRange(text),
  (text) => readRate(text),
  (text) => readDepth(text),
  (text, kitchen) => readAmount(text, { kitchen })
]

/** True where some reader of the language reads both as the same value, and for the same text in the same kitchen. A text
 * that no reader of quantities takes is the same only as itself. */
export function sameEffect(
  a: string,
  b: string,
  kitchenA: KitchenCountry | null,
  kitchenB: KitchenCountry | null
): boolean {
  if (a === b && kitchenA === kitchenB) return true
  let quantity = false
  for (const read of readers) {
    const [first, second] = [read(a, kitchenA), read(b, kitchenB)]
    if (!first.ok || !second.ok) continue
    quantity = true
    if (plainly(first.value) === plainly(second.value)) return true
  }
  return !quantity && a === b
}

/** What was read, without the words it was written in; the last digits of a sum are no difference. */
function plainly(value: unknown): string {
  return JSON.stringify(value, (key, part: unknown) => {
    if (key === 'asEntered') return undefined
    return typeof part === 'number' ? Number(part.toPrecision(9)) : part
  })
}
