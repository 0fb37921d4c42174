// What lies before the camera, and the marks a dyer would put on it with a hand that is not quite steady.
import { type Marks, patchesAlong, spot } from '../../src/core/colour/index.ts'
import type { PhotoChance } from './chance.ts'
import type { Spectrum } from './spectra.ts'

export const width = 400
export const height = 300

export type Box = { x: number; y: number; wide: number; high: number; shares: Spectrum }

export type Scene = {
  ground: Spectrum
  card: Box
  /** Yarn, with texture: undyed, series, bands of the skein. */
  undyed: Box[]
  series: Box[]
  bands: Box[]
  /** Ties and lint over the yarn. */
  ties: Box[]
}

export type Yarns = {
  undyed: Spectrum
  series: Spectrum[]
  bands: Spectrum[]
  ground: Spectrum
  tie: Spectrum
  card: Spectrum
}

const skeinAt = { x: 40, y: 60, wide: 320, high: 56 }

/** The series lies under the skein, from either end; undyed yarn at both ends of it; the card below. */
export function scene(chance: PhotoChance, yarns: Yarns, turned: boolean): Scene {
  const { undyed, series, bands, ground, tie, card } = yarns
  const one = skeinAt.wide / bands.length
  const swatch = skeinAt.wide / series.length
  const nth = (at: number): number => (turned ? series.length - 1 - at : at)
  return {
    ground,
    card: { x: 165, y: 230, wide: 70, high: 52, shares: card },
    undyed: [
      { x: 6, y: 55, wide: 30, high: 66, shares: undyed },
      { x: 364, y: 55, wide: 30, high: 66, shares: undyed }
    ],
    series: series.map((shares, at) => ({
      x: skeinAt.x + nth(at) * swatch,
      y: 150,
      wide: swatch - 4,
      high: 48,
      shares
    })),
    bands: bands.map((shares, at) => ({ ...skeinAt, x: skeinAt.x + at * one, wide: one, shares })),
    ties: Array.from({ length: 3 }, () => ({
      x: chance.between(skeinAt.x, skeinAt.x + skeinAt.wide - 8),
      y: skeinAt.y - 4,
      wide: chance.between(2, 4.5),
      high: skeinAt.high + 8,
      shares: tie
    }))
  }
}

const shaken = (chance: PhotoChance, { x, y, wide, high }: Box, half: number) =>
  spot(x + wide / 2 + chance.normal(), y + high / 2 + chance.normal(), half)

/** `wicking`: so many bands at the far end were above the liquor. */
export function marks(chance: PhotoChance, scene: Scene, wicking: number): Marks {
  const { card, undyed, series, bands } = scene
  const from = { x: skeinAt.x + chance.normal(), y: skeinAt.y + skeinAt.high / 2 + 1.5 * chance.normal() }
  const to = {
    x: skeinAt.x + skeinAt.wide + chance.normal(),
    y: skeinAt.y + skeinAt.high / 2 + 1.5 * chance.normal()
  }
  return {
    grey: shaken(chance, card, 18),
    undyed: undyed.map((box) => shaken(chance, box, 11)),
    series: series.map((box) => shaken(chance, box, Math.min(15, box.wide / 2 - 5))),
    skein: patchesAlong(from, to, 36, bands.length).map((patch, nth) => ({
      patch,
      at: (nth + 0.5) / bands.length,
      band: nth + 1,
      zone: nth >= bands.length - wicking ? 'wicking' : 'dyed'
    }))
  }
}
