// A programme run from start to end on a simulated clock by a simulated person, through the real engine.
import type { PotCommand } from '../core/pot/commands.ts'
import { decide } from '../core/pot/decide.ts'
import type { Answer, By, PotEvent, PotIdentity, ProtocolText } from '../core/pot/events.ts'
import { evolve } from '../core/pot/evolve.ts'
import { nextDue } from '../core/pot/next-due.ts'
import type { ActiveStep, LiveState, PotState } from '../core/pot/state.ts'
import type { Grade, Programme, Question, Step, Until } from '../core/protocol/model.ts'
import { stepAt } from '../core/protocol/tree.ts'
import { SimulatedBath } from './simulated-bath.ts'

export type Told = { atMs: number; commandId: string; by: By; event: PotEvent }

/** How the person answers. `delayMs`: after the call, for a step. `answer`: own answer to a question, or null for the
 * hoped-for one. */
export type RehearsalPerson = {
  delayMs(step: Step): number
  answer(step: Step, question: Question): Answer | null
}

/** Answers at the cue, and finds what is hoped for. */
export const promptPerson: RehearsalPerson = { delayMs: () => 0, answer: () => null }

export type Rehearsal = {
  told: Told[]
  state: PotState
  /** The end of the last step, ms after the start; null when it did not come to an end. */
  endedAfterMs: number | null
  /** Why it stopped short, if it did. */
  stuck: string | null
}

/** No rehearsal needs more turns than this; one that does goes in circles. */
const TURNS_MOST = 60_000
const BY: By = { kind: 'person', name: 'rehearsal', via: 'tap' }

/** Runs the whole programme from `startMs`. Heating goes at the stated rate, cooling by Newton's law with the
 * programme's constant. Never throws; a programme that can't be ended says where it is stuck. */
export function rehearse(
  programme: Programme,
  pot: PotIdentity,
  protocol: ProtocolText,
  startMs: number,
  person: RehearsalPerson = promptPerson
): Rehearsal {
  const run = new RehearsedPot(programme, startMs)
  run.send({ type: 'Start', pot, protocol, programme, checks: [], cautionsShown: [] }, BY)
  for (let turn = 0; turn < TURNS_MOST; turn++) {
    const live = run.live()
    if (!live) break
    if (live.stepsDone) {
      run.send({ type: 'Finish', bath: 'dropped' }, BY)
      continue
    }
    const stuck = takeTurn(run, live, person)
    if (stuck) return { told: run.told, state: run.state, endedAfterMs: null, stuck }
  }
  const end = run.told.findLast((e) => e.event.type === 'StepsDone')
  return { told: run.told, state: run.state, endedAfterMs: end ? end.atMs - startMs : null, stuck: null }
}

/** The next thing that happens: a due moment of the clock, or an answer of the person, whichever is first. */
function takeTurn(run: RehearsedPot, live: LiveState, person: RehearsalPerson): string | null {
  const due = nextDue(live)[0]
  const act = nextAct(live, person)
  if (due && (!act || due.atMs <= act.atMs)) {
    run.nowMs = Math.max(run.nowMs, due.atMs)
    run.send({ type: 'PassDue', key: due.key }, { kind: 'clock' }, due.atMs)
    return null
  }
  if (!act) return `stuck at ${live.active.map((a) => a.path).join(', ')}`
  run.nowMs = Math.max(run.nowMs, act.atMs)
  const command = commandFor(run, live, act.active, act.step, person)
  const refused = command ? run.send(command, BY) : 'nothing to answer'
  return refused ? `${act.step.path}: ${refused}` : null
}

type Act = { atMs: number; active: ActiveStep; step: Step }

function nextAct(live: LiveState, person: RehearsalPerson): Act | null {
  let first: Act | null = null
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

function commandFor(
  run: RehearsedPot,
  live: LiveState,
  active: ActiveStep,
  step: Step,
  person: RehearsalPerson
): PotCommand | null {
  const { path } = step
  const missing = step.records.find((item) => (live.recorded[item] ?? 0) < active.startedAtMs)
  if (missing && step.behaviour !== 'ask') return recordCommand(run, path, missing)
  if (step.behaviour === 'ask' && step.question) {
    return { type: 'AnswerStep', path, answer: person.answer(step, step.question) ?? hopedFor(run, step.question) }
  }
  if (step.ramp) return { type: 'ReadTemperature', tempC: run.bath.tempC(run.nowMs) }
  const until = openUntil(active, step)
  if (until?.kind === 'temperature') return { type: 'ReadTemperature', tempC: run.bath.tempC(run.nowMs) }
  if (until?.kind === 'judgement') {
    return { type: 'AnswerStep', path, answer: person.answer(step, until.question) ?? hopedFor(run, until.question) }
  }
  return { type: 'MarkDone', path }
}

function recordCommand(run: RehearsedPot, path: string, item: Step['records'][number]): PotCommand {
  switch (item) {
    case 'temperature':
      return { type: 'ReadTemperature', tempC: run.bath.tempC(run.nowMs) }
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
function hopedFor(run: RehearsedPot, question: Question): Answer {
  switch (question.kind) {
    case 'grade':
      return { kind: 'grade', grade: (question.enough ?? 'clear') satisfies Grade, hue: null }
    case 'temperature':
      return { kind: 'temperature', tempC: within(run.bath.tempC(run.nowMs), question.lowC, question.highC) }
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

class RehearsedPot {
  state: PotState = { status: 'idle' }
  readonly told: Told[] = []
  readonly bath: SimulatedBath
  nowMs: number
  #ids = 0

  constructor(programme: Programme, startMs: number) {
    this.nowMs = startMs
    this.bath = new SimulatedBath(programme, startMs)
  }

  live(): LiveState | null {
    return this.state.status === 'running' || this.state.status === 'held' ? this.state : null
  }

  /** Sends a command; the sentence of a refusal, or null. */
  send(command: PotCommand, by: By, atMs = this.nowMs): string | null {
    const commandId = `rehearsal-${++this.#ids}`
    const decision = decide(this.state, command, { commandId, atMs, by })
    if (!decision.ok) return decision.refusal.say
    for (const event of decision.events) {
      const ref = { writerId: 'rehearsal', seq: this.told.length + 1 }
      this.told.push({ atMs, commandId, by, event })
      this.state = evolve(this.state, event, { atMs, commandId, by, ref })
      this.bath.heed(event, atMs)
    }
    return null
  }
}
