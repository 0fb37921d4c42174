// What a notice says, and what becomes of a press of its buttons.
import { alertsDue } from '../core/pot/alerts-due.ts'
import { lookAhead } from '../core/pot/catch-up.ts'
import type { PotCommand } from '../core/pot/commands.ts'
import type { Alert } from '../core/pot/due.ts'
import type { LiveState } from '../core/pot/state.ts'
import type { Units } from '../core/quantity/units.ts'
import type { PotView } from '../session/types.ts'
import type { NoticeAction } from '../shell/notices/notices.ts'
import type { NoticeSay } from '../shell/notices/notices-rung.ts'
import type { NoticePress, PressAnswer } from '../shell/notices/presses.ts'
import type { RungAlert } from '../shell/rung.ts'
import { alertSay } from '../ui/screens/stove/alert-words.ts'
import { amountSay, cupSay } from '../ui/screens/stove/amount.ts'
import { calledBy } from '../ui/screens/stove/asks.ts'
import { stepCautions } from '../ui/screens/stove/cautions.ts'
import { alertWords } from './alert-words.ts'
import type { Commands } from './commands.ts'

const LATER_MS = 2 * 60_000

const done: NoticeAction = { action: 'done', title: 'Done' }
const later: NoticeAction = { action: 'later', title: 'Not yet, 2 min' }
const open: NoticeAction = { action: 'open', title: 'Open' }

/** "Plum: Acid 2", the act with its amount, cup and cautions; and the buttons that a press without a look can answer. */
export function noticeSay(one: RungAlert, pots: readonly PotView[], units: Units, nowMs: number): NoticeSay {
  // What is stored may lag behind the call by a moment; the act that calls is open in what is carried on to now.
  const state = liveState(pots, one.potId, nowMs)
  const title = alertWords(one, pots)
  const body = state === null ? '' : bodyOf(state, one.alert, units, nowMs)
  return { title, body: one.alert.urgency === 'late' ? `Late. ${body}` : body, actions: actionsFor(state, one.alert) }
}

function bodyOf(state: LiveState, alert: Alert, units: Units, nowMs: number): string {
  const { step } = calledBy(state, alert)
  const said = alertSay(state, alert)
  if (step === null || alert.kind !== 'call') return said
  const amount = step.dose ? `${amountSay(step.dose.amount, units)} of ${step.dose.amount.of}` : null
  const cautions = stepCautions(state, step, nowMs).map(({ short }) => short)
  const lines = [said, [amount, cupSay(state, step)].filter(Boolean).join(', '), step.detail ?? '', ...cautions]
  return lines.filter((line) => line !== '').join('\n')
}

function actionsFor(state: LiveState | null, alert: Alert): NoticeAction[] {
  if (state === null || alert.kind !== 'call') return [open]
  return [plainDone(state, alert) === null ? open : done, later]
}

/** The step that "Done" closes: an act, a dose as planned, or a wait that a person ends. Null: it wants an answer, a
 * record or a look first, or the pot is stopped. */
function plainDone(state: LiveState, alert: Alert): string | null {
  if (alert.kind !== 'call' || state.status === 'held' || state.trouble !== null) return null
  const { ask, step } = calledBy(state, alert)
  return ask?.kind === 'done' && step?.records.length === 0 ? ask.path : null
}

type Parts = {
  /** The name of the store: a rehearsal's notices are not for the real pots. */
  name: string
  owns: () => boolean
  pots: () => readonly PotView[]
  /** Of the pots. */
  nowMs: () => number
  commands: Pick<Commands, 'send'>
  dyer: () => string | null
  /** The real clock, whatever clock the pots run on. */
  wallMs?: () => number
}

/** Acts on the pot of the notice, and only while the alert of the notice still stands; else somebody has to look. */
export async function answerPress(parts: Parts, press: NoticePress): Promise<PressAnswer> {
  const { name, owns, pots, nowMs, commands, dyer, wallMs = Date.now } = parts
  if (press.of !== name) return 'other'
  if (!owns()) return 'follows'
  if (wallMs() > press.untilMs) return 'look'
  const command = commandOf(press, pots(), nowMs())
  if (command === null) return 'look'
  const by = { kind: 'person', name: dyer(), via: 'notice' } as const
  // One press is one act, however often it is told.
  const sent = await commands.send([{ potId: press.potId, command }], { by, commandId: press.pressId })
  return sent.ok ? 'acted' : 'look'
}

/** The notice comes with the call, which does not wait for the disk: it is pressed on what is carried on to now. */
function commandOf({ potId, key, action }: NoticePress, pots: readonly PotView[], nowMs: number): PotCommand | null {
  const state = liveState(pots, potId, nowMs)
  const alert = state && alertsDue(state, nowMs).find((one) => one.key === key)
  if (!alert) return null
  switch (action) {
    case 'done': {
      const path = plainDone(state, alert)
      return path === null ? null : { type: 'MarkDone', path }
    }
    case 'later':
      if (alert.kind !== 'call' || alert.path === null) return null
      return { type: 'NotYet', path: alert.path, byMs: LATER_MS, reason: 'put off at the notice' }
    case 'open':
      return null
  }
}

function liveState(pots: readonly PotView[], potId: string, nowMs: number): LiveState | null {
  const stored = pots.find((pot) => pot.potId === potId)?.state
  const state = stored && lookAhead(stored, nowMs)
  return state?.status === 'running' || state?.status === 'held' ? state : null
}
