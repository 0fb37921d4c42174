// Where steps and gaps refer to a moment by its name, and what they say when it has another.
import { stepWords } from '../model.ts'
import { namePieces } from '../schema/wait-fields.ts'
import { type Data, type Fields, isFields, same } from './data.ts'
import { stepOf, written } from './places.ts'

type Names = ReadonlyMap<string, string>

/** Steps, or one, in which every reference to a moment is by its new name. Ids and marks stay. */
export function withMoments(data: Data, names: Names): Data {
  if (Array.isArray(data)) return data.map((one) => withMoments(one, names))
  if (!isFields(data)) return data
  const step = stepOf(data)
  if (step && (stepWords as readonly string[]).includes(step.kind)) {
    const fields = waitingFor(step.fields, names)
    // However it is written otherwise, it stays.
    return same(fields, step.fields) ? data : written({ ...step, fields })
  }
  return Object.fromEntries(Object.entries(data).map(([key, value]) => [key, withMoments(value, names)]))
}

/** A list of gaps whose ends are called by their new names. */
export function gapsWithMoments(gaps: Data, names: Names): Data {
  if (!Array.isArray(gaps)) return gaps
  return gaps.map((gap) => (isFields(gap) ? renamedFields(gap, ['from', 'to'], names) : gap))
}

function waitingFor(fields: Fields, names: Names): Fields {
  const own = [fields.id, fields.marks].flat()
  const renamed = renamedFields(fields, ['from'], names)
  const { until } = renamed
  if (until === undefined) return renamed
  const term = (one: Data): Data =>
    typeof one === 'string'
      ? inWords(one, names, own)
      : isFields(one)
        ? renamedFields(one, ['after', 'moment'], names)
        : one
  return { ...renamed, until: Array.isArray(until) ? until.map(term) : term(until) }
}

function renamedFields(fields: Fields, keys: readonly string[], names: Names): Fields {
  return Object.fromEntries(
    Object.entries(fields).map(([key, value]) => {
      const to = keys.includes(key) && typeof value === 'string' ? names.get(value) : undefined
      return [key, to ?? value]
    })
  )
}

/** "10 min after A1 and until A2". A step's own name in its words is no moment: it can't wait for itself. */
function inWords(words: string, names: Names, own: readonly unknown[]): string {
  return namePieces(words)
    .map(({ before, name, bare }) => {
      const to = name === null || (bare && own.includes(name)) ? undefined : names.get(name)
      return before + (to ?? name ?? '')
    })
    .join('')
}
