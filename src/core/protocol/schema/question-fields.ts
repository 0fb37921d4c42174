// A question to a person: a judgement, a reading, or a choice of words.
import * as z from 'zod/mini'
import { grades, type Question } from '../model.ts'
import type { FieldPath, Reading } from '../reading.ts'
import { type AsWritten, line, oneOf, quantity } from './fields.ts'
import { toleranceC } from './hold-at.ts'
import { phRange } from './ph.ts'

export const questionFields = {
  grade: z.optional(line(40, 'What is judged, in five grades. For example: bath')),
  enough: z.optional(oneOf(grades, 'The grade that is good enough.')),
  temperature: z.optional(quantity('85..90 °C', 'A temperature to read, and the range it should lie in.')),
  reached: z.optional(quantity('85 °C', 'A temperature that must be reached.')),
  ph: z.optional(quantity('4..5', 'The pH to read, and the range it should lie in.')),
  question: z.optional(line(80, 'A question in your own words. For example: Is the bath clear?')),
  answers: z.optional(
    z
      .array(line(30, 'An answer. For example: Not yet'), { error: 'write a list of two to six answers' })
      .check(z.minLength(2), z.maxLength(6))
      .register(z.globalRegistry, {
        description: 'What can be answered; the first is the one that is wanted. For example: [Clear, Not yet]'
      })
  )
} as const

type QuestionFields = {
  grade?: string | undefined
  enough?: (typeof grades)[number] | undefined
  temperature?: AsWritten | undefined
  reached?: AsWritten | undefined
  ph?: AsWritten | undefined
  question?: string | undefined
  answers?: string[] | undefined
}

/** Reads the one question that is asked. The first of several given is taken. */
export function readQuestion(fields: QuestionFields, at: FieldPath, r: Reading): Question | null {
  if (fields.grade !== undefined) {
    return { kind: 'grade', of: r.text(fields.grade, [...at, 'grade']), enough: fields.enough ?? null }
  }
  if (fields.reached !== undefined) return reached(fields.reached, [...at, 'reached'], r)
  if (fields.temperature !== undefined) return between(fields.temperature, [...at, 'temperature'], r)
  if (fields.ph !== undefined) {
    const range = phRange(fields.ph, [...at, 'ph'], r)
    return range && { kind: 'ph', ...range }
  }
  if (fields.question !== undefined) {
    const ask = r.text(fields.question, [...at, 'question'])
    const labels = fields.answers ?? ['Yes', 'No']
    return { kind: 'choice', ask, answers: labels.map((label) => ({ id: answerId(label), label })) }
  }
  r.say(at, 'missing-field', 'Nothing is asked.', 'give grade: bath, reached: 85 °C, ph: 4..5 or question: …')
  return null
}

/** An id from a label: "Not yet" is not-yet. */
export function answerId(label: string): string {
  const id = label
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
  return id === '' ? 'answer' : id
}

function reached(written: AsWritten, at: FieldPath, r: Reading): Question | null {
  const range = r.range(written, at)
  if (!range) return null
  const lowC = range.boil ? r.scope.boilC : range.lowC
  return { kind: 'temperature', lowC: lowC === null ? null : Math.min(lowC, r.scope.boilC), highC: null }
}

function between(written: AsWritten, at: FieldPath, r: Reading): Question | null {
  const range = r.range(written, at)
  if (!range) return null
  if (range.boil) return { kind: 'temperature', lowC: r.scope.boilC - toleranceC, highC: null }
  const bare = range.lowC !== null && range.lowC === range.highC
  const { lowC, highC } = range
  return bare
    ? { kind: 'temperature', lowC: (lowC ?? 0) - toleranceC, highC: (highC ?? 0) + toleranceC }
    : { kind: 'temperature', lowC, highC }
}

export function wordsOf(question: Question): { call: string; knot: string; done: string } {
  switch (question.kind) {
    case 'grade':
      return { call: `Judge the ${question.of}`, knot: 'Judge', done: 'judged' }
    case 'temperature':
      return { call: 'Read the temperature', knot: 'Temperature', done: 'read' }
    case 'ph':
      return { call: 'Test the pH', knot: 'pH', done: 'tested' }
    case 'number':
    case 'choice':
    case 'text':
      return { call: question.ask, knot: 'Answer', done: 'answered' }
  }
}
