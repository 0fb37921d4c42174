// Alerts as the journal tells them: each due moment once, at its own time and not before.
import type { Programme } from '../../../src/core/protocol/model.ts'
import { stepAt } from '../../../src/core/protocol/tree.ts'
import type { PotEntry } from '../../../src/session/ports.ts'

const HEADS_UP_MS = 60_000

type Open = { dueAtMs: number | null; lookedAtMs: number; called: number; looked: number }

/** `setBackMs`: how far the clock was set back that day. A moment that came before it was may be written down after. */
export function alertsBroken(programme: Programme, held: readonly PotEntry[], setBackMs: number): string[] {
  const broken: string[] = []
  const open = new Map<string, Open>()
  const keys = new Set<string>()
  let done = false
  for (const { event, atMs, recordedAtMs } of held) {
    if (event.type === 'StepStarted') {
      open.set(event.path, { dueAtMs: event.dueAtMs, lookedAtMs: atMs, called: 0, looked: 0 })
    }
    if (event.type === 'StepClosed') open.delete(event.path)
    if (event.type === 'StepsDone') done = true
    if (event.type === 'ClockShifted') for (const each of open.values()) shift(each, event.byMs)
    const here = 'path' in event && event.path !== null ? open.get(event.path) : undefined
    if (event.type === 'Looked' && here) Object.assign(here, { lookedAtMs: atMs, looked: 0 })
    if (event.type === 'DueMoved' && here) Object.assign(here, { dueAtMs: event.dueAtMs, called: 0 })
    if (event.type !== 'AlertRaised') continue
    const { key, kind, path } = event
    if (event.told === undefined) broken.push(`the alert "${key}" does not say by what it was told`)
    if (keys.has(key)) broken.push(`the alert "${key}" was raised twice`)
    keys.add(key)
    const earlyMs = atMs - recordedAtMs
    if (earlyMs > 0 && earlyMs > setBackMs) {
      broken.push(`the alert "${key}" was raised ${earlyMs} ms before its time`)
    }
    const due = dueOf(kind, path, here, programme)
    if (due !== undefined && due !== atMs) broken.push(`the alert "${key}" was raised for ${atMs}, it is due at ${due}`)
    if (kind === 'finish' && !done) broken.push('the end was called before it came')
    if (!here) continue
    if ((kind === 'call' || kind === 'heat') && ++here.called > 1)
      broken.push(`${path} was called twice for one moment`)
    if (kind === 'look' && ++here.looked > 1) broken.push(`${path} asked twice for one look`)
  }
  return broken
}

/** The due time as the journal has it; null: there is none; undefined: not told of one step. */
function dueOf(
  kind: string,
  path: string | null,
  open: Open | undefined,
  programme: Programme
): number | null | undefined {
  if (path === null) return undefined
  if (!open) return null
  const everyMs = stepAt(programme, path)?.lookEveryMs ?? null
  if (kind === 'look') return everyMs === null ? null : open.lookedAtMs + everyMs
  if (open.dueAtMs === null) return null
  return kind === 'headsUp' ? open.dueAtMs - HEADS_UP_MS : open.dueAtMs
}

function shift(open: Open, byMs: number): void {
  open.lookedAtMs += byMs
  if (open.dueAtMs !== null) open.dueAtMs += byMs
}
