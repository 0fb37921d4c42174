// Readings, judgements, and the answers that steps wait for.
import type { Question, Step, Wait } from '../../protocol/model.ts'
import { grades } from '../../protocol/model.ts'
import { stepAt } from '../../protocol/tree.ts'
import { afterRoundAsk, askOwner, closeStep, settle, takeBranch } from '../advance.ts'
import type { PotCommand, Refusal } from '../commands.ts'
import type { Answer, PhReading, PotEvent } from '../events.ts'
import type { ActiveStep } from '../state.ts'
import { refuse, type Telling } from '../tell.ts'
import { lacksOnlyMoments, rereadMs } from '../timing.ts'
import { openStep, settleWait } from './steps.ts'

/** A reading outside its range is taken again after this. Common practice, no source. */
const REREAD_OUTSIDE_MS = 5 * 60_000

type Of<T extends PotCommand['type']> = Extract<PotCommand, { type: T }>

export function answerStep(t: Telling, { path, answer }: Of<'AnswerStep'>): Refusal | null {
  const open = openStep(t, path)
  if ('code' in open) return open
  const { active, step } = open
  const bad = badAnswer(answer)
  if (bad) return bad
  if (step.behaviour === 'ask' && step.question) return answerAsk(t, active, step, step.question, answer)
  if (answer.kind === 'temperature') return readTemperature(t, answer.tempC, path)
  const question = judgedBy(step, active)
  if (question) {
    if (question.q.kind !== answer.kind) return wrongKind(step, question.q)
    record(t, path, answer, inRange(question.q, answer), question.q)
    if (inRange(question.q, answer) !== false) {
      t.tell({ type: 'ConditionMet', path, index: question.index })
      settleWait(t, step)
    } else putOff(t, step, t.atMs + rereadMs(t.run.programme, step, 0))
    return null
  }
  if (step.records.length > 0) {
    record(t, path, answer, null, null)
    return null
  }
  return refuse('wrong-answer', `${step.knot} asks for no answer.`).refusal
}

function answerAsk(t: Telling, active: ActiveStep, step: Step, question: Question, answer: Answer): Refusal | null {
  if (question.kind !== answer.kind) return wrongKind(step, question)
  if (question.kind === 'choice' && answer.kind === 'choice' && !question.answers.some((a) => a.id === answer.answer)) {
    const known = question.answers.map((a) => a.label).join(', ')
    return refuse('wrong-answer', `Answer with one of: ${known}.`).refusal
  }
  const good = inRange(question, answer)
  record(t, step.path, answer, good, question)
  const owner = active.side ? null : askOwner(t, step)
  if (owner?.node === 'rounds') {
    afterRoundAsk(t, owner, good ?? true, settle(t, active, step, 'answered', null))
    return null
  }
  if (owner?.node === 'choice' && answer.kind === 'choice') {
    takeBranch(t, owner, answer.answer, settle(t, active, step, 'answered', null))
    return null
  }
  const outside = step.setPoint?.outside ?? 'note'
  if (good === false && outside === 'again') {
    putOff(t, step, t.atMs + REREAD_OUTSIDE_MS)
    return null
  }
  if (good === false && outside === 'off-protocol') {
    t.tell({ type: 'WentOffProtocol', path: step.path, why: `${step.knot}: outside its range` })
  }
  closeStep(t, active, 'answered', null)
  return null
}

function putOff(t: Telling, step: Step, dueAtMs: number): void {
  const active = t.run.active.find((a) => a.path === step.path)
  if (!active) return
  const { timeDueAtMs, lateAfterMs: late, path, remainingMs } = active
  const lateAfterMs = late === null ? null : Math.max(late, dueAtMs + 60_000)
  t.tell({ type: 'DueMoved', path, dueAtMs, timeDueAtMs, lateAfterMs, remainingMs, why: 'reading', reason: null })
}

