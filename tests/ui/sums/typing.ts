// Somebody who types into a sum: words in, words out.
import { metricUnits, type Units } from '../../../src/core/quantity/index.ts'
import type { Cell, Typed } from '../../../src/ui/screens/sums/field.ts'
import { type Answer, answerOf } from '../../../src/ui/screens/sums/reading.ts'
import type { Result, Sum } from '../../../src/ui/screens/sums/sum.ts'
import { sums } from '../../../src/ui/screens/sums/sums.ts'
import { fresh, freshRow } from '../../../src/ui/screens/sums/typed.ts'

export const usUnits: Units = { temperature: 'F', volume: 'us', mass: 'us' }

export type Words = Record<string, string | Record<string, string>[]>

export function sumOf(id: string): Sum {
  const sum = sums.find((each) => each.id === id)
  if (!sum) throw new Error(`no sum is called ${id}`)
  return sum
}

/** A sum as it stands after these words were typed over what it begins with. */
export function typedInto(sum: Sum, words: Words, units: Units): Typed {
  const typed = fresh(sum, units)
  for (const [id, text] of Object.entries(words)) {
    const field = sum.fields[id]
    if (!field) throw new Error(`${sum.id} has no field ${id}`)
    if (field.form !== 'rows') {
      typed[id] = { ...(typed[id] as Cell), text: text as string }
      continue
    }
    typed[id] = (text as Record<string, string>[]).map((row, key) => {
      for (const cell of Object.keys(row)) if (!field.each[cell]) throw new Error(`${sum.id}.${id} has no ${cell}`)
      return freshRow(field, key, units, row)
    })
  }
  return typed
}

export function answer(id: string, words: Words, units: Units = metricUnits): Answer {
  const sum = sumOf(id)
  return answerOf(sum, typedInto(sum, words, units), units)
}

const plain = (text: string): string => text.replaceAll('\u00a0', ' ')

export function result(id: string, words: Words, units?: Units): Result {
  const got = answer(id, words, units)
  if (got.kind !== 'worked') throw new Error(`${id}: ${JSON.stringify(got, (_, v) => (v instanceof Map ? [...v] : v))}`)
  return got.result
}

/** The figures as they are shown: "Stock 40 mL". */
export function figures(id: string, words: Words, units?: Units): string[] {
  return result(id, words, units).figures.map(({ what, figure, also }) =>
    plain(`${what} ${figure}${also ? ` (${also})` : ''}`)
  )
}

/** The rows of the table, cells parted by " | ". */
export function table(id: string, words: Words, units?: Units): string[] {
  return (result(id, words, units).table?.rows ?? []).map((cells) => plain(cells.join(' | ')))
}

/** What is said at each field. */
export function problems(id: string, words: Words, units?: Units): Record<string, string> {
  const got = answer(id, words, units)
  return got.kind === 'wrong' ? Object.fromEntries([...got.problems].map(([place, say]) => [place, plain(say)])) : {}
}
