// From a state and an event to the next state. Only assigns: every deadline and branch stands in the event already.
import type { PotEvent } from './events.ts'
import { assignBath } from './evolve-bath.ts'
import { assignCourse } from './evolve-course.ts'
import { assignStep } from './evolve-step.ts'
import type { LiveState, PotState, Run, Stamp } from './state.ts'

/** The state after an event, without touching the one before. `Withdrawn` needs the whole journal: see fold.ts. */
export function evolve(state: PotState, event: PotEvent, stamp: Stamp): PotState {
  return evolveDraft(copyOf(state), event, stamp)
}

/** The same, but free to write into `state`: for folding a journal whose steps nobody else holds. */
export function evolveDraft(state: PotState, event: PotEvent, stamp: Stamp): PotState {
  if (event.type === 'PotStarted') return state.status === 'idle' ? startOf(event, stamp) : state
  if (state.status === 'idle') return state
  state.lastAtMs = stamp.atMs
  remember(state, event, stamp)
  switch (event.type) {
    case 'Held':
      return { ...(state as LiveState), status: 'held', heldSinceMs: stamp.atMs }
    case 'Resumed':
      return { ...without(state), status: 'running' }
    case 'Finished':
      return { ...without(state), status: 'complete', bath: event.bath, endedAtMs: stamp.atMs }
    case 'Aborted':
      return { ...without(state), status: 'aborted', reason: event.reason, endedAtMs: stamp.atMs }
    case 'ClockShifted':
      shift(state, event.byMs)
      return state
    case 'StepStarted':
    case 'StepClosed':
    case 'Ended':
    case 'RoundStarted':
    case 'RoundsEnded':
    case 'ChoiceTaken':
    case 'MomentMarked':
    case 'DueMoved':
    case 'ConditionMet':
    case 'Looked':
      assignStep(state, event, stamp.atMs)
      return state
    case 'Dosed':
    case 'DoseWentElsewhere':
    case 'Answered':
    case 'TemperatureRead':
    case 'PhRead':
    case 'Judged':
    case 'HeatSet':
    case 'YarnMoved':
    case 'SkeinsSwapped':
    case 'ToppedUp':
      assignBath(state, event, stamp.atMs)
      return state
    case 'DeedDone':
    case 'BurnerChanged':
    case 'AlertRaised':
    case 'WentOffProtocol':
    case 'GapBroken':
    case 'TroubleBegan':
    case 'TroubleEnded':
    case 'HandedOver':
    case 'NoteWritten':
    case 'ResultTold':
    case 'PhotoNoted':
    case 'VoiceNoted':
    case 'MediaTrimmed':
    case 'CautionShown':
    case 'Withdrawn':
    case 'Corrected':
    case 'StepsDone':
      assignCourse(state, event, stamp.atMs)
      return state
  }
}

/** The undo list: the latest command of a person and all that came of it. A set clock and a shown caution stand. */
function remember(state: Run, event: PotEvent, stamp: Stamp): void {
  const person = stamp.by.kind !== 'clock'
  // A command's events come in a row: the last one heard is looked at first.
  const { heard } = state
  if (person && heard[heard.length - 1] !== stamp.commandId && !heard.includes(stamp.commandId))
    heard.push(stamp.commandId)
  if (event.type === 'ClockShifted' || event.type === 'CautionShown' || event.type === 'Withdrawn') return
  // Bytes that were let go don't come back.
  if (event.type === 'Corrected' || event.type === 'MediaTrimmed') return
  // The start itself is not undone: a pot that should not run is aborted.
  if (stamp.commandId === state.heard[0]) return
  if (person && state.undo?.commandId !== stamp.commandId) {
    const path = 'path' in event ? event.path : null
    state.undo = { commandId: stamp.commandId, type: event.type, path, entries: [stamp.ref] }
    state.deedAtMs = stamp.atMs
    state.counts.deeds = (state.counts.deeds ?? 0) + 1
  } else if (state.undo) state.undo.entries.push(stamp.ref)
}

function startOf(event: Extract<PotEvent, { type: 'PotStarted' }>, stamp: Stamp): PotState {
  return {
    status: 'running',
    pot: event.pot,
    protocol: event.protocol,
    programme: event.programme,
    checks: event.checks,
    startedAtMs: stamp.atMs,
    deedAtMs: null,
    lastAtMs: stamp.atMs,
    active: [],
    ended: {},
    round: {},
    taken: {},
    moments: {},
    counts: {},
    recorded: {},
    raised: {},
    bathTempC: null,
    bathTempAtMs: null,
    tempReadings: [],
    ph: null,
    judged: null,
    heatOn: false,
    heatSinceMs: null,
    heatLevel: null,
    yarn: 'out',
    outSinceMs: null,
    outLimitAtMs: null,
    outTotalMs: 0,
    depth: null,
    doses: [],
    toppedUpML: 0,
    offProtocol: [],
    trouble: null,
    handedTo: null,
    stepsDone: false,
    cautionsShown: [...event.cautionsShown],
    heard: [stamp.commandId],
    undo: null
  }
}

/** A clock that was set moves every open time, so that what was left is still left. */
function shift(state: Exclude<PotState, { status: 'idle' }>, byMs: number): void {
  const by = (at: number | null): number | null => (at === null ? null : at + byMs)
  state.active = state.active.map((a) => ({
    ...a,
    startedAtMs: a.startedAtMs + byMs,
    lookedAtMs: a.lookedAtMs + byMs,
    dueAtMs: by(a.dueAtMs),
    timeDueAtMs: by(a.timeDueAtMs),
    lateAfterMs: by(a.lateAfterMs)
  }))
  for (const times of [state.moments, state.ended]) {
    for (const name of Object.keys(times)) times[name] = (times[name] as number) + byMs
  }
  for (const item of Object.keys(state.recorded) as (keyof Run['recorded'])[]) {
    state.recorded[item] = (state.recorded[item] as number) + byMs
  }
  state.startedAtMs += byMs
  state.lastAtMs += byMs
  state.deedAtMs = by(state.deedAtMs)
  state.bathTempAtMs = by(state.bathTempAtMs)
  state.tempReadings = state.tempReadings.map((read) => ({ ...read, atMs: read.atMs + byMs }))
  state.heatSinceMs = by(state.heatSinceMs)
  state.outSinceMs = by(state.outSinceMs)
  state.outLimitAtMs = by(state.outLimitAtMs)
  if (state.trouble) state.trouble = { ...state.trouble, sinceMs: state.trouble.sinceMs + byMs }
  if (state.status === 'held') state.heldSinceMs += byMs
}

/** The run without what only one status has. */
function without(state: Exclude<PotState, { status: 'idle' }>): Run {
  const { status: _status, heldSinceMs: _held, ...run } = state as Run & { status: string; heldSinceMs?: number }
  return run
}

function copyOf(state: PotState): PotState {
  if (state.status === 'idle') return state
  return {
    ...state,
    active: state.active.map((a) => ({ ...a })),
    ended: { ...state.ended },
    round: { ...state.round },
    taken: { ...state.taken },
    moments: { ...state.moments },
    counts: { ...state.counts },
    recorded: { ...state.recorded },
    raised: { ...state.raised },
    tempReadings: [...state.tempReadings],
    doses: [...state.doses],
    offProtocol: [...state.offProtocol],
    cautionsShown: [...state.cautionsShown],
    heard: [...state.heard],
    undo: state.undo && { ...state.undo, entries: [...state.undo.entries] }
  }
}
