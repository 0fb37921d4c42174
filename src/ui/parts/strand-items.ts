// What stands on a strand that lies flat: knots with a planned and a done time, and the labels they share.

import type { KnotShape, Programme, Step } from '../../core/protocol/model.ts'
import { stepAt } from '../../core/protocol/tree.ts'
import type { BatchRecord, Planned } from '../../core/record/record.ts'

export type StrandItem = {
  path: string
  label: string
  shape: KnotShape
  plannedMs: number | null
  doneMs: number | null
  late: boolean
}

/** A wait that the clock ends is plain yarn: it has no knot of its own. */
function isKnot(step: Step): boolean {
  return !(step.wait && step.wait.until.length === 0)
}

/** The knots of a programme at their planned times. */
export function plannedItems(programme: Programme, plan: Map<string, Planned>): StrandItem[] {
  return [...plan].flatMap(([path, { endMs }]) => {
    const step = stepAt(programme, path)
    return step && isKnot(step)
      ? [{ path, label: step.knot, shape: step.shape, plannedMs: endMs, doneMs: null, late: false }]
      : []
  })
}

/** The knots of a record: what was done, beside when it was planned; for a pot that still runs also what is to come. */
export function recordItems(record: BatchRecord, plan: Map<string, Planned>): StrandItem[] {
  const { programme } = record
  const begun = new Set(record.steps.map((step) => step.path))
  const done = record.steps.flatMap(({ path, label, shape, planned, endMs, how, lateMs }): StrandItem[] => {
    const step = stepAt(programme, path)
    if (!step || !isKnot(step) || how === 'skipped') return []
    return [{ path, label, shape, plannedMs: planned?.endMs ?? null, doneMs: endMs, late: lateMs > 0 }]
  })
  const live = record.identity.endedAtMs === null
  const ahead = live ? plannedItems(programme, plan).filter((item) => !begun.has(item.path)) : []
  return [...done, ...ahead].filter((item) => item.plannedMs !== null || item.doneMs !== null)
}

type Labelled = Pick<StrandItem, 'label'>

export type StrandLabel = { text: string; first: number; last: number }

/** Labels for items in order: three and more of a row that differ only in their number share one, "Band 1 to 8". */
export function gatherLabels(items: readonly Labelled[]): StrandLabel[] {
  const labels: StrandLabel[] = []
  for (let i = 0; i < items.length; ) {
    const name = withoutNumber(items[i] as Labelled)
    let end = i
    while (name !== null && items[end + 1] && withoutNumber(items[end + 1] as Labelled) === name) end++
    if (end - i < 2) end = i
    const first = items[i] as Labelled
    const last = items[end] as Labelled
    const text = end === i ? first.label : `${first.label} to ${/\d+$/.exec(last.label)?.[0] ?? ''}`
    labels.push({ text, first: i, last: end })
    i = end + 1
  }
  return labels
}

function withoutNumber({ label }: Labelled): string | null {
  return /\d+$/.test(label) ? label.replace(/\d+$/, '') : null
}
