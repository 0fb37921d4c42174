// How deep a skein goes: to a band of the loop around the step, or to a length.
import type { Draft } from '../draft.ts'
import type { FieldPath, Reading } from '../reading.ts'
import type { LoopItem } from '../scope.ts'
import type { AsWritten } from './fields.ts'

export type DepthRead = { loop: LoopItem | null; depth: NonNullable<Draft['depth']> }

/** `to: band` is the band of the loop; anything else is read as a length or a part of the skein. */
export function readDepthTo(to: AsWritten, at: FieldPath, of: AsWritten | undefined, r: Reading): DepthRead | null {
  const word = String(to).trim()
  const loop = r.scope.loops.findLast(({ name }) => name === word) ?? null
  if (loop) {
    const label = `${loop.name} ${loop.item} of ${loop.count}`
    return { loop, depth: { fraction: loop.index / loop.count, label } }
  }
  if (/^[a-z]+$/i.test(word)) {
    r.say(
      at,
      'no-band',
      `"${word}" is no item of a loop around this step.`,
      'write to: band inside for each: {band: …}, or 12 cm'
    )
    return null
  }
  const depth = r.depth(to, at)
  if (!depth) return null
  if (depth.kind === 'fraction') return { loop: null, depth: { fraction: depth.value, label: depth.asEntered } }
  const whole = of === undefined ? null : r.depth(of, ['of'])
  if (of === undefined) {
    r.say(
      at,
      'missing-field',
      'of is missing: how long does the skein hang?',
      'add of: 60 cm, or write a part of the skein'
    )
    return null
  }
  if (whole?.kind !== 'length' || whole.cm <= 0) {
    if (whole) r.say(['of'], 'not-a-depth', `"${whole.asEntered}" is no length.`, 'write of: 60 cm')
    return null
  }
  return { loop: null, depth: { fraction: Math.min(1, depth.cm / whole.cm), label: depth.asEntered } }
}
