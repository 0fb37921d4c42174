// What a person finds when asked: what is hoped for, or anything else.
import type { Answer, PhReading } from '../../src/core/pot/events.ts'
import { grades, type Question } from '../../src/core/protocol/model.ts'
import type { Chance } from './chance.ts'

/** An answer that ends the question as hoped. */
export function hopedFor(question: Question): Answer {
  const between = (low: number | null, high: number | null, usual: number): number =>
    Math.min(high ?? usual, Math.max(low ?? usual, usual))
  switch (question.kind) {
    case 'grade':
      return { kind: 'grade', grade: question.enough ?? 'clear', hue: null }
    case 'temperature':
      return { kind: 'temperature', tempC: between(question.lowC, question.highC, 50) }
    case 'ph':
      return { kind: 'ph', reading: { kind: 'value', ph: between(question.low, question.high, 5) } }
    case 'number':
      return { kind: 'number', value: between(question.low, question.high, 7), unit: question.unit }
    case 'choice':
      return { kind: 'choice', answer: question.answers[0]?.id ?? '' }
    case 'text':
      return { kind: 'text', text: 'as hoped' }
  }
}

/** Any answer of the right kind; now and then one that can't be. */
export function anyAnswer(chance: Chance, question: Question): Answer {
  switch (question.kind) {
    case 'grade':
      return { kind: 'grade', grade: chance.pick(grades), hue: chance.of(0.3) ? 'red' : null }
    case 'temperature':
      return { kind: 'temperature', tempC: chance.of(0.05) ? 400 : chance.whole(20, 95) }
    case 'ph':
      return { kind: 'ph', reading: anyPh(chance) }
    case 'number':
      return { kind: 'number', value: chance.of(0.05) ? Number.NaN : chance.whole(0, 20), unit: question.unit }
    case 'choice':
      return { kind: 'choice', answer: chance.of(0.05) ? 'nobody asked' : chance.pick(question.answers).id }
    case 'text':
      return { kind: 'text', text: chance.of(0.1) ? ' ' : 'pale at the tips' }
  }
}

export function anyPh(chance: Chance): PhReading {
  const kind = chance.pick(['value', 'between', 'unreadable'] as const)
  if (kind === 'unreadable') return { kind }
  if (kind === 'value') return { kind, ph: chance.whole(30, 80) / 10 }
  const low = chance.whole(3, 8)
  return { kind, low, high: chance.of(0.1) ? low - 1 : low + 1 }
}
