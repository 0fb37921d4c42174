// Who answers in a rehearsal, when, and what.
import type { PotCommand } from '../core/pot/commands.ts'
import type { Answer, By } from '../core/pot/events.ts'
import type { ActiveStep, LiveState } from '../core/pot/state.ts'
import type { Grade, Question, Step, Until } from '../core/protocol/model.ts'
import { stepAt } from '../core/protocol/tree.ts'

/** How the person answers. `delayMs`: after the call, for a step. `answer`: own answer to a question, or null for the
 * hoped-for one. */
export type RehearsalPerson = {
  delayMs(step: Step): number
  answer(step: Step, question: Question): Answer | null
}

export const BY_REHEARSAL: By = { kind: 'person', name: 'rehearsal', via: 'tap' }

const MIN = 60_000
/** What slow and forgetful are is made up: nobody was measured. */
const SLOW_MS = 2 * MIN
const FORGOTTEN_MS = 12 * MIN
const FORGETS_ONE_OF = 4

/** Answers at the cue, and finds what is hoped for. */
export const promptPerson: RehearsalPerson = { delayMs: () => 0, answer: () => null }
/** Comes two minutes after each call. */
export const slowPerson: RehearsalPerson = { delayMs: () => SLOW_MS, answer: () => null }
/** Answers at once, but forgets one act in four or so for twelve minutes; always the same ones. */
export const forgetfulPerson: RehearsalPerson = {
  delayMs: ({ path }) => (lot(path) % FORGETS_ONE_OF === 0 ? FORGOTTEN_MS : 0),
  answer: () => null
}

/** A number that a text always gives again (FNV-1a, 32 bits, on UTF-16 units). */
function lot(text: string): number {
  let hash = 0x811c9dc5
  for (let at = 0; at < text.length; at++) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193) >>> 0
  return hash >>> 8
}

/** What the person is to do next in a pot, and when, if both hands are free. */
export type Deed = { atMs: number; active: ActiveStep; step: Step }

export function nextDeed(live: LiveState, person: RehearsalPerson): Deed | null {
  let first: Deed | null = null
  for (const active of live.active) {
    const step = stepAt(live.programme, active.path)
    if (!step || active.dueAtMs === null || openUntil(active, step) === undefined) continue
    const atMs = active.dueAtMs + person.delayMs(step)
    if (!first || atMs < first.atMs) first = { atMs, active, step }
  }
  return first
}

/** What a person has to bring: null for the step itself, a condition of a wait, or undefined for nothing. */
function openUntil(active: ActiveStep, step: Step): Until | null | undefined {
  if (!step.wait) return null
  return step.wait.until.find((u, i) => u.kind !== 'moment' && !active.met.includes(i))
}

/** The command by which the deed is done; `tempC` is what a thermometer shows then. */
export function commandFor(
  live: LiveState,
  { active, step }: Deed,
  person: RehearsalPerson,
  tempC: number
): PotCommand {
  const { path } = step
  const answerTo = (question: Question): Answer => person.answer(step, question) ?? hopedFor(question, tempC)
  const missing = step.records.find((item) => (live.recorded[item] ?? 0) < active.startedAtMs)
  if (missing && step.behaviour !== 'ask') return recordCommand(path, missing, tempC)
  if (step.behaviour === 'ask' && step.question) return { type: 'AnswerStep', path, answer: answerTo(step.question) }
  if (step.ramp) return { type: 'ReadTemperature', tempC }
  const until = openUntil(active, step)
  if (until?.kind === 'temperature') return { type: 'ReadTemperature', tempC }
  if (until?.kind === 'judgement') return { type: 'AnswerStep', path, answer: answerTo(until.question) }
  return { type: 'MarkDone', path }
}

function recordCommand(path: string, item: Step['records'][number], tempC: number): PotCommand {
  switch (item) {
    case 'temperature':
      return { type: 'ReadTemperature', tempC }
    case 'ph':
      return { type: 'ReadPh', reading: { kind: 'unreadable' } }
    case 'residue':
      return { type: 'Judge', of: 'bath', grade: 'clear', hue: null }
    case 'photo':
      return { type: 'NotePhoto', what: 'rehearsal' }
    case 'note':
      return { type: 'WriteNote', text: 'rehearsal' }
    case 'level':
    case 'wet mass':
    case 'dry mass':
      return { type: 'AnswerStep', path, answer: { kind: 'text', text: 'rehearsal' } }
  }
}

/** The answer that lets the programme go on. */
function hopedFor(question: Question, tempC: number): Answer {
  switch (question.kind) {
    case 'grade':
      return { kind: 'grade', grade: (question.enough ?? 'clear') satisfies Grade, hue: null }
    case 'temperature':
      return { kind: 'temperature', tempC: within(tempC, question.lowC, question.highC) }
    case 'ph':
      return { kind: 'ph', reading: { kind: 'value', ph: within(5, question.low, question.high) } }
    case 'number':
      return { kind: 'number', value: within(0, question.low, question.high), unit: question.unit }
    case 'choice':
      return { kind: 'choice', answer: question.answers[0]?.id ?? '' }
    case 'text':
      return { kind: 'text', text: 'rehearsal' }
  }
}

function within(value: number, low: number | null, high: number | null): number {
  return Math.min(high ?? value, Math.max(low ?? value, value))
}
