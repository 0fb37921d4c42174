// Deeds that no step of the route asks for, and what any deed answers.

import { stepAt } from '../../protocol/tree.ts'
import { readDepth } from '../../quantity/depth.ts'
import type { PotCommand, Refusal } from '../commands.ts'
import { refuse, type Telling } from '../tell.ts'

type Of<T extends PotCommand['type']> = Extract<PotCommand, { type: T }>

const SAY_MOST = 80
/** A free pot that nobody asked to be called at is called for after this long. Common practice, no source. */
export const OPEN_CALL_MS = 12 * 60 * 60_000

/** Tells a deed, and beside it where the yarn is by it. */
export function noteDeed(t: Telling, { word, say }: Of<'NoteDeed'>): Refusal | null {
  const said = say.trim()
  if (said.length > SAY_MOST) return refuse('too-long', `Say it in at most ${SAY_MOST} letters.`).refusal
  if (word === 'do' && said === '') return refuse('empty', 'Say what was done.').refusal
  const path = t.run.active[0]?.path ?? null
  if (word === 'lower') {
    const depth = readDepth(said)
    if (!depth.ok) return refuse('wrong-answer', `How deep? ${depth.problem.instead}`).refusal
    t.tell({ type: 'DeedDone', word, say: said, path })
    move(t, 'in', depth.value.kind === 'fraction' ? depth.value.value : null, path)
    return null
  }
  t.tell({ type: 'DeedDone', word, say: said, path })
  if (word === 'lift' || word === 'rinse' || word === 'spin' || word === 'air') move(t, 'out', null, path)
  return null
}

function move(t: Telling, place: 'in' | 'out', depth: number | null, path: string | null): void {
  const tags = t.run.pot.skeins.map((skein) => skein.tag)
  t.tell({ type: 'YarnMoved', place, tags, limitAtMs: null, depth, path })
}

const deeds: readonly PotCommand['type'][] = [
  'NoteDeed',
  'AddUnplanned',
  'TopUp',
  'PutSkeinsIn',
  'TakeSkeinsOut',
  'SwapSkeins',
  'ChangeHeat',
  'ReadTemperature',
  'ReadPh',
  'Judge',
  'MarkLooked'
]

/** Who does something at a free pot that calls has heard the call. Never refuses. */
export function seenAt(t: Telling, type: PotCommand['type']): null {
  if (!deeds.includes(type) || t.events.length === 0) return null
  for (const active of [...t.run.active]) {
    const due = active.dueAtMs !== null && active.dueAtMs <= t.atMs
    if (!due || !stepAt(t.run.programme, active.path)?.open) continue
    const { path, timeDueAtMs, remainingMs } = active
    const dueAtMs = t.atMs + OPEN_CALL_MS
    t.tell({ type: 'DueMoved', path, dueAtMs, timeDueAtMs, lateAfterMs: null, remainingMs, why: 'moved', reason: null })
  }
  return null
}
