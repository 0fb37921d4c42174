// Lights that yarn is photographed in, as shares at 400 to 700 nm.
import { tablesOf } from '../../src/core/colour/instrument/observers.ts'
import { nms, type Spectrum } from './spectra.ts'

const ofTable = (white: 'D65/2' | 'D50/2' | 'A/2'): Spectrum => tablesOf(white).light.slice(2, 33)

const peak = (nm: number, at: number, wide: number): number => Math.exp(-0.5 * ((nm - at) / wide) ** 2)

const daylight = ofTable('D65/2')

/** Made up but for the three of the CIE: the shapes of an overcast sky, white LEDs and a three-band tube, from memory. */
export const lights = {
  daylight,
  window: ofTable('D50/2'),
  overcast: nms.map((nm, nth) => (daylight[nth] as number) * (1.25 - (nm - 400) / 900)),
  'cool LED': nms.map((nm) => 100 * (peak(nm, 450, 11) + 0.75 * peak(nm, 550, 55) + 0.15 * peak(nm, 620, 40))),
  'warm LED': nms.map((nm) => 100 * (0.4 * peak(nm, 452, 12) + 0.85 * peak(nm, 600, 62) + 0.1 * peak(nm, 520, 30))),
  'three-band tube': nms.map(
    (nm) => 20 + 160 * peak(nm, 436, 8) + 80 * peak(nm, 488, 9) + 300 * peak(nm, 545, 8) + 290 * peak(nm, 611, 9)
  ),
  tungsten: ofTable('A/2')
} satisfies Record<string, Spectrum>

export type LightName = keyof typeof lights
export const lightNames = Object.keys(lights) as LightName[]
