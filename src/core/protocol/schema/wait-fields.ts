// How a wait is written, and what it waits for.
import * as z from 'zod/mini'
import type { WaitDraft } from '../draft.ts'
import { grades, type Until } from '../model.ts'
import { nearest } from '../nearest.ts'
import type { FieldPath, Reading } from '../reading.ts'
import { type AsWritten, flag, line, oneOf, quantity, some } from './fields.ts'
import { phRange } from './ph.ts'
import type { SharedFields } from './shared.ts'

const condition = z.strictObject({
  time: z.optional(quantity('30 min', 'A length of time.')),
  after: z.optional(line(40, 'The moment that the time is counted from. For example: all in')),
  temperature: z.optional(quantity('40 °C', 'A temperature to reach.')),
  moment: z.optional(line(40, 'A moment to wait for. For example: all in')),
  person: z.optional(line(60, 'What a person is to see. For example: full steam')),
  grade: z.optional(line(40, 'What is judged, in five grades. For example: bath')),
  enough: z.optional(oneOf(grades, 'The grade that is good enough.')),
  ph: z.optional(quantity('4..5', 'A range of pH to reach.'))
})

const words = z.string().check(z.minLength(1), z.maxLength(120)).register(z.globalRegistry, {
  description: 'A time, a temperature, a moment, or what a person is to see. For example: 40 °C'
})
const term = z.union([words, condition], {
  error: 'write 10 min after all in, 40 °C, a moment, or fields such as {grade: bath, enough: trace}'
})

export const waitFields = {
  for: z.optional(quantity('25..30 min', 'How long.')),
  from: z.optional(
    line(40, 'The moment that the time is counted from, instead of the start of the step. For example: all in')
  ),
  until: z.optional(some(term, 6, 'What is waited for. All of it is needed.')),
  'at least': z.optional(quantity('4 min', 'How far a late arrival may shorten it, under late: absorb.')),
  expect: z.optional(quantity('10 min', 'How long it usually takes, where no clock tells.')),
  away: z.optional(flag('The dyer may be away meanwhile. Refused while the heat is on.'))
} as const

type WaitFields = {
  for?: AsWritten | undefined
  from?: string | undefined
  until?: Term | Term[] | undefined
  'at least'?: AsWritten | undefined
  expect?: AsWritten | undefined
}
type Condition = z.output<typeof condition>
type Term = string | Condition

/** The parts of a wait as they are gathered from its terms. */
type Parts = { forMs: number | null; graceMs: number | null; from: string | null; until: Until[] }

/** Reads `for`, `from`, `until` and `at least`. `cools`: a bare temperature is waited for from above. */
export function readWait(fields: WaitFields & SharedFields, r: Reading, cools: boolean): WaitDraft {
  const parts: Parts = { forMs: null, graceMs: 0, from: null, until: [] }
  if (fields.for !== undefined) takeTime(parts, fields.for, ['for'], r)
  if (fields.from !== undefined) parts.from = knownMoment(fields.from, ['from'], r)
  const own = [fields.id, ...(Array.isArray(fields.marks) ? fields.marks : [fields.marks])]
  for (const [term, at] of termsOf(fields.until)) {
    if (typeof term === 'string') takeWords(parts, term, at, r, cools, own)
    else takeCondition(parts, term, at, r, cools)
  }
  const leastMs = r.ms(fields['at least'], ['at least']) ?? 0
  if (parts.forMs !== null && leastMs > parts.forMs) {
    r.say(['at least'], 'least-over-most', 'The least is longer than the wait.', 'write a time shorter than for')
  }
  if (parts.from !== null && parts.forMs === null && r.problems.length === 0) {
    r.say(['from'], 'nothing-to-wait-for', 'from is given, but no time.', 'add for, for example for: 10 min')
  }
  if (parts.forMs === null && parts.until.length === 0 && r.problems.length === 0) {
    r.say([], 'nothing-to-wait-for', 'Nothing ends this wait.', 'give for: 10 min, or until: 40 °C')
  }
  return { ...parts, leastMs, expectMs: r.ms(fields.expect, ['expect']) }
}

function termsOf(until: WaitFields['until']): [Term, FieldPath][] {
  if (until === undefined) return []
  if (!Array.isArray(until)) return [[until, ['until']]]
  return until.map((term, i) => [term, ['until', i]])
}

function takeTime(parts: Parts, written: AsWritten, at: FieldPath, r: Reading): void {
  const duration = r.duration(written, at)
  if (!duration) return
  if (parts.forMs !== null) {
    r.say(at, 'two-times', 'This wait has two lengths of time.', 'keep one; use at least and a range for both ends')
    return
  }
  parts.forMs = duration.lowMs
  parts.graceMs = duration.highMs === null ? null : duration.highMs - duration.lowMs
}

const asTemperature = /[°º℃℉]|\d ?[cf](?![a-z])|\bboil\b|\bdegrees?\b/i
const asTime = /^(?:at least|at most|no less than|no more than|≥|>=|about|half an?\b|an hour|a quarter|~|[\d½¼¾])/i

