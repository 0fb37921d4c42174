// The protocol in which nothing was wrong last: while a title, a note or a comment of it is typed, its steps need not be
// gone through again.
import type { Programme, Protocol } from '../model.ts'
import type { Bearing } from '../read/header.ts'
import { triedAlready } from './trial.ts'

type Sound = { protocol: Protocol; programme: Programme }

let last: Sound | null = null

/** `programme`: with the trial inputs. */
export function foundSound(protocol: Protocol, programme: Programme): void {
  last = { protocol, programme }
}

/** Whether it differs from the last sound one in nothing that bears on its steps. Its trial programme is then known. */
export function soundAsBefore(protocol: Protocol): boolean {
  if (last === null || !saysTheSame(bearingOf(protocol), bearingOf(last.protocol))) return false
  triedAlready(protocol, { ...last.programme, title: protocol.title })
  return true
}

/** All but what is only said to people. */
function bearingOf({ title, about, use, trouble, demo, ...bearing }: Protocol): Bearing & Pick<Protocol, 'steps'> {
  return bearing
}

/** The reader gives the same node for a part that has not changed, so that only what was typed into is looked through:
 * often it was its comment. */
function saysTheSame(a: unknown, b: unknown): boolean {
  if (a === b) return true
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false
  if (Array.isArray(a) !== Array.isArray(b)) return false
  const [ours, theirs] = [a, b] as [Record<string, unknown>, Record<string, unknown>]
  const keys = Object.keys(ours)
  if (keys.length !== Object.keys(theirs).length) return false
  return keys.every((key) => Object.hasOwn(theirs, key) && saysTheSame(ours[key], theirs[key]))
}
