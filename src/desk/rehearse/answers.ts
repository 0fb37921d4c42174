// Answers that a file gives in the place of the hoped-for ones.
import { parse } from 'yaml'
import type { Answer } from '../../core/pot/events.ts'
import type { Grade, Question, Step } from '../../core/protocol/model.ts'
import { grades } from '../../core/protocol/model.ts'
import type { RehearsalPerson } from '../../session/rehearsal-person.ts'
import { Complaint, readText } from './given.ts'

/** Answers by step id or path, each a word, a number or a list of them used in turn. */
export function personFrom(file: string): RehearsalPerson {
  const raw: unknown = parse(readText(file), { maxAliasCount: 0 })
  if (raw === null || typeof raw !== 'object' || Array.isArray(raw)) {
    throw new Complaint(`${file}: write a map of step id to answer, such as "clear: [half, trace]"`)
  }
  const left = new Map(Object.entries(raw).map(([key, given]) => [key, Array.isArray(given) ? [...given] : [given]]))
  return {
    delayMs: () => 0,
    answer(step, question) {
      const keys = [step.path, step.id, ...step.path.split('/').map((part) => part.replace(/\[\d+\]$/, ''))]
      const key = keys.find((k) => (left.get(k)?.length ?? 0) > 0)
      return key === undefined ? null : answerOf(file, step, question, left.get(key)?.shift())
    }
  }
}

function answerOf(file: string, step: Step, question: Question, given: unknown): Answer {
  const word = String(given)
  const number = Number(given)
  const bad = (instead: string): Complaint =>
    new Complaint(`${file}: ${step.path} can't be answered "${word}": ${instead}`)
  switch (question.kind) {
    case 'grade':
      if (!(grades as readonly string[]).includes(word)) throw bad(`one of ${grades.join(', ')}`)
      return { kind: 'grade', grade: word as Grade, hue: null }
    case 'temperature':
      if (!Number.isFinite(number)) throw bad('a temperature in °C')
      return { kind: 'temperature', tempC: number }
    case 'ph':
      if (!Number.isFinite(number)) throw bad('a pH such as 4.5')
      return { kind: 'ph', reading: { kind: 'value', ph: number } }
    case 'number':
      if (!Number.isFinite(number)) throw bad('a number')
      return { kind: 'number', value: number, unit: question.unit }
    case 'choice':
      return { kind: 'choice', answer: word }
    case 'text':
      return { kind: 'text', text: word }
  }
}
