// Commands about one step: done, not yet, skipped, ended early, once more.
import type { RecordItem, Step } from '../../protocol/model.ts'
import { stepAt } from '../../protocol/tree.ts'
import { afterRoundAsk, askOwner, closeStep, settle, startStep } from '../advance.ts'
import type { PotCommand, Refusal } from '../commands.ts'
import type { ActiveStep } from '../state.ts'
import { refuse, type Telling } from '../tell.ts'
import { conditionsMet, lacksOnlyMoments, lastMomentMs } from '../timing.ts'

type Of<T extends PotCommand['type']> = Extract<PotCommand, { type: T }>
export type Open = { active: ActiveStep; step: Step }

export function openStep(t: Telling, path: string): Open | Refusal {
  const step = stepAt(t.run.programme, path)
  if (!step) return refuse('no-such-step', `This programme has no step "${path}".`).refusal
  const active = t.run.active.find((a) => a.path === path)
  if (active) return { active, step }
  const when = t.run.ended[path] === undefined ? 'has not begun yet' : 'is closed already'
  return refuse('step-not-open', `${step.knot} ${when}.`).refusal
}

export function markDone(t: Telling, command: Of<'MarkDone'>): Refusal | null {
  const open = openStep(t, command.path)
  if ('code' in open) return open
  const { active, step } = open
  const missing = missingRecord(t, active, step)
  if (missing) return missing
  if (step.behaviour === 'ask') return refuse('needs-answer', `${step.knot} wants an answer.`).refusal
  if (step.wait) return waitDone(t, active, step)
  if (step.dose) {
    const planned = step.dose.amount
    const added = command.added ?? planned
    if (!(added.value >= 0) || !Number.isFinite(added.value)) {
      return refuse('out-of-range', 'An amount added is a number from 0 up.').refusal
    }
    t.tell({ type: 'Dosed', path: step.path, of: planned.of, planned, added, fromPotId: null })
  }
  closeStep(t, active, 'done', command.reason ?? null)
  return null
}

/** A person says that what a wait waits for has come. */
function waitDone(t: Telling, active: ActiveStep, step: Step): Refusal | null {
  const wait = step.wait
  if (!wait) return null
  const index = wait.until.findIndex((u, i) => u.kind === 'person' && !active.met.includes(i))
  if (index < 0) {
    const open = wait.until.some((u, i) => u.kind !== 'moment' && !active.met.includes(i))
    if (open) return refuse('needs-answer', `${step.knot} wants a reading or a judgement.`).refusal
    return refuse('not-a-wait', `${step.knot} ends by itself. To end it now, end it early.`).refusal
  }
  t.tell({ type: 'ConditionMet', path: step.path, index })
  settleWait(t, step)
  return null
}

/** After a condition is met: close when all is met and the time is over, else wait on for the rest. */
export function settleWait(t: Telling, step: Step): void {
  const active = t.run.active.find((a) => a.path === step.path)
  const wait = step.wait
  // While its count stands still, only a reading in range lets it go on.
  if (!active || !wait || active.remainingMs !== null) return
  const { timeDueAtMs } = active
  const more = { lateAfterMs: null, remainingMs: null, why: 'reading', reason: null } as const
  if (!conditionsMet(t.run, active, wait)) {
    const inVain = active.dueAtMs !== null && lacksOnlyMoments(t.run, active, wait)
    if (inVain) t.tell({ type: 'DueMoved', path: step.path, dueAtMs: null, timeDueAtMs, ...more })
    return
  }
  // What was answered for some minutes ago may lie before the moment that the wait waits for too.
  const lastMs = Math.max(lastMomentMs(t.run, wait), timeDueAtMs ?? Number.NEGATIVE_INFINITY)
  const timeKnown = wait.forMs === null || timeDueAtMs !== null
  if (timeKnown && lastMs <= t.atMs) {
    closeStep(t, active, 'reading', null)
    return
  }
  t.tell({ type: 'DueMoved', path: step.path, dueAtMs: timeKnown ? lastMs : null, timeDueAtMs, ...more })
}

function missingRecord(t: Telling, active: ActiveStep, step: Step): Refusal | null {
  const made = (item: RecordItem): boolean => (t.run.recorded[item] ?? Number.NEGATIVE_INFINITY) >= active.startedAtMs
  const missing = step.records.filter((item) => !made(item))
  return missing.length === 0 ? null : refuse('needs-record', `First record: ${missing.join(', ')}.`).refusal
}

