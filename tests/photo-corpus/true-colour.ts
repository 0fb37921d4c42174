// The colours as the standard observer sees them in daylight, without any camera: what is true of a made-up skein.

import { labOfReflectance } from '../../src/core/colour/instrument/reflectance.ts'
import { deltaHue, type Lab } from '../../src/core/colour/lab.ts'
import { answered } from '../core/chemistry/answered.ts'
import { type Dyes, dyed, type Spectrum } from './spectra.ts'

export const trueLab = (shares: Spectrum): Lab =>
  answered(labOfReflectance({ firstNm: 400, everyNm: 10, shares, white: 'D65/2' })).lab

/** ΔH* of a colour from the pure dilution of the mix `ratio` (one to other) at the same L*. */
export function trueDeltaH(dyes: Dyes, ratio: number, lab: Lab): number {
  let [pale, deep] = [1e-4, 1e3]
  const at = (much: number): Lab => trueLab(dyed(dyes, (much * ratio) / (1 + ratio), much / (1 + ratio)))
  for (let turn = 0; turn < 50; turn++) {
    const middle = Math.sqrt(pale * deep)
    if (at(middle).l > lab.l) pale = middle
    else deep = middle
  }
  return deltaHue(at(Math.sqrt(pale * deep)), lab)
}
