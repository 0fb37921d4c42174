import type { Depth } from './depth.ts'
import { notKnown, showMeasure } from './show-number.ts'
import { showPart } from './show-part.ts'
import type { Units } from './units.ts'

/** A length given in cm: "12.5 cm", "4.9 in". */
export function showLength(lengthCm: number, units: Units): string {
  if (!Number.isFinite(lengthCm)) return notKnown
  if (units.length === 'in') return showMeasure(lengthCm / 2.54, 1, 'in', units)
  return showMeasure(lengthCm, 1, 'cm', units)
}

/** A depth as a length or as a part of the skein: "1/4 of the skein". */
export function showDepth(
  depth: Pick<Depth & { kind: 'length' }, 'kind' | 'cm'> | Pick<Depth & { kind: 'fraction' }, 'kind' | 'value'>,
  units: Units
): string {
  return depth.kind === 'length' ? showLength(depth.cm, units) : `${showPart(depth.value, units)} of the skein`
}