const afterMoment = /^(.*\S) +after +(\S.*)$/

/** Whether words that stand alone can be a moment: what has a degree or begins like a time is read as such. */
export function isBareName(text: string): boolean {
  return !asTemperature.test(text) && !asTime.test(text)
}

/** The same words in pieces; a name that may be that of a moment ends its piece. `bare`: the piece is the name alone,
 * and not "10 min after" it. */
export function namePieces(words: string): { before: string; name: string | null; bare: boolean }[] {
  return words.split(/( +and +)/).map((piece) => {
    const text = piece.trim().replace(/^until +/, '')
    const after = afterMoment.exec(text)?.[2]
    const name = after ?? (text !== '' && text !== 'and' && isBareName(text) ? text : null)
    if (name === null || !piece.endsWith(name)) return { before: piece, name: null, bare: false }
    return { before: piece.slice(0, piece.length - name.length), name, bare: after === undefined }
  })
}

function takeWords(parts: Parts, words: string, at: FieldPath, r: Reading, cools: boolean, own: unknown[]): void {
  for (const piece of words.split(/ +and +/)) {
    const text = piece.trim().replace(/^until +/, '')
    const after = afterMoment.exec(text)
    if (after) {
      takeTime(parts, after[1] ?? '', at, r)
      parts.from = knownMoment(r.text(after[2] ?? '', at), at, r)
    } else if (asTemperature.test(text)) takeTemperature(parts, text, at, r, cools)
    else if (asTime.test(text)) takeTime(parts, text, at, r)
    else takeName(parts, r.text(text, at), at, r, own)
  }
}

/** A name that the protocol marks is a moment; any other words are for a person to see. */
function takeName(parts: Parts, text: string, at: FieldPath, r: Reading, own: unknown[]): void {
  if (r.scope.moments.has(text) && !own.includes(text)) {
    parts.until.push({ kind: 'moment', name: text })
    return
  }
  const others = [...r.scope.moments].filter((name) => !own.includes(name))
  const near = own.includes(text) ? null : nearest(text, others)
  if (near !== null) {
    r.say(
      at,
      'unknown-moment',
      `No step marks "${text}".`,
      `write ${near}, or {person: ${text}} for what a person sees`
    )
    return
  }
  parts.until.push({ kind: 'person', ask: text })
}

function takeTemperature(parts: Parts, text: AsWritten, at: FieldPath, r: Reading, cools: boolean): void {
  const range = r.range(text, at)
  if (!range) return
  const { boilC } = r.scope
  const lowC = range.boil ? boilC : range.lowC
  const highC = range.boil ? null : range.highC
  const down = lowC === null || (highC !== null && (cools || r.bathIsOver(highC)))
  const one = lowC === highC
  if (down) parts.until.push({ kind: 'temperature', lowC: one ? null : lowC, highC, going: 'down' })
  else parts.until.push({ kind: 'temperature', lowC: Math.min(lowC, boilC), highC: one ? null : highC, going: 'up' })
}

function takeCondition(parts: Parts, given: Condition, at: FieldPath, r: Reading, cools: boolean): void {
  const before = parts.until.length + (parts.forMs === null ? 0 : 1)
  const problems = r.problems.length
  if (given.time !== undefined) takeTime(parts, given.time, [...at, 'time'], r)
  if (given.after !== undefined) parts.from = knownMoment(given.after, [...at, 'after'], r)
  if (given.temperature !== undefined) takeTemperature(parts, given.temperature, [...at, 'temperature'], r, cools)
  if (given.moment !== undefined) {
    const name = knownMoment(given.moment, [...at, 'moment'], r)
    if (name !== null) parts.until.push({ kind: 'moment', name })
  }
  if (given.person !== undefined) parts.until.push({ kind: 'person', ask: r.text(given.person, [...at, 'person']) })
  if (given.grade !== undefined) {
    if (given.enough === undefined) {
      r.say(at, 'missing-field', 'enough is missing: which grade ends the wait?', `add enough: ${grades.join(', ')}`)
    }
    const question = { kind: 'grade', of: r.text(given.grade, [...at, 'grade']), enough: given.enough ?? null } as const
    parts.until.push({ kind: 'judgement', question })
  }
  if (given.ph !== undefined) {
    const range = phRange(given.ph, [...at, 'ph'], r)
    if (range) parts.until.push({ kind: 'judgement', question: { kind: 'ph', ...range } })
  }
  const after = parts.until.length + (parts.forMs === null ? 0 : 1)
  if (after === before && r.problems.length === problems) {
    r.say(
      at,
      'nothing-to-wait-for',
      'This condition says nothing to wait for.',
      'give time, temperature, moment, person, grade or ph'
    )
  }
}

function knownMoment(written: string, at: FieldPath, r: Reading): string | null {
  const name = r.text(written, at)
  if (r.scope.moments.has(name)) return name
  const near = nearest(name, r.scope.moments)
  const instead = near !== null ? `write ${near}` : 'give the step an id, or marks: with this name'
  r.say(at, 'unknown-moment', `No step marks "${name}".`, instead)
  return null
}
