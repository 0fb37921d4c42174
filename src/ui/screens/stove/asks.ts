// What an open step wants of a person: an act said done, or an answer.
import type { Alert } from '../../../core/pot/due.ts'
import type { ActiveStep, LiveState } from '../../../core/pot/state.ts'
import type { Question, Step, Until } from '../../../core/protocol/model.ts'
import { stepAt } from '../../../core/protocol/tree.ts'
import { capital } from './words.ts'

export type Ask =
  /** `say`: the pad's words after the pot's name. */
  | { kind: 'done'; path: string; say: string }
  | { kind: 'looked'; path: string; say: string }
  /** The skeins go back in: no step of the route asks for it. */
  | { kind: 'in'; say: string }
  | { kind: 'question'; path: string; question: Question; say: string }

/** What the step at its due moment asks; null: nothing, it closes by the clock. */
export function askOf(active: ActiveStep, step: Step): Ask | null {
  const { path } = step
  // A free pot that calls wants to be looked at; only "Finish" ends it.
  if (step.open) return { kind: 'looked', path, say: 'seen' }
  if (step.behaviour === 'ask' && step.question) return asking(path, step.question)
  if (step.ramp) return asking(path, { kind: 'temperature', lowC: step.ramp.lowC, highC: step.ramp.highC })
  if (!step.wait) return { kind: 'done', path, say: step.done }
  if (active.remainingMs !== null) {
    return asking(path, { kind: 'temperature', lowC: step.setPoint?.lowC ?? null, highC: step.setPoint?.highC ?? null })
  }
  const open = step.wait.until.find((u, i): u is Exclude<Until, { kind: 'moment' }> => {
    return u.kind !== 'moment' && !active.met.includes(i)
  })
  if (!open) return null
  switch (open.kind) {
    case 'temperature':
      return asking(path, { kind: 'temperature', lowC: open.lowC, highC: open.highC })
    case 'judgement':
      return asking(path, open.question)
    case 'person':
      return { kind: 'done', path, say: open.ask }
  }
}

function asking(path: string, question: Question): Ask {
  return { kind: 'question', path, question, say: questionSay(question) }
}

export function questionSay(question: Question): string {
  switch (question.kind) {
    case 'grade':
      return question.of === 'bath' ? 'judge the bath' : `judge the ${question.of}`
    case 'temperature':
      return 'read temperature'
    case 'ph':
      return 'read pH'
    case 'number':
    case 'text':
    case 'choice':
      return 'answer'
  }
}

/** The words of a call: the act, large. */
export type Called = { act: string; ask: Ask | null; step: Step | null; active: ActiveStep | null }

export function calledBy(state: LiveState, alert: Pick<Alert, 'kind' | 'path'>): Called {
  const step = alert.path === null ? null : stepAt(state.programme, alert.path)
  const active = state.active.find((a) => a.path === alert.path) ?? null
  switch (alert.kind) {
    case 'call':
      return {
        act: standsStill(active) ? 'Measure the bath again' : actSay(step),
        ask: active && step ? askOf(active, step) : null,
        step,
        active
      }
    case 'look':
      return {
        act: step?.open ? 'Heat is on. Look at the pot' : 'Look at the water level',
        ask: step ? { kind: 'looked', path: step.path, say: step.open ? 'seen' : 'level is right' } : null,
        step,
        active
      }
    case 'finish':
      return { act: state.heatOn ? 'Heat off. All steps are done' : 'All steps are done', ask: null, step, active }
    case 'outOfBath':
      return { act: 'Back into the bath', ask: { kind: 'in', say: 'skeins are in' }, step, active }
    case 'headsUp':
    case 'gap':
    case 'heat':
      return { act: actSay(step), ask: null, step, active }
  }
}

/** Its time stands still outside its range until a reading is inside. */
function standsStill(active: ActiveStep | null): boolean {
  return active !== null && active.remainingMs !== null
}

function actSay(step: Step | null): string {
  if (!step) return 'Look at the pot'
  const { question } = step
  if (step.behaviour === 'ask' && question && 'ask' in question) return capital(question.ask)
  return step.call
}
