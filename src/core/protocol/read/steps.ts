// Reads a list of steps, each after its own word, so that a problem speaks of that step.
import * as z from 'zod/mini'
import type { StepWord } from '../model.ts'
import { stepWords } from '../model.ts'
import { suggest } from '../nearest.ts'
import { constructSchemas } from '../schema/construct-schemas.ts'
import { stepKinds } from '../schema/step-kinds.ts'
import { stillOf } from '../source/further-down.ts'
import { entryOf, type Located, type Place, plain } from '../source/located.ts'
import { type ConstructWord, constructWords, type WrittenNode } from '../written.ts'
import { type Inside, readConstruct } from './constructs.ts'
import { sayIssues } from './issues.ts'
import { type Problems, whereOf } from './problems.ts'

/** Where a node stands in the text. */
export type NodePlace = { located: Located; keyAt: Place; where: string }

export type Steps = { problems: Problems; places: Map<WrittenNode, NodePlace>; whole: boolean }

const words: readonly string[] = [...stepWords, ...constructWords]

/** Items that are no steps are told and left out; `whole` says whether any was. */
export function readSequence(list: Located | null, where: string, steps: Steps): WrittenNode[] {
  if (list?.kind !== 'list') {
    steps.whole = false
    return []
  }
  const nodes: WrittenNode[] = []
  for (const [i, item] of list.items.entries()) {
    const node = readNode(item, whereOf(where, [i]), steps)
    if (node) nodes.push(node)
    else steps.whole = false
  }
  return nodes
}

function readNode(item: Located, where: string, steps: Steps): WrittenNode | null {
  const { problems } = steps
  if (item.kind === 'scalar' && typeof item.value === 'string') {
    const value: Located = { kind: 'scalar', at: item.at, value: null }
    return readWord({ word: item.value, value, keyAt: item.at, part: item }, where, steps)
  }
  if (item.kind !== 'map' || item.entries.length === 0) {
    problems.say(item.at, where, 'no-word', 'This is no step.', 'write a step word, for example - hold: 6 min')
    return null
  }
  const [first, second] = item.entries
  if (second && first) {
    const owner = item.entries.find((entry) => words.includes(entry.key)) ?? first
    const other = item.entries.find((entry) => entry !== owner) ?? second
    const both = words.includes(other.key)
    const instead = both ? `put - before ${other.key}` : `indent ${other.key} under ${owner.key}`
    const what = `${owner.key.slice(0, 40)} and ${other.key.slice(0, 40)} stand side by side.`
    problems.say(other.keyAt, where, 'many-words', what, instead)
    return null
  }
  if (!first) return null
  return readWord({ word: first.key, value: first.value, keyAt: first.keyAt, part: first.value }, where, steps)
}

/** A word with what stands behind it. `part`: of the text, to know it again by. */
type Item<W extends string> = { word: W; value: Located; keyAt: Place; part: Located }

function readWord(item: Item<string>, where: string, steps: Steps): WrittenNode | null {
  const { word, keyAt } = item
  const here = whereOf(where, [word.slice(0, 40)])
  if (Object.hasOwn(stepKinds, word)) return readStep(item as Item<StepWord>, here, steps)
  if ((constructWords as readonly string[]).includes(word)) return readWhole(item as Item<ConstructWord>, here, steps)
  steps.problems.say(
    keyAt,
    where,
    'unknown-word',
    `There is no step ${word.slice(0, 40)}.`,
    suggest(word, words, 'steps')
  )
  return null
}

/** `hold: 6 min` stands for `hold: {for: 6 min}`, and a bare word for one without fields. */
function named(value: Located, short: string | null, keyAt: Place): Located {
  if (value.kind === 'map') return value
  if (value.kind === 'scalar' && value.value === null) return { kind: 'map', at: keyAt, entries: [] }
  if (short === null) return value
  return { kind: 'map', at: value.at, entries: [{ key: short, keyAt: value.at, value }] }
}

type FieldsRead = ReturnType<typeof z.safeParse<z.ZodMiniType<Record<string, unknown>>>>
type Known = { word: string; read: FieldsRead; node: WrittenNode | null }

/** What was made of parts that have not changed since, wherever they stand by now: while a text is typed, of all steps
 * but one. They stay the same nodes, so that what hangs on them need not be worked out again either. */
const known = new WeakMap<Located, Known>()

function knownOf({ word, part }: Item<string>, schema: z.ZodMiniType, located: Located): Known {
  const key = stillOf(part)
  const before = known.get(key)
  if (before?.word === word) return before
  const read = z.safeParse(schema as z.ZodMiniType<Record<string, unknown>>, plain(located))
  const made: Known = { word, read, node: null }
  known.set(key, made)
  return made
}

function readStep(item: Item<StepWord>, where: string, steps: Steps): WrittenNode | null {
  const { word, value, keyAt } = item
  const { short, schema } = stepKinds[word]
  const located = named(value, short, keyAt)
  const made = knownOf(item, schema, located)
  const { read } = made
  if (!read.success) {
    sayIssues(read.error.issues, { located, keyAt, where, called: word, schema }, steps.problems)
    return null
  }
  const id = typeof read.data.id === 'string' ? read.data.id : null
  made.node ??= { word, id, fields: read.data }
  steps.places.set(made.node, { located, keyAt, where })
  return made.node
}

function readWhole(item: Item<ConstructWord>, where: string, steps: Steps): WrittenNode | null {
  const { word, value, keyAt } = item
  const { problems } = steps
  const located = named(value, null, keyAt)
  const schema = constructSchemas[word]
  const made = knownOf(item, schema, located)
  const { read } = made
  if (!read.success) sayIssues(read.error.issues, { located, keyAt, where, called: word, schema }, problems)
  const inside: Inside = (path) => {
    const list = path.reduce<Located | null>((here, key) => entryOf(here, key)?.value ?? null, located)
    return readSequence(list, whereOf(where, path), steps)
  }
  // Gone through each time, for the problems and the places of what is inside.
  const anew = readConstruct(word, read.success ? read.data : null, located, keyAt, inside, problems, where)
  made.node ??= anew
  if (made.node) steps.places.set(made.node, { located, keyAt, where })
  return made.node
}