export function notYet(t: Telling, command: Of<'NotYet'>): Refusal | null {
  const open = openStep(t, command.path)
  if ('code' in open) return open
  if (!command.reason.trim()) return refuse('needs-reason', 'Say why not yet.').refusal
  if (!(command.byMs > 0 && command.byMs <= 12 * 3_600_000)) {
    return refuse('out-of-range', 'Put it off by more than nothing and at most 12 h.').refusal
  }
  const { active, step } = open
  if (active.dueAtMs === null || active.dueAtMs > t.atMs) {
    return refuse('nothing-due', `${step.knot} is not due yet.`).refusal
  }
  // Lateness is still told against the first due time: an extension has a reason, it is not forgiven.
  const { path } = step
  const dueAtMs = t.atMs + command.byMs
  const { lateAfterMs, timeDueAtMs, remainingMs } = active
  const { reason } = command
  t.tell({ type: 'DueMoved', path, dueAtMs, timeDueAtMs, lateAfterMs, remainingMs, why: 'not-yet', reason })
  return null
}

export function skip(t: Telling, command: Of<'Skip'>): Refusal | null {
  const open = openStep(t, command.path)
  if ('code' in open) return open
  if (!command.reason.trim()) return refuse('needs-reason', 'Say why it is skipped.').refusal
  const { active, step } = open
  const owner = active.side ? null : askOwner(t, step)
  if (owner === null) {
    closeStep(t, active, 'skipped', command.reason)
    return null
  }
  if (owner.node === 'choice') return refuse('needs-answer', 'What follows depends on the answer. Choose one.').refusal
  afterRoundAsk(t, owner, null, settle(t, active, step, 'skipped', command.reason))
  return null
}

export function endEarly(t: Telling, command: Of<'EndEarly'>): Refusal | null {
  const open = openStep(t, command.path)
  if ('code' in open) return open
  if (!command.reason.trim()) return refuse('needs-reason', 'Say why it ends early.').refusal
  const { active, step } = open
  if (!step.wait && !step.ramp) return refuse('not-a-wait', `${step.knot} is an act: mark it done or skip it.`).refusal
  closeStep(t, active, 'early', command.reason)
  return null
}

export function markLooked(t: Telling, command: Of<'MarkLooked'>): Refusal | null {
  const open = openStep(t, command.path)
  if ('code' in open) return open
  if (open.step.lookEveryMs === null) return refuse('wrong-answer', `${open.step.knot} asks for no look.`).refusal
  t.tell({ type: 'Looked', path: command.path })
  return null
}

export function onceMore(t: Telling, command: Of<'DoOnceMore'>): Refusal | null {
  const step = stepAt(t.run.programme, command.path)
  if (!step) return refuse('no-such-step', `This programme has no step "${command.path}".`).refusal
  if (!command.reason.trim()) return refuse('needs-reason', 'Say why once more.').refusal
  if (t.run.active.some((a) => a.path === step.path)) {
    return refuse('step-not-open', `${step.knot} is going on now.`).refusal
  }
  if (t.run.ended[step.path] === undefined)
    return refuse('step-not-open', `${step.knot} has not been done yet.`).refusal
  if (askOwner(t, step)) return refuse('wrong-answer', `${step.knot} decides the way; it can't be asked twice.`).refusal
  t.tell({ type: 'NoteWritten', text: `Once more: ${step.knot}. ${command.reason}`, path: step.path })
  startStep(t, step, { carryMs: 0, graceMs: 0 }, true)
  return null
}

export function moveDeadline(t: Telling, command: Of<'MoveDeadline'>): Refusal | null {
  const open = openStep(t, command.path)
  if ('code' in open) return open
  const { path, dueAtMs: toMs, reason } = command
  if (!reason.trim()) return refuse('needs-reason', 'Say why the time is moved.').refusal
  if (!(toMs >= open.active.startedAtMs)) {
    return refuse('out-of-range', 'The new time lies before the step began.').refusal
  }
  const { wait } = open.step
  const lacked = wait?.until.find((u) => u.kind === 'moment' && (t.run.moments[u.name] ?? 0) > toMs)
  if (lacked?.kind === 'moment') {
    return refuse('out-of-range', `The new time lies before what it waits for had come: ${lacked.name}.`).refusal
  }
  const { lateAfterMs: late, dueAtMs: was } = open.active
  const lateAfterMs = late === null || was === null ? null : late + (toMs - was)
  // The dyer's word on how long it is: the wait's own time is over then, too. A moment that it lacks it still lacks.
  const timeDueAtMs = wait !== null && wait.forMs !== null ? toMs : null
  const dueAtMs = wait !== null && lacksOnlyMoments(t.run, open.active, wait) ? null : toMs
  t.tell({ type: 'DueMoved', path, dueAtMs, timeDueAtMs, lateAfterMs, remainingMs: null, why: 'moved', reason })
  return null
}
