// Yarn and dyes as spectra, mixed by the law of Kubelka and Munk: K/S = (1 - R)² / (2 R) adds up (P. Kubelka and F. Munk,
// 1931; D. B. Judd and G. Wyszecki, Color in Business, Science and Industry, 1975; from memory, values in
// tests/reference/data/06_colour.json).
import type { PhotoChance } from './chance.ts'

/** 400 to 700 nm in steps of 10. */
export const nms: readonly number[] = Array.from({ length: 31 }, (_, nth) => 400 + 10 * nth)
export type Spectrum = readonly number[]

export const ksOf = (share: number): number => (1 - share) ** 2 / (2 * share)
export const shareOf = (ks: number): number => 1 + ks - Math.sqrt(ks * ks + 2 * ks)

const bump = (nm: number, at: number, left: number, right: number): number =>
  Math.exp(-0.5 * ((nm - at) / (nm < at ? left : right)) ** 2)

/** Cream to white wool: gives back less of the blue. */
export function yarn(chance: PhotoChance): Spectrum {
  const [low, high, at] = [chance.between(0.42, 0.6), chance.between(0.74, 0.86), chance.between(420, 470)]
  return nms.map((nm) => low + (high - low) / (1 + Math.exp(-(nm - at) / 35)))
}

/** Where the three kinds of primary dyes take light. */
const families = { yellow: [400, 455], red: [500, 550], blue: [580, 650] } as const
type Family = keyof typeof families

function dye(chance: PhotoChance, family: Family): Spectrum {
  const [from, to] = families[family]
  const at = chance.between(from, to)
  const [left, right] = [chance.between(28, 60), chance.between(18, 45)]
  const second = { at: at + chance.between(-140, -60), size: chance.between(0, 0.25), wide: chance.between(25, 50) }
  const all = nms.map((nm) => bump(nm, at, left, right) + second.size * bump(nm, second.at, second.wide, second.wide))
  const most = Math.max(...all)
  return all.map((value) => value / most + 0.004)
}

export type Dyes = { one: Spectrum; other: Spectrum; base: Spectrum }

export function dyes(chance: PhotoChance): Dyes {
  const [first, second] = chance.pick([
    ['yellow', 'blue'],
    ['yellow', 'red'],
    ['red', 'blue'],
    ['blue', 'yellow'],
    ['red', 'yellow'],
    ['blue', 'red']
  ] as const)
  return { one: dye(chance, first), other: dye(chance, second), base: yarn(chance) }
}

/** `one` and `other`: how much of each dye, in K/S at its peak. */
export function dyed({ one: first, other: second, base }: Dyes, one: number, other: number): Spectrum {
  return base.map((share, nth) => shareOf(ksOf(share) + one * (first[nth] as number) + other * (second[nth] as number)))
}
