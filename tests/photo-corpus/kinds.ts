// The kinds of skeins: what was dyed, and what is true of it.
import { chromaOf, type Lab } from '../../src/core/colour/index.ts'
import type { PhotoChance } from './chance.ts'
import { type Taken, taken } from './dyebath.ts'
import { type Dyes, dyed, dyes } from './spectra.ts'
import { trueDeltaH, trueLab } from './true-colour.ts'

export const kindNames = ['split', 'dilution', 'pale', 'pale split', 'two lights', 'thin series', 'one photo'] as const
export type Kind = (typeof kindNames)[number]

export type Skein = {
  dyes: Dyes
  /** Of the bath at the start: one dye to the other. */
  ratio: number
  bands: Taken[]
  /** The last so many bands wicked. */
  wicking: number
  series: Taken[]
  /** ΔH* end to end at equal depth, without any camera. */
  size: number
  /** Turn of the hue angle from end to end, in degrees, dilution and all. */
  turnedDeg: number
}

/** A splitting skein has half-times that differ by up to four times, as often a little as much. */
export function skein(chance: PhotoChance, kind: Kind): Skein {
  for (;;) {
    const made = anySkein(chance, kind)
    if (made) return made
  }
}

const splits = (kind: Kind): boolean => kind === 'split' || kind === 'pale split'
const isPale = (kind: Kind): boolean => kind === 'pale' || kind === 'pale split'

/** Null where chance made a colour that its kind does not have. */
function anySkein(chance: PhotoChance, kind: Kind): Skein | null {
  const three = dyes(chance)
  const ratio = chance.octaves(0.4, 2.5)
  const count = 5 + Math.floor(4 * chance.unit())
  const wicking = chance.yes(0.2) ? 1 : 0
  const bands = splits(kind) || chance.yes(0.5) ? byBath(chance, kind, count) : bySteps(chance, count)
  const depth = isPale(kind) ? chance.octaves(0.02, 0.12) : chance.octaves(0.8, 5)
  const most = Math.max(...bands.map(({ one }) => one))
  const scaled = bands.map(({ one, other }, nth) => {
    // Level dyeing is never quite level; what wicked went its own way.
    const uneven = 1 + 0.004 * chance.normal() + (nth >= count - wicking ? 0.6 : 0)
    return { one: ((one * depth * ratio) / most / (1 + ratio)) * uneven, other: (other * depth) / most / (1 + ratio) }
  })
  const dyedBands = scaled.slice(0, count - wicking)
  const labs = dyedBands.map(({ one, other }) => trueLab(dyed(three, one, other)))
  const base = trueLab(three.base)
  if (!fits(kind, labs, base)) return null
  const offs = labs.map((lab) => trueDeltaH(three, ratio, lab))
  const [first, last] = [labs[0] as Lab, labs.at(-1) as Lab]
  return {
    dyes: three,
    ratio,
    bands: scaled,
    wicking,
    series: series(chance, dyedBands, ratio, kind === 'thin series' ? 2 : 5 + Math.floor(3 * chance.unit())),
    size: (offs.at(-1) as number) - (offs[0] as number),
    turnedDeg: turned(first, last)
  }
}

/** Bands that enter a bath one after another. */
function byBath(chance: PhotoChance, kind: Kind, count: number): Taken[] {
  const between = chance.between(3, 8)
  const entersMin = Array.from({ length: count }, (_, nth) => nth * between)
  const half = chance.octaves(4, 12)
  const times = splits(kind) ? chance.octaves(1.05, 4) : 1
  const pair: [number, number] = chance.yes(0.5) ? [half, half * times] : [half * times, half]
  return taken({ entersMin, endMin: count * between + chance.between(15, 50), halfTimeMin: pair }).bands
}

/** Bands dipped for less and less: up to sixteen times paler, all in the ratio of the bath. */
function bySteps(chance: PhotoChance, count: number): Taken[] {
  const times = chance.octaves(2, 16)
  return Array.from({ length: count }, (_, nth) => {
    const much = times ** (-nth / (count - 1))
    return { one: much, other: much }
  })
}

/** Each a little off, for dye is measured by hand: 1 % of the ratio. */
function series(chance: PhotoChance, bands: Taken[], ratio: number, count: number): Taken[] {
  const much = bands.map(({ one, other }) => one + other)
  const [deep, pale] = [Math.max(...much) * 1.5, Math.min(...much) * 0.7]
  return Array.from({ length: count }, (_, nth) => {
    const total = deep * (pale / deep) ** (nth / (count - 1))
    const off = 1 + 0.01 * chance.normal()
    return { one: (total * ratio * off) / (1 + ratio), other: total / (1 + ratio) }
  })
}

const fromBase = (lab: Lab, base: Lab): number => Math.hypot(lab.a - base.a, lab.b - base.b)

/** Pale: no band is far from the undyed yarn, or has much chroma. The others: every band is well away from both. */
function fits(kind: Kind, labs: Lab[], base: Lab): boolean {
  const clear = labs.map((lab) => Math.min(chromaOf(lab), fromBase(lab, base)))
  return isPale(kind) ? Math.max(...clear) < 6.5 : Math.min(...clear) > 10 && Math.min(...labs.map(({ l }) => l)) > 18
}

function turned(first: Lab, last: Lab): number {
  const deg = ((Math.atan2(last.b, last.a) - Math.atan2(first.b, first.a)) * 180) / Math.PI
  return Math.abs(((deg + 540) % 360) - 180)
}
