// What must hold at every moment of a day, and at its end.
import { isDeepStrictEqual } from 'node:util'
import { fold } from '../../src/core/pot/fold.ts'
import { readEntries } from '../../src/core/pot/read-entry.ts'
import type { PotState } from '../../src/core/pot/state.ts'
import { stepAt } from '../../src/core/protocol/tree.ts'
import type { PotEntry } from '../../src/session/ports.ts'
import type { PotView } from '../../src/session/types.ts'
import { Chance } from './chance.ts'
import { answerFor } from './commands-by-chance.ts'
import type { Kitchen } from './kitchen.ts'
import { alertsBroken } from './rules/alerts.ts'
import { dosesBroken } from './rules/doses.ts'
import { effective } from './rules/effective.ts'
import { headsUps } from './rules/heads-up.ts'
import { lengthsBroken } from './rules/lengths.ts'
import { numberingBroken } from './rules/numbering.ts'
import { routeBroken } from './rules/route.ts'
import { type Moment, momentsOf } from './rules/standing.ts'
import { tapsBroken } from './rules/taps.ts'
import type { Tab } from './tab.ts'

/** Later than this it was missed: nobody could have been told in time. */
const TOLD_IN_TIME_MS = 5_000

/** Right after a tick of an awake tab, before anything is stored: every call that stands sounds. An alarm never waits for
 * a write, so a store that fails or is slow makes no difference. */
export function checkHeard(kitchen: Kitchen, tab: Tab): void {
  if (tab !== kitchen.owner || tab.frozen || kitchen.sentOnTheWay(tab)) return
  kitchen.counts.add('check', 'heard')
  const unsaved = tab.session.notSaved()?.entries ?? []
  if (unsaved.length > 0) kitchen.counts.add('check', 'heard though not saved')
  for (const { potId, streamId, state } of tab.session.pots()) {
    const own = unsaved.filter((entry) => entry.streamId === streamId)
    const ahead = own.length > 0 ? fold([...tab.session.entriesOf(potId), ...own]) : state
    for (const moment of momentsOf(ahead)) {
      if (moment.kind !== 'call' || moment.atMs > kitchen.nowMs || awaitsMoment(ahead, moment.path)) continue
      if (!sounds(tab, potId, moment)) kitchen.complain(`${potId}: ${said(moment, kitchen)} and is not heard`)
    }
  }
}

/** The clock itself may put off the call of a wait whose moment comes in this very tick. */
function awaitsMoment(state: PotState, path: string | null): boolean {
  if (state.status === 'idle' || path === null) return false
  const wait = stepAt(state.programme, path)?.wait
  const names = [wait?.from, ...(wait?.until ?? []).map((until) => (until.kind === 'moment' ? until.name : null))]
  return names.some((name) => typeof name === 'string' && state.moments[name] === undefined)
}

function sounds(tab: Tab, potId: string, moment: Moment): boolean {
  return tab.alerts.some((each) => {
    return each.potId === potId && each.alert.kind === moment.kind && each.alert.path === moment.path
  })
}

/** When all is stored: what is due sounds, and nothing else does. */
function checkSounding(kitchen: Kitchen, tab: Tab): void {
  for (const { potId, state } of tab.session.pots()) {
    const due = momentsOf(state).filter(({ kind, atMs }) => kind !== 'close' && atMs <= kitchen.nowMs)
    for (const moment of due) {
      if (!sounds(tab, potId, moment)) kitchen.complain(`${potId}: ${said(moment, kitchen)} and is not heard`)
    }
    const { may, must } = headsUps(state, kitchen.nowMs)
    const soon = tab.alerts.filter((each) => each.potId === potId && each.alert.kind === 'headsUp')
    for (const path of must) {
      if (!soon.some(({ alert }) => alert.path === path))
        kitchen.complain(`${potId}: no heads-up before ${path} is over`)
    }
    for (const { alert } of soon) {
      if (!may.includes(alert.path ?? '')) kitchen.complain(`${potId}: a heads-up for ${alert.path} out of its time`)
    }
    for (const { potId: whose, alert } of tab.alerts) {
      if (whose !== potId) continue
      const { kind, path, atMs } = alert
      if (atMs > kitchen.nowMs) kitchen.complain(`${potId}: ${kind} ${path} sounds before its time`)
      if (kind === 'call' && !hasAnswer(state, path)) kitchen.complain(`${potId}: nobody can answer the call ${path}`)
      if (kind === 'headsUp' || due.some((moment) => moment.kind === kind && moment.path === path)) continue
      kitchen.complain(`${potId}: ${kind} ${path} sounds and is not due`)
    }
  }
}

function hasAnswer(state: PotState, path: string | null): boolean {
  const active = state.status === 'idle' ? undefined : state.active.find((each) => each.path === path)
  if (!active || state.status === 'idle') return true
  return answerFor(new Chance(1), state, active, true) !== null
}

/** After a tick and all its writing: what was due is in the journal. */
export function checkRaised(kitchen: Kitchen, tab: Tab): void {
  if (!kitchen.isQuiet(tab) || tab !== kitchen.owner) return
  kitchen.counts.add('check', 'raised')
  checkSounding(kitchen, tab)
  for (const { potId, state } of tab.session.pots()) {
    for (const moment of momentsOf(state)) {
      if (moment.atMs > kitchen.nowMs) continue
      if (moment.kind === 'close') kitchen.complain(`${potId}: ${said(moment, kitchen)} and is still open`)
      else if (!wasRaised(kitchen, potId, moment)) kitchen.complain(`${potId}: ${said(moment, kitchen)} and not raised`)
    }
  }
}

function said({ kind, path, atMs }: Moment, kitchen: Kitchen): string {
  return `${kind} ${path ?? ''} was due ${kitchen.nowMs - atMs} ms ago`
}

