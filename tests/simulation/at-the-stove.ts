// One turn of a person at the stove: hears, answers, and does what people do besides.
import type { PotCommand } from '../../src/core/pot/commands.ts'
import { stepAt } from '../../src/core/protocol/tree.ts'
import type { PotAlert, PotView } from '../../src/session/types.ts'
import { MIN } from '../core/pot/programmes.ts'
import { amountOf, answerFor, anyCommand, type Known } from './commands-by-chance.ts'
import type { Day } from './day.ts'
import type { Tab } from './tab.ts'

const AGO_MS = [MIN, 2 * MIN, 5 * MIN]

export function atTheStove(day: Day, tab: Tab): void {
  const { chance, person, kitchen } = day
  for (const alert of [...tab.alerts]) if (chance.of(person.answers)) answer(day, tab, alert)
  const views = tab.session.pots()
  for (const view of views) if (chance.of(0.3)) goOn(day, tab, view)
  const view = views.length > 0 ? chance.pick(views) : null
  if (view && view.state.status !== 'idle' && chance.of(person.meddles)) {
    const command = anyCommand(chance, view.state, kitchen.nowMs, tab.session.entriesOf(view.potId))
    tap(day, tab, view.potId, command)
  }
  if (chance.of(0.03)) againLongAfter(day, tab)
}

/** A tap, and what hands do to it: twice, late, with the other thumb. */
function tap(day: Day, tab: Tab, potId: string, command: PotCommand): void {
  const { chance, person, kitchen, counts } = day
  const agoMs = chance.of(person.ago) ? chance.pick(AGO_MS) : 0
  if (agoMs > 0) counts.add('person', 'said it was some minutes ago')
  const sent = kitchen.send(tab, potId, command, { agoMs })
  if (!chance.of(person.doubleTaps)) return
  const same = chance.of(0.5)
  counts.add('person', same ? 'double tap, one id' : 'double tap, two ids')
  const where = chance.of(0.1) ? chance.pick(kitchen.tabs) : tab
  kitchen.send(where, potId, command, { agoMs, commandId: same ? sent.commandId : undefined })
}

/** The same tap again, long after: a notice pressed a second time, a page that sends what it still remembers. */
function againLongAfter(day: Day, tab: Tab): void {
  const { chance, kitchen, counts } = day
  const old = kitchen.sent.length > 0 ? chance.pick(kitchen.sent) : null
  const potId = old?.potIds[0]
  if (!old || potId === undefined || old.potIds.length > 1) return
  counts.add('person', 'the same tap long after')
  kitchen.send(tab, potId, old.command, { commandId: old.commandId })
}

function answer(day: Day, tab: Tab, alert: PotAlert): void {
  const command = commandFor(day, tab, alert)
  if (command !== null) tap(day, tab, alert.potId, command)
}

function commandFor(day: Day, tab: Tab, { potId, alert }: PotAlert): PotCommand | null {
  const { chance, person } = day
  const state = tab.session.pots().find((pot) => pot.potId === potId)?.state
  if (!state || (state.status !== 'running' && state.status !== 'held')) return null
  if (alert.kind === 'outOfBath') return { type: 'PutSkeinsIn', tags: [] }
  if (alert.kind === 'finish') return { type: 'Finish', bath: 'dropped' }
  if (alert.kind === 'look') return { type: 'MarkLooked', path: alert.path ?? '' }
  const active = state.active.find(({ path }) => path === alert.path) ?? state.active[0]
  if (!active) return null
  const { path } = active
  if (chance.of(person.wrongPot) && intoAnotherPot(day, tab, state, path)) return null
  if (chance.of(0.05)) return { type: 'NotYet', path, byMs: 2 * MIN, reason: 'hands in another' }
  return answerFor(chance, state, active, chance.of(person.hopes))
}

/** The acid for one pot went into the other: both learn of it in one go. */
function intoAnotherPot(day: Day, tab: Tab, state: Known, path: string): boolean {
  const { chance, kitchen, counts } = day
  const dose = stepAt(state.programme, path)?.dose
  const other = tab.session.pots().find((pot) => pot.potId !== state.pot.potId && pot.state.status !== 'idle')
  if (!dose || !other) return false
  const amount = amountOf(chance, dose.amount.of)
  const toPotId = other.potId
  const potId = state.pot.potId
  const command: PotCommand = { type: 'ReportAddedElsewhere', path, amount, toPotId }
  const second = { potId: toPotId, command: { type: 'AddUnplanned' as const, amount, fromPotId: potId } }
  const sent = kitchen.send(tab, potId, command, { with: second })
  counts.add('command', 'AddUnplanned')
  counts.add('person', 'added to the wrong pot')
  if (chance.of(0.3)) kitchen.send(tab, potId, command, { with: second, commandId: sent.commandId })
  return true
}

/** A pot that was stopped goes on some time. */
function goOn(day: Day, tab: Tab, { potId, state }: PotView): void {
  const { chance, kitchen } = day
  if (state.status === 'held') tap(day, tab, potId, { type: 'Resume', heldTimeCounts: chance.of(0.5) })
  if (state.status !== 'running' || !state.trouble) return
  const outcome = chance.pick(['absorb', 'restart-step', 'off-protocol'] as const)
  const ago = chance.of(0.08) ? 5 * MIN : -5 * MIN
  tap(day, tab, potId, { type: 'SettleTrouble', beganAtMs: kitchen.nowMs + ago, tempC: null, outcome })
}