function wrongKind(step: Step, question: Question): Refusal {
  return refuse('wrong-answer', `${step.knot} asks for a ${question.kind}.`).refusal
}

function judgedBy(step: Step, active: ActiveStep): { q: Question; index: number } | null {
  const until = step.wait?.until ?? []
  const index = until.findIndex((u, i) => u.kind === 'judgement' && !active.met.includes(i))
  const found = until[index]
  return found?.kind === 'judgement' ? { q: found.question, index } : null
}

/** Is the answer what the question hopes for? Null where it hopes for nothing. */
export function inRange(question: Question, answer: Answer): boolean | null {
  switch (question.kind) {
    case 'grade':
      if (answer.kind !== 'grade' || question.enough === null) return null
      return grades.indexOf(answer.grade) <= grades.indexOf(question.enough)
    case 'temperature':
      return answer.kind === 'temperature' ? within(answer.tempC, question.lowC, question.highC) : null
    case 'ph':
      if (answer.kind !== 'ph' || answer.reading.kind === 'unreadable') return null
      if (answer.reading.kind === 'value') return within(answer.reading.ph, question.low, question.high)
      return (
        within(answer.reading.low, question.low, question.high) &&
        within(answer.reading.high, question.low, question.high)
      )
    case 'number':
      return answer.kind === 'number' ? within(answer.value, question.low, question.high) : null
    case 'choice':
      // Of a loop's question the first answer is the one that ends it.
      return answer.kind === 'choice' ? answer.answer === question.answers[0]?.id : null
    case 'text':
      return null
  }
}

function within(value: number, low: number | null, high: number | null): boolean {
  return (low === null || value >= low) && (high === null || value <= high)
}

/** Bounds of what a kitchen thermometer, a strip and a person can say; beyond them it is a slip of the finger. */
function badAnswer(answer: Answer): Refusal | null {
  if (answer.kind === 'temperature' && !(answer.tempC >= -10 && answer.tempC <= 120)) {
    return refuse('out-of-range', 'A bath lies between -10 and 120 °C.').refusal
  }
  if (answer.kind === 'ph') return badPh(answer.reading)
  if (answer.kind === 'number' && !Number.isFinite(answer.value)) {
    return refuse('out-of-range', 'That is not a number.').refusal
  }
  if (answer.kind === 'text' && !answer.text.trim()) return refuse('wrong-answer', 'The answer is empty.').refusal
  return null
}

function badPh(reading: PhReading): Refusal | null {
  const ok = (ph: number): boolean => ph >= 0 && ph <= 14
  const good =
    reading.kind === 'unreadable' ||
    (reading.kind === 'value' ? ok(reading.ph) : ok(reading.low) && ok(reading.high) && reading.low <= reading.high)
  return good ? null : refuse('out-of-range', 'pH lies between 0 and 14.').refusal
}

function record(t: Telling, path: string, answer: Answer, good: boolean | null, question: Question | null): void {
  t.tell({ type: 'Answered', path, answer, inRange: good })
  if (answer.kind === 'temperature') t.tell({ type: 'TemperatureRead', path, tempC: answer.tempC, inRange: good })
  if (answer.kind === 'ph') t.tell(phRead(path, answer))
  if (answer.kind === 'grade') {
    const of = question?.kind === 'grade' ? question.of : 'bath'
    t.tell(judged(path, of, answer))
  }
}

export function readPh(t: Telling, command: Of<'ReadPh'>): Refusal | null {
  const bad = badPh(command.reading)
  if (!bad) t.tell(phRead(null, command))
  return bad
}

function phRead(path: string | null, { reading, lot }: Pick<Of<'ReadPh'>, 'reading' | 'lot'>): PotEvent {
  const noted = lot?.trim()
  return { type: 'PhRead', path, reading, ...(noted ? { lot: noted } : {}) }
}

export function judge(t: Telling, command: Of<'Judge'>): Refusal | null {
  t.tell(judged(null, command.of, command))
  return null
}