/** Raised since the step last began, was moved or looked at. */
function wasRaised(kitchen: Kitchen, potId: string, moment: Moment): boolean {
  const entries = effective(kitchen.stored(potId))
  for (let at = entries.length - 1; at >= 0; at--) {
    const event = entries[at]?.event
    if (event?.type === 'AlertRaised' && event.kind === moment.kind && event.path === moment.path) return true
    if (moment.path === null || !event || !('path' in event) || event.path !== moment.path) continue
    if (event.type === 'StepStarted') return false
    if (event.type === (moment.kind === 'look' ? 'Looked' : 'DueMoved')) return false
  }
  return false
}

/** What a tab shows is what the journal says, and nothing that is not stored yet. */
export function checkShown(kitchen: Kitchen, tab: Tab): void {
  kitchen.counts.add('check', 'replay')
  const quiet = kitchen.isQuiet(tab) && tab === kitchen.owner && kitchen.stale === null
  for (const view of tab.session.pots()) {
    const stored = kitchen.stored(view.potId)
    const shown = tab.session.entriesOf(view.potId)
    if (shown.length > stored.length) kitchen.complain(`${view.potId} shows what is not stored`)
    if (quiet && shown.length !== stored.length) kitchen.complain(`${view.potId} does not show all that is stored`)
    checkReplay(kitchen, view, shown.length)
  }
}

function checkReplay(kitchen: Kitchen, view: PotView, length: number): void {
  const { entries, damaged, unknown } = readEntries(kitchen.stored(view.potId).slice(0, length))
  if (unknown || damaged.length > 0) kitchen.complain(`${view.potId} can't be read back: ${damaged[0]?.why}`)
  if (view.readOnly !== null) kitchen.complain(`${view.potId} is read-only: ${view.readOnly}`)
  const replayed = fold(entries)
  if (!isDeepStrictEqual(compared(replayed), compared(view.state))) {
    kitchen.complain(`${view.potId}: replay differs from the live state in ${differing(replayed, view.state)}`)
  }
}

/** The order in which taps were heard says nothing. */
function compared(state: PotState): object {
  if (state.status === 'idle') return state
  return { ...state, heard: [...state.heard].sort(), programme: null }
}

function differing(a: PotState, b: PotState): string {
  const [left, right] = [compared(a), compared(b)] as Record<string, unknown>[]
  const names = new Set([...Object.keys(left ?? {}), ...Object.keys(right ?? {})])
  return [...names].filter((name) => !isDeepStrictEqual(left?.[name], right?.[name])).join(', ')
}

/** The whole journal, read by rules of its own. */
export function checkJournals(kitchen: Kitchen): void {
  kitchen.counts.add('check', 'journal')
  for (const streamId of kitchen.store.streamIds()) {
    const entries = kitchen.store.stream(streamId)
    const first = entries[0]?.event
    const held = effective(entries)
    const broken = numberingBroken(entries)
    if (first?.type === 'PotStarted') {
      const { programme } = first
      broken.push(
        ...routeBroken(programme, held),
        ...lengthsBroken(programme, held),
        ...alertsBroken(programme, held, kitchen.setBackMs)
      )
      broken.push(...dosesBroken(held, fold(entries)))
    }
    for (const what of broken) kitchen.complain(`${streamId}: ${what}`)
  }
  for (const what of tapsBroken(kitchen.sent, (potId) => kitchen.stored(potId))) kitchen.complain(what)
  checkShifts(kitchen)
  for (const key of kitchen.store.overwritten) kitchen.complain(`${key} was written over`)
  for (const what of kitchen.store.lost()) kitchen.complain(what)
}

/** The clock of a pot is never set back further than the clocks of the day were. */
function checkShifts(kitchen: Kitchen): void {
  // A pot that had ended was not set back; when its end is undone, the question about the clock is asked for it, and all
  // move. So rare that it is let be.
  const ends = kitchen.store.streamIds().flatMap((id) => kitchen.store.stream(id).filter(isUndoneEnd))
  if (ends.length > 0) return
  for (const streamId of kitchen.store.streamIds()) {
    let shiftedMs = 0
    for (const { event } of kitchen.store.stream(streamId)) {
      if (event.type === 'ClockShifted' && event.byMs < 0) shiftedMs -= event.byMs
    }
    // Two clocks are compared to the millisecond at best.
    if (shiftedMs > kitchen.setBackMs + 10) {
      kitchen.complain(`${streamId} was set back ${shiftedMs} ms, the clocks ${kitchen.setBackMs} ms`)
    }
  }
}

function isUndoneEnd({ event }: PotEntry, _: number, entries: PotEntry[]): boolean {
  if (event.type !== 'Withdrawn') return false
  const undone = entries.filter((entry) => entry.commandId === event.commandId)
  return undone.some((entry) => entry.event.type === 'Finished' || entry.event.type === 'Aborted')
}

/** What was missed is what people are told that they missed. */
export function checkMissed(kitchen: Kitchen, tab: Tab, landedSince: ReadonlyMap<string, number>): void {
  const missed = tab.session.missed()
  for (const { potId, streamId } of tab.session.pots()) {
    for (const { event, atMs, recordedAtMs } of kitchen.store.stream(streamId).slice(landedSince.get(streamId) ?? 0)) {
      if (event.type !== 'AlertRaised' || event.kind === 'headsUp' || recordedAtMs - atMs < TOLD_IN_TIME_MS) continue
      const told = missed.some((each) => each.potId === potId && each.path === event.path && each.dueAtMs === atMs)
      if (!told) kitchen.complain(`${potId}: ${event.kind} ${event.path} was missed and nobody is told`)
    }
  }
}
