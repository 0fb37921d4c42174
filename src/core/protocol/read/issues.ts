// From what a schema refuses to a problem in a writer's words, at its place.
import type * as z from 'zod/mini'
import { nearest, suggest } from '../nearest.ts'
import type { ProblemCode } from '../problem-codes.ts'
import { onOneLine, onSeveralLines } from '../source/characters.ts'
import { entryOf, type Located, type Place, placeAt, plain } from '../source/located.ts'
import { type Problems, whereOf } from './problems.ts'

type Issue = z.core.$ZodIssue
type Path = (string | number)[]

/** What was read, and what it is called in a message. */
export type Subject = { located: Located; keyAt: Place; where: string; called: string; schema: z.ZodMiniType }

export function sayIssues(issues: readonly Issue[], subject: Subject, problems: Problems, below: Path = []): void {
  for (const issue of issues) sayIssue(issue, subject, problems, below)
}

function sayIssue(issue: Issue, subject: Subject, problems: Problems, below: Path): void {
  const path: Path = [...below, ...issue.path.map((part) => (typeof part === 'symbol' ? String(part) : part))]
  const { located, keyAt, where, called, schema } = subject
  const value = valueAt(located, path)
  const field = whereOf('', path)
  const name = field === '' ? called : `${called}: ${field}`
  const say = (at: Place, code: ProblemCode, what: string, instead: string, more: Path = []): void =>
    problems.say(at, whereOf(where, [...path, ...more]), code, what, instead)
  const advice = issue.message === 'Invalid input' ? 'look at the language reference' : issue.message
  if (issue.code === 'unrecognized_keys') {
    const known = keysOf(schema, path)
    for (const key of issue.keys) {
      const owner = nodeAt(located, path)
      const at = entryOf(owner, key)?.keyAt ?? keyAt
      const near = nearest(key, known)
      say(at, 'unknown-field', `${name} has no field ${key}.`, near ? `write ${near}` : `fields: ${known.join(', ')}`, [
        key
      ])
    }
    return
  }
  if (value === undefined || value === null) {
    const at = value === undefined && path.length <= 1 ? keyAt : placeAt(located, path, keyAt)
    const what = value === null ? `${name} has no value.` : `${name} is missing.`
    say(at, 'missing-field', what, advice.replace(/^write /, `add ${path.at(-1) ?? 'it'}: `))
    return
  }
  const at = placeAt(located, path, keyAt)
  if (issue.code === 'invalid_union' && issue.errors.length > 0) {
    const fitting = issue.errors.find((errors) => errors.some((e) => e.path.length > 0 || e.code !== 'invalid_type'))
    if (fitting && typeof value === 'object') {
      sayIssues(fitting, subject, problems, path)
      return
    }
  }
  const [code, what, instead] = refusal(issue, value, advice)
  say(issue.code === 'invalid_key' ? keyPlace(located, path, at) : at, code, `${name} ${what}.`, instead)
}

function refusal(issue: Issue, value: unknown, advice: string): [ProblemCode, string, string] {
  const found = typeof value === 'object' ? 'it' : `"${String(value).slice(0, 60)}"`
  switch (issue.code) {
    case 'invalid_value':
      if (typeof value === 'object') return ['wrong-kind', 'is of the wrong kind', advice]
      return ['unknown-value', `can't be ${found}`, suggest(String(value), issue.values.map(String), 'one of')]
    case 'too_big':
      if (issue.origin === 'string') {
        return ['too-long-text', 'is too long', `write at most ${issue.maximum} letters`]
      }
      return ['out-of-limits', 'is too large', `at most ${issue.maximum}`]
    case 'too_small':
      return ['out-of-limits', issue.origin === 'number' ? 'is too small' : 'is empty', `at least ${issue.minimum}`]
    case 'invalid_format': {
      const pattern = 'pattern' in issue ? String(issue.pattern) : ''
      const oneLine = pattern === String(onOneLine) || pattern === String(onSeveralLines)
      if (oneLine) return ['wrong-kind', 'runs over several lines', 'write it on one line']
      return ['bad-name', `can't be ${found}`, 'a name has letters, digits, - and _, no "and", "after" or "until"']
    }
    case 'invalid_key':
      return ['bad-name', 'is no name', 'begin with a letter or digit; at most 40 letters, digits, spaces, - and _']
    case 'custom':
      return ['out-of-limits', 'is outside its limits', advice]
    default:
      return ['wrong-kind', 'is of the wrong kind', advice]
  }
}

function nodeAt(located: Located, path: Path): Located | null {
  let here: Located | null = located
  for (const part of path) {
    if (here === null) return null
    here = here.kind === 'list' ? (here.items[Number(part)] ?? null) : (entryOf(here, String(part))?.value ?? null)
  }
  return here
}

function valueAt(located: Located, path: Path): unknown {
  const node = nodeAt(located, path)
  return node === null ? undefined : plain(node)
}

function keyPlace(located: Located, path: Path, usual: Place): Place {
  const owner = nodeAt(located, path.slice(0, -1))
  return entryOf(owner, String(path.at(-1)))?.keyAt ?? usual
}

/** The field names that a schema has at a path. */
function keysOf(schema: z.ZodMiniType, path: Path): string[] {
  const def = schema._zod.def as unknown as {
    type: string
    innerType?: z.ZodMiniType
    element?: z.ZodMiniType
    valueType?: z.ZodMiniType
    options?: z.ZodMiniType[]
    shape?: Record<string, z.ZodMiniType>
  }
  if (def.innerType) return keysOf(def.innerType, path)
  if (def.options) return def.options.flatMap((option) => keysOf(option, path))
  const [first, ...rest] = path
  if (first === undefined) return def.shape ? Object.keys(def.shape) : []
  const inner = def.element ?? def.valueType ?? def.shape?.[String(first)]
  return inner ? keysOf(inner, rest) : []
}
