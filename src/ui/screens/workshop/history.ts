// What was done to a text, as small steps that can be undone and done again.
import type { DraftStep } from '../../writing.ts'

export type History = { text: string; undo: DraftStep[]; redo: DraftStep[] }

/** More than a sitting needs; the oldest go first. */
export const STEPS_MOST = 500
/** How much of the undone and done text is kept with a draft, in letters: a pasted file must not be written 500 times. */
const KEPT_MOST = 200_000

/** `joins`: goes with the step before, as the letters of one word do. */
export function changed(history: History, text: string, joins: boolean): History {
  if (text === history.text) return history
  const last = joins ? history.undo.at(-1) : undefined
  const before = last === undefined ? history.text : withStep(history.text, inverse(last))
  const earlier = last === undefined ? history.undo : history.undo.slice(0, -1)
  // Typed and deleted again: as if nothing had been.
  const undo = before === text ? earlier : [...earlier, stepBetween(before, text)].slice(-STEPS_MOST)
  return { text, undo, redo: [] }
}

export function undone(history: History): History {
  const step = history.undo.at(-1)
  if (step === undefined) return history
  return {
    text: withStep(history.text, inverse(step)),
    undo: history.undo.slice(0, -1),
    redo: [...history.redo, step]
  }
}

export function redone(history: History): History {
  const step = history.redo.at(-1)
  if (step === undefined) return history
  return { text: withStep(history.text, step), undo: [...history.undo, step], redo: history.redo.slice(0, -1) }
}

/** A kept history in which a step does not fit the text any more is cut there: it would tear the text. */
export function fitting({ text, undo, redo }: History): History {
  return { text, undo: fittingSteps(text, undo, inverse), redo: fittingSteps(text, redo, (step) => step) }
}

function fittingSteps(text: string, steps: DraftStep[], way: (step: DraftStep) => DraftStep): DraftStep[] {
  const good: DraftStep[] = []
  let here = text
  for (const step of steps.toReversed()) {
    const next = way(step)
    if (!here.startsWith(next.was, next.at)) break
    here = withStep(here, next)
    good.unshift(step)
  }
  return good
}

/** The latest steps that are worth keeping with the text. */
export function latest(steps: readonly DraftStep[]): DraftStep[] {
  let letters = 0
  const from = steps.findLastIndex(({ was, now }) => {
    letters += was.length + now.length
    return letters > KEPT_MOST
  })
  return steps.slice(from + 1)
}

/** What differs between two texts, as one step. */
export function stepBetween(before: string, after: string): DraftStep {
  const most = Math.min(before.length, after.length)
  let at = 0
  while (at < most && before[at] === after[at]) at++
  let end = 0
  while (end < most - at && before[before.length - 1 - end] === after[after.length - 1 - end]) end++
  return { at, was: before.slice(at, before.length - end), now: after.slice(at, after.length - end) }
}

function inverse({ at, was, now }: DraftStep): DraftStep {
  return { at, was: now, now: was }
}

function withStep(text: string, { at, was, now }: DraftStep): string {
  return text.slice(0, at) + now + text.slice(at + was.length)
}
