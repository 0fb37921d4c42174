// What the pictures of a verdict are drawn from: the strip, and hue against depth. All of it stands in the table too.
import {
  chromaOf,
  chromaVariance,
  controlCurve,
  hexOf,
  hueDegOf,
  type Lab,
  type Noise,
  type Point,
  type PositionFound,
  type SplitVerdict
} from '../../../core/colour/index.ts'

export type Judged = { series: Point[]; undyed: Point | null; labs: Lab[]; noise: Noise; verdict: SplitVerdict }

export type StripCell = { band: number; colour: string; control: string | null; found: PositionFound }

/** `labs`: of the positions, in the order of the verdict's. */
export function stripOf({ verdict, labs }: Pick<Judged, 'verdict' | 'labs'>): StripCell[] {
  return verdict.deltaH.map((found, nth) => {
    const { control, depth, band } = found
    const rad = ((control?.hueDeg ?? 0) * Math.PI) / 180
    const at = control && { l: depth, a: control.chroma * Math.cos(rad), b: control.chroma * Math.sin(rad) }
    return { band, found, colour: hexOf(labs[nth] as Lab), control: at && hexOf(at) }
  })
}

/** `hueDeg` runs on past 360 where the neighbours do. `sdDeg`: one standard deviation, as an angle. */
export type OnPlot = { depth: number; hueDeg: number; sdDeg: number }
export type Plot = {
  control: OnPlot[]
  swatches: OnPlot[]
  skein: (OnPlot & { band: number; leftOut: PositionFound['leftOut'] })[]
  depth: [number, number]
  hue: [number, number]
}

const CURVE_POINTS = 24
/** Under this the hue says nothing, and is not drawn. */
const LEAST_CHROMA = 4

/** Null where there is no control curve, or nothing that has a hue. */
export function plotOf({ series, undyed, labs, noise, verdict }: Judged): Plot | null {
  const points = [...series, ...(undyed ? [undyed] : [])]
  if (points.length < 4 || verdict.deltaH.every(({ control }) => control === null)) return null
  const variances = points.map(({ doubt }) => chromaVariance(doubt) + chromaVariance(noise.repeat) / noise.photos)
  const curve = controlCurve(
    points.map(({ lab }) => lab),
    variances
  )
  const middle = hueDegOf(curve.at(curve.deepest))
  const near = (lab: Lab): number => middle + ((hueDegOf(lab) - middle + 540) % 360) - 180
  const point = (lab: Lab, sd: number): OnPlot[] => {
    const chroma = chromaOf(lab)
    if (chroma < LEAST_CHROMA) return []
    return [{ depth: lab.l, hueDeg: near(lab), sdDeg: Math.min(90, (sd / chroma) * (180 / Math.PI)) }]
  }
  const control = Array.from({ length: CURVE_POINTS }, (_, nth) => {
    const depth = curve.deepest + (nth / (CURVE_POINTS - 1)) * (curve.palest - curve.deepest)
    return point(curve.at(depth), Math.sqrt(Math.max(0, curve.stray(depth, depth))))
  }).flat()
  const swatches = series.flatMap(({ lab }, nth) => point(lab, Math.sqrt(variances[nth] ?? 0)))
  const skein = verdict.deltaH.flatMap(({ band, leftOut, sd }, nth) =>
    point(labs[nth] as Lab, sd ?? 0).map((one) => ({ ...one, band, leftOut }))
  )
  if (skein.length === 0) return null
  const all = [...control, ...swatches, ...skein]
  const hues = [...swatches, ...skein].flatMap(({ hueDeg, sdDeg }) => [hueDeg - sdDeg, hueDeg + sdDeg])
  return {
    control,
    swatches,
    skein,
    depth: [Math.min(...all.map(({ depth }) => depth)) - 2, Math.max(...all.map(({ depth }) => depth)) + 2],
    hue: [Math.min(...hues) - 3, Math.max(...hues) + 3]
  }
}

/** Round figures between two ends, some five of them. */
export function ticks([from, to]: readonly [number, number]): number[] {
  const step = [1, 2, 5, 10, 20, 50, 100].find((each) => (to - from) / each <= 6) ?? 200
  const first = Math.ceil(from / step) * step
  return Array.from({ length: Math.max(0, Math.floor((to - first) / step) + 1) }, (_, nth) => first + nth * step)
}
