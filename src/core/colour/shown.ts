// A colour as a screen shows it.
import { convertLab65ToRgb, formatHex, type Rgb } from 'culori/fn'
import type { Lab } from './lab.ts'

/** "#rrggbb" of a colour told against `photoWhite`; what a screen can't show is cut to what it can. */
export function hexOf(lab: Lab): string {
  return formatHex(convertLab65ToRgb({ ...lab }) as Rgb)
}
