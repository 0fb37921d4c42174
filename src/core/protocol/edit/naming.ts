// A step given another id: what refers to it goes along.
import { idPattern } from '../schema/fields.ts'
import { isBareName } from '../schema/wait-fields.ts'
import type { Change } from './change.ts'
import { type Data, type Fields, isFields, type Path, same, withAt } from './data.ts'
import { eachFields } from './fresh.ts'
import { gapsWithMoments, withMoments } from './moments.ts'
import { ownerAt, stepOf, written } from './places.ts'

/** Where the old id was that of two things, nobody can tell which one is meant, and what refers to it is left. */
export function named(root: Data, path: Path, to: string): Change {
  const step = path[0] === 'steps' ? ownerAt(root, path) : null
  const id = to.trim()
  if (!step || !isFields(root)) return { ok: false, problem: 'There is nothing at this place.' }
  if (!idPattern.test(id)) {
    return {
      ok: false,
      problem: 'An id begins with a letter and has only letters, digits, - and _; at most 40 of them.'
    }
  }
  const was = step.fields.id
  if (was === id) return { ok: true, data: root, path }
  if (timesNamed(root, id) > 0) return { ok: false, problem: `${id} is there already.` }
  const names = new Map(typeof was === 'string' && timesNamed(root, was) === 1 ? [[was, id]] : [])
  // The old id still stands in the steps here: the step's own words are told from references by it.
  const steps = withMoments(root.steps ?? null, names)
  if (!same(steps, root.steps ?? null) && !isBareName(id)) {
    return { ok: false, problem: `${id} reads as a time or a temperature where it is waited for: choose another name.` }
  }
  const data: Fields = { ...root, steps }
  if (root.gaps !== undefined) data.gaps = gapsWithMoments(root.gaps, names)
  return { ok: true, data: withAt(data, path, (one) => withId(one, id)), path }
}

function withId(one: Data | undefined, id: string): Data | undefined {
  const step = stepOf(one)
  return step
    ? written({ ...step, fields: 'id' in step.fields ? { ...step.fields, id } : { id, ...step.fields } })
    : one
}

/** How often a name is an id or a mark. */
function timesNamed({ steps = null }: Fields, name: string): number {
  let times = 0
  eachFields(steps, ({ id, marks }) => {
    times += [id, marks].flat().filter((one) => one === name).length
  })
  return times
}
