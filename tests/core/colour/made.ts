// Series and skeins of a made-up dye for tests of the verdict: colours on a smooth curve, without any camera.
import type { Given, Lab, Noise, Point, Position } from '../../../src/core/colour/index.ts'

/** What the dye looks like at a lightness: its hue turns by dilution alone, from 300 to 270 degrees. */
export function control(l: number): Lab {
  const pale = (l - 25) / 65
  const [hue, chroma] = [((300 - 30 * pale) * Math.PI) / 180, 42 - 22 * pale]
  return { l, a: chroma * Math.cos(hue), b: chroma * Math.sin(hue) }
}

/** Moved by `turn` ΔH* across the hue: to the side where the hue angle goes up. */
export function turned(lab: Lab, turn: number): Lab {
  const chroma = Math.hypot(lab.a, lab.b)
  const half = Math.asin(turn / (2 * chroma))
  const [cos, sin] = [Math.cos(2 * half), Math.sin(2 * half)]
  return { l: lab.l, a: lab.a * cos - lab.b * sin, b: lab.a * sin + lab.b * cos }
}

export const point = (lab: Lab, sd = 0.1): Point => ({
  lab,
  doubt: [
    [sd ** 2, 0, 0],
    [0, sd ** 2, 0],
    [0, 0, sd ** 2]
  ],
  lightAt: 0.5
})

export const quiet: Noise = {
  repeat: [
    [0.04, 0, 0],
    [0, 0.04, 0],
    [0, 0, 0.04]
  ],
  freedom: 30,
  photos: 3,
  light: { l: 0, a: 0, b: 0 }
}

export const series = (depths = [22, 30, 38, 46, 54, 62, 70]): Point[] => depths.map((l) => point(control(l)))

/** Bands that get lighter from end to end, each turned by its share of the profile (ΔH*). */
export function positions(profile: readonly number[], lightest = 65): Position[] {
  return profile.map((turn, nth) => {
    const at = nth / (profile.length - 1)
    return { ...point(turned(control(30 + at * (lightest - 30)), turn)), at, band: nth + 1, zone: 'dyed' }
  })
}

export const rising = (size: number, count = 6): number[] =>
  Array.from({ length: count }, (_, nth) => (size * nth) / (count - 1))

export function given(profile: readonly number[], other: Partial<Given> = {}): Given {
  return {
    series: series(),
    undyed: null,
    skein: { positions: positions(profile), dry: true, fibres: 1 },
    noise: quiet,
    ...other
  }
}
