// One command in, events or a refusal out. Each command has a function of its own; what they share is in advance.ts.
import { closeStep } from './advance.ts'
import { addElsewhere, addUnplanned, moveYarn, swapSkeins, topUp } from './commands/bath.ts'
import { finish, hold, resume, settleTrouble, shiftClock, start } from './commands/course.ts'
import { noteDeed, seenAt } from './commands/deeds.ts'
import { answerStep, judge, readPh, readTemperature } from './commands/readings.ts'
import { endEarly, markDone, markLooked, moveDeadline, notYet, onceMore, skip } from './commands/steps.ts'
import type { CommandHeader, PotCommand, Refusal } from './commands.ts'
import type { TroubleKind } from './events.ts'
import { badPhoto, badTrim, badVoice } from './media.ts'
import { nextDue } from './next-due.ts'
import { badResult } from './result.ts'
import type { LiveState, PotState } from './state.ts'
import { type Decision, refuse, Telling } from './tell.ts'

export type { Decision } from './tell.ts'

/** Decides a command against a state. Pure; the time is `header.atMs`. A repeated command id of a person yields no
 * events. A refusal changes nothing. */
export function decide(state: PotState, command: PotCommand, header: CommandHeader): Decision {
  const t = new Telling(state, header)
  if (command.type === 'Start') return finished(t, start(t, state, command))
  if (state.status === 'idle') return refuse('not-started', 'This pot has not been started.')
  if (header.by.kind !== 'clock' && state.heard.includes(header.commandId)) return { ok: true, events: [] }
  const early = header.atMs < state.startedAtMs && command.type !== 'ShiftClock'
  if (early) return refuse('before-start', 'That is before this pot was started.')
  if (state.status === 'complete' || state.status === 'aborted') return afterTheEnd(t, state, command)
  return finished(t, live(t, state, command) ?? seenAt(t, command.type))
}

function finished(t: Telling, refusal: Refusal | null): Decision {
  return refusal ? { ok: false, refusal } : { ok: true, events: t.events }
}

function live(t: Telling, state: LiveState, command: Exclude<PotCommand, { type: 'Start' }>): Refusal | null {
  switch (command.type) {
    case 'MarkDone':
      return stopped(state) ?? markDone(t, command)
    case 'AnswerStep':
      return stopped(state) ?? answerStep(t, command)
    case 'NotYet':
      return notYet(t, command)
    case 'Skip':
      return stopped(state) ?? skip(t, command)
    case 'EndEarly':
      return stopped(state) ?? endEarly(t, command)
    case 'MarkLooked':
      return markLooked(t, command)
    case 'DoOnceMore':
      return stopped(state) ?? onceMore(t, command)
    case 'MoveDeadline':
      return moveDeadline(t, command)
    case 'AddUnplanned':
      return addUnplanned(t, command)
    case 'ReportAddedElsewhere':
      return addElsewhere(t, command)
    case 'TopUp':
      return topUp(t, command)
    case 'PutSkeinsIn':
    case 'TakeSkeinsOut':
      return moveYarn(t, command.type === 'PutSkeinsIn' ? 'in' : 'out', command.tags)
    case 'SwapSkeins':
      return swapSkeins(t, command)
    case 'NoteDeed':
      return noteDeed(t, command)
    case 'ReadTemperature':
      return readTemperature(t, command.tempC, null)
    case 'ReadPh':
      return readPh(t, command)
    case 'Judge':
      return judge(t, command)
    case 'CallTrouble':
      return callTrouble(t, state, command.kind)
    case 'SettleTrouble':
      return settleTrouble(t, state, command)
    case 'Hold':
      return hold(t, state, command.reason)
    case 'Resume':
      return resume(t, state, command.heldTimeCounts)
    case 'ChangeBurner':
      return say(t, { type: 'BurnerChanged', burner: command.burner })
    case 'ChangeHeat':
      return say(t, { type: 'HeatSet', on: command.on, level: command.level, path: null })
    case 'HandOver':
      return say(t, { type: 'HandedOver', to: command.to })
    case 'ShowCaution':
      return say(t, { type: 'CautionShown', caution: command.caution, path: command.path })
    case 'Abort':
      return abort(t, command.reason)
    case 'Finish':
      return finish(t, state, command.bath)
    case 'ShiftClock':
      return shiftClock(t, command.byMs)
    case 'PassDue':
      return passDue(t, state, command)
    // Only what a record takes at any time is left; the compiler holds it.
    default:
      return always(t, state, command)
  }
}

function abort(t: Telling, reason: string): Refusal | null {
  if (!reason.trim()) return refuse('needs-reason', 'Say why the batch ends here.').refusal
  return say(t, { type: 'Aborted', reason })
}

function callTrouble(t: Telling, state: LiveState, kind: TroubleKind): Refusal | null {
  if (state.trouble) return refuse('in-trouble', 'Trouble is already called for this pot.').refusal
  return say(t, { type: 'TroubleBegan', kind })
}

