// Reads a list of steps, each after its own word, so that a problem speaks of that step.
import * as z from 'zod/mini'
import type { StepWord } from '../model.ts'
import { stepWords } from '../model.ts'
import { suggest } from '../nearest.ts'
import { constructSchemas } from '../schema/construct-schemas.ts'
import { stepKinds } from '../schema/step-kinds.ts'
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
    return readWord(item.value, { kind: 'scalar', at: item.at, value: null }, item.at, where, steps)
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
  return first ? readWord(first.key, first.value, first.keyAt, where, steps) : null
}

function readWord(word: string, value: Located, keyAt: Place, where: string, steps: Steps): WrittenNode | null {
  const here = whereOf(where, [word.slice(0, 40)])
  if (Object.hasOwn(stepKinds, word)) return readStep(word as StepWord, value, keyAt, here, steps)
  if ((constructWords as readonly string[]).includes(word)) {
    return readWhole(word as ConstructWord, value, keyAt, here, steps)
  }
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

type FieldsRead = ReturnType<typeof z.safeParse<(typeof stepKinds)[StepWord]['schema']>>

/** What the schemas made of fields that have not changed since: while a text is typed, all but one step. */
const fieldsRead = new WeakMap<Located, { word: StepWord; read: FieldsRead }>()

function fieldsOf(word: StepWord, value: Located, located: Located): FieldsRead {
  const known = fieldsRead.get(value)
  if (known?.word === word) return known.read
  const read = z.safeParse(stepKinds[word].schema, plain(located))
  fieldsRead.set(value, { word, read })
  return read
}

function readStep(word: StepWord, value: Located, keyAt: Place, where: string, steps: Steps): WrittenNode | null {
  const kind = stepKinds[word]
  const located = named(value, kind.short, keyAt)
  const read = fieldsOf(word, value, located)
  if (!read.success) {
    sayIssues(read.error.issues, { located, keyAt, where, called: word, schema: kind.schema }, steps.problems)
    return null
  }
  const id = typeof read.data.id === 'string' ? read.data.id : null
  const node: WrittenNode = { word, id, line: keyAt.line, fields: read.data }
  steps.places.set(node, { located, keyAt, where })
  return node
}

function readWhole(word: ConstructWord, value: Located, keyAt: Place, where: string, steps: Steps): WrittenNode | null {
  const located = named(value, null, keyAt)
  const schema = constructSchemas[word]
  const read = z.safeParse(schema, plain(located))
  if (!read.success) sayIssues(read.error.issues, { located, keyAt, where, called: word, schema }, steps.problems)
  const inside: Inside = (path) => {
    const list = path.reduce<Located | null>((here, key) => entryOf(here, key)?.value ?? null, located)
    return readSequence(list, whereOf(where, path), steps)
  }
  const node = readConstruct(word, read.success ? read.data : null, located, keyAt, inside, steps.problems, where)
  if (node) steps.places.set(node, { located, keyAt, where })
  return node
}
