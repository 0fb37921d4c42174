// A camera: three sensitivities, white balance with an error, a matrix to sRGB fitted to dyed yarn in daylight, noise, a tone
// curve, eight bits. No camera sees as the standard observer does, and none tells what it did to the tones.

import { tablesOf } from '../../src/core/colour/instrument/observers.ts'
import { type Linear, xyzOf } from '../../src/core/colour/linear.ts'
import { type PhotoChance, photoChance } from './chance.ts'
import { lights } from './lights.ts'
import { dyed, dyes, nms, type Spectrum } from './spectra.ts'

type Triple = [number, number, number]

export type Camera = {
  sensitive: [Spectrum, Spectrum, Spectrum]
  toRgb: [Triple, Triple, Triple]
  gains: Triple
  noise: { read: number; shot: number }
  /** 256 code values over linear light 0 to 1, `codes.length` steps. */
  codes: Uint8Array
  vignette: number
}

const gauss = (at: number, wide: number): Spectrum => nms.map((nm) => Math.exp(-0.5 * ((nm - at) / wide) ** 2))

export const seen = (sensitive: Spectrum, light: Spectrum, shares: Spectrum): number =>
  nms.reduce((sum, _, nth) => sum + (sensitive[nth] as number) * (light[nth] as number) * (shares[nth] as number), 0)

const rawOf = (sensitive: Camera['sensitive'], light: Spectrum, shares: Spectrum): Triple =>
  sensitive.map((one) => seen(one, light, shares)) as Triple

const full: Spectrum = nms.map(() => 1)

/** `light`: what it balances its white for, with an error of its own. */
export function camera(chance: PhotoChance, light: Spectrum): Camera {
  const sensitive: Camera['sensitive'] = [
    gauss(chance.between(592, 606), chance.between(30, 40)),
    gauss(chance.between(530, 542), chance.between(36, 44)),
    gauss(chance.between(455, 467), chance.between(24, 32))
  ]
  const white = rawOf(sensitive, light, full)
  const gains = white.map((value) => Math.exp(0.06 * chance.normal()) / value) as Triple
  return {
    sensitive,
    toRgb: fitted(sensitive, chance.between(1, 1.15)),
    gains,
    noise: { read: chance.between(0.0005, 0.003), shot: chance.octaves(0.00005, 0.0006) },
    codes: toneCurve(chance.between(-0.05, 0.3)),
    vignette: chance.between(0.02, 0.2)
  }
}

/** Least squares from balanced camera values to linear sRGB, over dyed yarn of a training set of its own, in daylight. */
function fitted(sensitive: Camera['sensitive'], vivid: number): Camera['toRgb'] {
  const chance = photoChance(31_415)
  const light = lights.daylight
  const white = rawOf(sensitive, light, full)
  const rows: { raw: Triple; rgb: Triple }[] = Array.from({ length: 60 }, () => {
    const shares = dyed(dyes(chance), chance.octaves(0.05, 6), chance.octaves(0.05, 6))
    const raw = rawOf(sensitive, light, shares).map((value, nth) => value / (white[nth] as number)) as Triple
    return { raw, rgb: rgbOf(shares) }
  })
  // White counts for many: a camera keeps its greys grey.
  for (let n = 0; n < 60; n++) rows.push({ raw: [1, 1, 1], rgb: [1, 1, 1] })
  const matrix = [0, 1, 2].map((channel) => leastSquares(rows.map(({ raw, rgb }) => [raw, rgb[channel] as number])))
  return matrix.map((row) =>
    row.map((value, nth) => {
      const grey = [0, 1, 2].reduce((sum, other) => sum + ((matrix[other] as Triple)[nth] as number), 0) / 3
      return grey + vivid * (value - grey)
    })
  ) as Camera['toRgb']
}

/** What the standard observer sees of it in daylight, in the primaries of sRGB. */
function rgbOf(shares: Spectrum): Triple {
  const { light, observer } = tablesOf('D65/2')
  const sum = (of: readonly number[], by: Spectrum): number =>
    by.reduce((all, share, nth) => all + share * (of[nth + 2] as number) * (light[nth + 2] as number), 0)
  const xyz = (['x', 'y', 'z'] as const).map((axis) => sum(observer[axis], shares) / sum(observer.y, full)) as Triple
  return solve3([toXyz('r'), toXyz('g'), toXyz('b')], xyz)
}

const toXyz = (primary: keyof Linear): Triple => {
  const { x, y, z } = xyzOf({ r: 0, g: 0, b: 0, [primary]: 1 })
  return [x, y, z]
}

const det = ([a, b, c]: [Triple, Triple, Triple]): number =>
  a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) + a[2] * (b[0] * c[1] - b[1] * c[0])

/** The three weights of `columns` that give `right`, by Cramer's rule. */
function solve3(columns: [Triple, Triple, Triple], right: Triple): Triple {
  const whole = det(columns)
  return columns.map((_, nth) => {
    const put = columns.map((column, other) => (other === nth ? right : column)) as [Triple, Triple, Triple]
    return det(put) / whole
  }) as Triple
}

function leastSquares(rows: [Triple, number][]): Triple {
  const columns = [0, 1, 2].map((i) =>
    [0, 1, 2].map((j) => rows.reduce((sum, [raw]) => sum + (raw[i] as number) * (raw[j] as number), 0))
  ) as [Triple, Triple, Triple]
  return solve3(
    columns,
    [0, 1, 2].map((i) => rows.reduce((sum, [raw, rgb]) => sum + (raw[i] as number) * rgb, 0)) as Triple
  )
}

const steps = 4096

/** The curve of sRGB, bent to an S by `contrast`. */
function toneCurve(contrast: number): Uint8Array {
  return Uint8Array.from({ length: steps + 1 }, (_, nth) => {
    const light = nth / steps
    const value = light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055
    return Math.round(255 * (value + contrast * value * (1 - value) * (2 * value - 1)))
  })
}

/** Linear light in camera values, white balanced. */
export const exposed = ({ sensitive, gains }: Camera, light: Spectrum, shares: Spectrum): Triple =>
  rawOf(sensitive, light, shares).map((value, nth) => value * (gains[nth] as number)) as Triple
