// Repeat, for each, until, choice, alongside: their fields as the schema let them through, their sequences read inside.
import type * as z from 'zod/mini'
import { type alongside, branchPattern } from '../schema/constructs/alongside.ts'
import type { choice } from '../schema/constructs/choice.ts'
import type { forEach } from '../schema/constructs/for-each.ts'
import type { repeat } from '../schema/constructs/repeat.ts'
import type { until } from '../schema/constructs/until.ts'
import { listOf } from '../schema/fields.ts'
import { answerId } from '../schema/question-fields.ts'
import { entryOf, type Located, type Place } from '../source/located.ts'
import { type ConstructFields, type ConstructWord, loopNames, type WrittenItems, type WrittenNode } from '../written.ts'
import type { Problems } from './problems.ts'

/** Reads the list of steps that lies at a path below the construct. */
export type Inside = (path: string[]) => WrittenNode[]

/** `data` null: the schema refused it; the sequences inside are read all the same, for the problems in them. */
export function readConstruct(
  word: ConstructWord,
  data: unknown,
  located: Located,
  keyAt: Place,
  inside: Inside,
  problems: Problems,
  where: string
): WrittenNode | null {
  switch (word) {
    case 'repeat': {
      const steps = inside(['steps'])
      const given = data as z.output<typeof repeat> | null
      return given && { word, id: given.id ?? null, fields: { ...shared(given), times: given.times, steps } }
    }
    case 'for each': {
      const steps = inside(['steps'])
      const given = data as z.output<typeof forEach> | null
      return given && each(given, steps, located, keyAt, problems, where)
    }
    case 'until':
      return readUntil(data as z.output<typeof until> | null, located, inside)
    case 'choice': {
      const answers = entryOf(located, 'answers')?.value ?? null
      const keys = answers?.kind === 'map' ? answers.entries.map((entry) => entry.key) : []
      const read = keys.map((key) => ({ id: answerId(key), label: key, steps: inside(['answers', key]) }))
      const given = data as z.output<typeof choice> | null
      if (new Set(read.map((answer) => answer.id)).size < read.length) {
        problems.say(
          answers?.at ?? keyAt,
          where,
          'duplicate-id',
          'Two answers have the same name.',
          'give each its own'
        )
      }
      return given && { word, id: given.id ?? null, fields: { ...shared(given), ask: given.ask, answers: read } }
    }
    case 'alongside': {
      const own = ['id', 'label', 'marks']
      const keys = located.kind === 'map' ? located.entries.map((entry) => entry.key) : []
      const branches = keys.filter((key) => !own.includes(key)).map((id) => ({ id, steps: inside([id]) }))
      const given = data as z.output<typeof alongside> | null
      for (const branch of branches) {
        if (branchPattern.test(branch.id)) continue
        const at = entryOf(located, branch.id)?.keyAt ?? keyAt
        problems.say(
          at,
          where,
          'bad-name',
          `${branch.id.slice(0, 40)} is no name for a branch.`,
          'letters, digits, - and _ only'
        )
      }
      if (given && branches.length === 0) {
        problems.say(
          keyAt,
          where,
          'items-missing',
          'No branch runs alongside.',
          'add a list of steps under a name, for example yarn'
        )
      }
      return given && { word, id: given.id ?? null, fields: { ...shared(given as never), branches } }
    }
  }
}

type Shared = { label?: string | undefined; marks?: string | string[] | undefined }

function shared(given: Shared): ConstructFields {
  return { label: given.label ?? null, marks: listOf(given.marks) }
}

function readUntil(given: z.output<typeof until> | null, located: Located, inside: Inside): WrittenNode | null {
  const steps = inside(['steps'])
  const otherwise = entryOf(located, 'otherwise') ? inside(['otherwise']) : null
  if (!given) return null
  const fields = {
    ...shared(given),
    ask: given.ask,
    'at most': given['at most'],
    likely: given.likely ?? null,
    steps,
    otherwise
  }
  return { word: 'until', id: given.id ?? null, fields }
}

function each(
  given: z.output<typeof forEach>,
  steps: WrittenNode[],
  located: Located,
  keyAt: Place,
  problems: Problems,
  where: string
): WrittenNode | null {
  const [item, other] = loopNames.filter((name) => given[name] !== undefined)
  if (item === undefined) {
    const instead = `add one of ${loopNames.join(', ')}, for example band: {from: 1, to: 5}`
    problems.say(keyAt, where, 'items-missing', 'for each what?', instead)
    return null
  }
  if (other !== undefined) {
    const at = entryOf(located, other)?.keyAt ?? keyAt
    problems.say(
      at,
      where,
      'items-missing',
      `It goes through ${item} and ${other} at once.`,
      'put one for each into the other'
    )
  }
  const written = given[item]
  const items: WrittenItems = Array.isArray(written) ? { list: written.map(String) } : (written as WrittenItems)
  const id = given.id ?? null
  if ('list' in items && new Set(items.list).size < items.list.length) {
    const at = entryOf(located, item)?.value.at ?? keyAt
    problems.say(at, where, 'duplicate-id', 'An item is named twice.', 'give each its own name')
  }
  return { word: 'for each', id, fields: { ...shared(given), item, items, steps } }
}