function judged(path: string | null, of: string, { grade, hue, cups }: Omit<Of<'Judge'>, 'type' | 'of'>): PotEvent {
  return { type: 'Judged', path, of, grade, hue, ...(cups && { cups }) }
}

/** A thermometer reading: said once, heard by every open step that waits for one. */
export function readTemperature(t: Telling, tempC: number, path: string | null): Refusal | null {
  const bad = badAnswer({ kind: 'temperature', tempC })
  if (bad) return bad
  const asked = path === null ? null : stepAt(t.run.programme, path)
  const range = asked?.ramp ?? asked?.setPoint ?? null
  const good = range ? within(tempC, range.lowC, range.highC) : null
  t.tell({ type: 'TemperatureRead', path, tempC, inRange: good })
  if (t.run.trouble) return null
  for (const active of [...t.run.active]) {
    const step = stepAt(t.run.programme, active.path)
    if (step) heed(t, active, step, tempC)
  }
  return null
}

function heed(t: Telling, active: ActiveStep, step: Step, tempC: number): void {
  const { ramp, wait, setPoint } = step
  const held = 'heldSinceMs' in t.run
  if (ramp && !held) {
    if (tempC >= ramp.lowC) closeStep(t, active, 'reading', null)
    else reread(t, step, tempC)
    return
  }
  const index = wait?.until.findIndex((u, i) => u.kind === 'temperature' && !active.met.includes(i)) ?? -1
  const until = wait?.until[index]
  if (until?.kind === 'temperature') {
    if (held) return
    if (until.going === 'down' ? tempC <= (until.highC ?? 200) : tempC >= (until.lowC ?? -200)) {
      t.tell({ type: 'ConditionMet', path: step.path, index })
      settleWait(t, step)
    } else reread(t, step, tempC)
    return
  }
  if (setPoint && wait) heedSetPoint(t, active, step, tempC)
}

/** The next reading is expected later; a wait's own time is never cut short by it. */
function reread(t: Telling, step: Step, tempC: number): void {
  const active = t.run.active.find((a) => a.path === step.path)
  putOff(t, step, Math.max(active?.timeDueAtMs ?? 0, t.atMs + rereadMs(t.run.programme, step, tempC)))
}

function heedSetPoint(t: Telling, active: ActiveStep, step: Step, tempC: number): void {
  const { setPoint, path } = step
  if (!setPoint || !step.wait) return
  const good = within(tempC, setPoint.lowC, setPoint.highC)
  if (!good && setPoint.outside === 'off-protocol') {
    t.tell({ type: 'WentOffProtocol', path, why: `${step.knot}: outside its range` })
  }
  if (setPoint.outside === 'stop-count') countInRange(t, active, step.wait, good)
}

/** Time outside the range does not count towards a wait. Until a reading is back in range, the next one is called for:
 * a count that stands still must not stand in silence. */
function countInRange(t: Telling, active: ActiveStep, wait: Wait, good: boolean): void {
  const { path, timeDueAtMs, remainingMs: left } = active
  const counting = timeDueAtMs !== null && timeDueAtMs > t.atMs
  if (good && left !== null) {
    const overAtMs = t.atMs + left
    const dueAtMs = lacksOnlyMoments(t.run, active, wait) ? null : overAtMs
    const more = { lateAfterMs: null, remainingMs: null, why: 'inside-range', reason: null } as const
    t.tell({ type: 'DueMoved', path, dueAtMs, timeDueAtMs: overAtMs, ...more })
  }
  const remainingMs = left ?? (counting ? timeDueAtMs - t.atMs : null)
  if (!good && remainingMs !== null) {
    const dueAtMs = t.atMs + REREAD_OUTSIDE_MS
    const more = { lateAfterMs: null, remainingMs, why: 'outside-range', reason: null } as const
    t.tell({ type: 'DueMoved', path, dueAtMs, timeDueAtMs: null, ...more })
  }
}
