// Every pot can always be brought to an end, by answers alone and in a bounded number of them.
import type { PotCommand } from '../../src/core/pot/commands.ts'
import { stepsOf } from '../../src/core/protocol/tree.ts'
import type { PotView } from '../../src/session/types.ts'
import { answerFor } from './commands-by-chance.ts'
import type { Day } from './day.ts'
import { momentsOf } from './rules/standing.ts'
import type { Tab } from './tab.ts'

export async function finishAll(day: Day, tab: Tab): Promise<void> {
  for (const { potId } of tab.session.pots()) await finishPot(day, tab, potId)
}

async function finishPot(day: Day, tab: Tab, potId: string): Promise<void> {
  const { kitchen } = day
  const steps = stepsOfView(viewOf(tab, potId))
  for (let left = 30 + 12 * steps; left > 0; left--) {
    const view = viewOf(tab, potId)
    if (!view || (view.state.status !== 'running' && view.state.status !== 'held')) return
    // The clock was set back and nobody said so: what began lies ahead, and until then no answer is taken.
    const behindMs = Math.max(view.state.startedAtMs, ...view.state.active.map((a) => a.startedAtMs)) - kitchen.nowMs
    if (behindMs > 0) {
      await day.pass(behindMs)
      continue
    }
    const command = nextCommand(day, view)
    if (command === null) {
      if (!(await waitFor(day, view))) return kitchen.complain(`${potId} is stuck at ${openOf(view)}`)
      continue
    }
    const sent = kitchen.send(tab, potId, command)
    await kitchen.settle()
    if (sent.outcome?.ok) continue
    return kitchen.complain(
      `${potId} could not be ended: ${JSON.stringify(command)} got ${JSON.stringify(sent.outcome)}`
    )
  }
  kitchen.complain(`${potId} was not ended by ${30 + 12 * steps} answers: ${openOf(viewOf(tab, potId))}`)
}

function nextCommand(day: Day, { state }: PotView): PotCommand | null {
  const { chance, kitchen } = day
  if (state.status !== 'running' && state.status !== 'held') return null
  if (state.status === 'held') return { type: 'Resume', heldTimeCounts: chance.of(0.5) }
  if (state.trouble) {
    const outcome = chance.pick(['absorb', 'restart-step', 'off-protocol'] as const)
    return { type: 'SettleTrouble', beganAtMs: kitchen.nowMs, tempC: null, outcome }
  }
  for (const active of state.active) {
    const command = answerFor(chance, state, active, true)
    if (command !== null) return command
  }
  return state.stepsDone && state.active.length === 0 ? { type: 'Finish', bath: 'dropped' } : null
}

/** Lets the time pass that a pot waits for; false: there is none. */
async function waitFor(day: Day, { state }: PotView): Promise<boolean> {
  const next = Math.min(
    ...momentsOf(state)
      .filter(({ kind }) => kind === 'close')
      .map(({ atMs }) => atMs)
  )
  if (!Number.isFinite(next)) return false
  await day.pass(Math.max(1000, next - day.kitchen.nowMs))
  return true
}

function viewOf(tab: Tab, potId: string): PotView | undefined {
  return tab.session.pots().find((pot) => pot.potId === potId)
}

function stepsOfView(view: PotView | undefined): number {
  return view === undefined || view.state.status === 'idle' ? 0 : stepsOf(view.state.programme).length
}

function openOf(view: PotView | undefined): string {
  if (view === undefined || view.state.status === 'idle') return 'nothing'
  return view.state.active.map(({ path, dueAtMs, met }) => `${path} (due ${dueAtMs}, met ${met})`).join(', ')
}