/** What a record still takes when its pot has ended. */
function afterTheEnd(t: Telling, state: Exclude<PotState, { status: 'idle' }>, command: PotCommand): Decision {
  switch (command.type) {
    case 'WriteNote':
    case 'TellResult':
    case 'NotePhoto':
    case 'NoteVoice':
    case 'TrimMedia':
    case 'Correct':
    case 'Undo':
      return finished(t, always(t, state, command))
    case 'Judge':
      return finished(t, judge(t, command))
    case 'ReadPh':
      return finished(t, readPh(t, command))
    case 'PassDue':
    case 'ShiftClock':
      return { ok: true, events: [] }
    case 'Start':
    case 'MarkDone':
    case 'AnswerStep':
    case 'NotYet':
    case 'Skip':
    case 'EndEarly':
    case 'MarkLooked':
    case 'DoOnceMore':
    case 'MoveDeadline':
    case 'AddUnplanned':
    case 'ReportAddedElsewhere':
    case 'TopUp':
    case 'PutSkeinsIn':
    case 'TakeSkeinsOut':
    case 'SwapSkeins':
    case 'NoteDeed':
    case 'ChangeBurner':
    case 'ChangeHeat':
    case 'ReadTemperature':
    case 'CallTrouble':
    case 'SettleTrouble':
    case 'HandOver':
    case 'Hold':
    case 'Resume':
    case 'ShowCaution':
    case 'Abort':
    case 'Finish':
      return refuse('ended', 'This batch has ended. Notes and corrections are still taken.')
  }
}

function always(
  t: Telling,
  state: Exclude<PotState, { status: 'idle' }>,
  command: Extract<
    PotCommand,
    { type: 'WriteNote' | 'TellResult' | 'NotePhoto' | 'NoteVoice' | 'TrimMedia' | 'Correct' | 'Undo' }
  >
): Refusal | null {
  switch (command.type) {
    case 'WriteNote':
      if (!command.text.trim()) return refuse('needs-reason', 'The note is empty.').refusal
      return say(t, { type: 'NoteWritten', text: command.text, path: firstPath(state) })
    case 'TellResult': {
      const { what, own, value } = command
      return badResult(what, value) ?? say(t, { type: 'ResultTold', what, own, value })
    }
    case 'NotePhoto': {
      const { what, media = null } = command
      return badPhoto(what, media) ?? say(t, { type: 'PhotoNoted', what, path: stepNow(state), media })
    }
    case 'NoteVoice': {
      const { media } = command
      return badVoice(media) ?? say(t, { type: 'VoiceNoted', path: stepNow(state), media })
    }
    case 'TrimMedia': {
      const { sha256, why } = command
      return badTrim(sha256, why) ?? say(t, { type: 'MediaTrimmed', sha256, why })
    }
    case 'Correct': {
      if (!command.why.trim()) return refuse('needs-reason', 'Say why the entry is corrected.').refusal
      const { entry, field, was, now, why } = command
      return say(t, { type: 'Corrected', entry, field, was, now, why })
    }
    case 'Undo':
      if (!state.undo) return refuse('nothing-to-undo', 'Nothing of this pot can be undone now.').refusal
      return say(t, { type: 'Withdrawn', commandId: state.undo.commandId, entries: state.undo.entries })
  }
}

function firstPath(state: Exclude<PotState, { status: 'idle' }>): string | null {
  return state.active[0]?.path ?? null
}

/** The step a picture or a voice note belongs to; null once the batch has ended. */
function stepNow(state: Exclude<PotState, { status: 'idle' }>): string | null {
  return state.status === 'complete' || state.status === 'aborted' ? null : firstPath(state)
}

function say(t: Telling, event: Parameters<Telling['tell']>[0]): null {
  t.tell(event)
  return null
}

/** Held stops the procedure, not the chemistry: steps wait, readings and dangers do not. */
function stopped(state: LiveState): Refusal | null {
  if (state.status === 'held') return refuse('stopped', 'Stopped, still dyeing. Resume first.').refusal
  if (state.trouble) return refuse('stopped', 'Trouble is open. Settle it first.').refusal
  return null
}

function passDue(
  t: Telling,
  state: LiveState,
  { key, told }: Extract<PotCommand, { type: 'PassDue' }>
): Refusal | null {
  const due = nextDue(state).find((d) => d.key === key)
  if (!due || due.atMs > t.atMs) return refuse('nothing-due', 'No such moment is due.').refusal
  if (due.kind !== 'close') {
    const raised = { type: 'AlertRaised', key, kind: due.kind, path: due.path } as const
    return say(t, told === undefined ? raised : { ...raised, told })
  }
  const active = state.active.find((a) => a.path === due.path)
  if (active) {
    closeStep(t, active, 'clock', null)
    return null
  }
  const gap = state.programme.gaps.find((g) => key.startsWith(`over ${g.from} > ${g.to} `))
  if (gap) {
    t.tell({ type: 'GapBroken', from: gap.from, to: gap.to, overMs: 0 })
    if (gap.late === 'off-protocol') {
      t.tell({ type: 'WentOffProtocol', path: null, why: `${gap.to} did not follow ${gap.from} in time` })
    }
  }
  return null
}
