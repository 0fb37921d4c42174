// The protocol in which nothing was wrong last: while a title, a note or a comment of it is typed, its steps need not be
// gone through again.
import type { Programme, Protocol, WrittenNode } from '../model.ts'
import { triedAlready } from './trial.ts'

type Sound = { steps: Protocol['steps']; bearing: string; programme: Programme }

let last: Sound | null = null

/** `programme`: with the trial inputs. */
export function foundSound(protocol: Protocol, programme: Programme): void {
  last = { steps: protocol.steps, bearing: bearingOf(protocol), programme }
}

/** Whether it differs from the last sound one in nothing that bears on its steps. Its trial programme is then known. */
export function soundAsBefore(protocol: Protocol): boolean {
  if (last === null || last.steps.length !== protocol.steps.length) return false
  const { steps, programme } = last
  if (!protocol.steps.every((node, i) => says(node, steps[i])) || last.bearing !== bearingOf(protocol)) return false
  triedAlready(protocol, { ...programme, title: protocol.title })
  return true
}

/** The reader gives the same node for a part that has not changed, so that only what was typed into is looked through:
 * most likely its comment was changed. */
function says(node: WrittenNode, before: WrittenNode | undefined): boolean {
  return node === before || JSON.stringify(node) === JSON.stringify(before)
}

function bearingOf({ steps, title, about, use, trouble, demo, ...bearing }: Protocol): string {
  return JSON.stringify(bearing)
}
