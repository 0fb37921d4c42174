// One skein, photographed several times, read and judged by what the app uses.
import { readPhoto, type SplitVerdict, severalPhotos, splitVerdict } from '../../src/core/colour/index.ts'
import { answered } from '../core/chemistry/answered.ts'
import { camera } from './camera.ts'
import { type PhotoChance, photoChance } from './chance.ts'
import { type Kind, type Skein, skein } from './kinds.ts'
import { type LightName, lightNames, lights } from './lights.ts'
import { render } from './render.ts'
import { marks, scene, type Yarns } from './scene.ts'
import { dyed, nms, type Spectrum } from './spectra.ts'

/** Photos of one skein. */
const usualPhotos = 3

export type Judged = { kind: Kind; light: LightName; skein: Skein; photos: number; verdict: SplitVerdict }

/** Parts share no seeds: what is tuned is never judged. */
export type Part = 'tune' | 'judge'
const firstSeed: Record<Part, number> = { tune: 100_000_000, judge: 600_000_000 }

export const seedOf = (part: Part, nth: number): number => firstSeed[part] + nth

/** The photos of one skein, with the marks a dyer would put on them. */
export function pictures(kind: Kind, part: Part, nth: number) {
  const chance = photoChance(seedOf(part, nth))
  const made = skein(chance, kind)
  const light = chance.pick(lightNames)
  const photos = kind === 'one photo' ? 1 : usualPhotos
  return { kind, light, skein: made, photos, taken: photographed(chance, made, light, kind === 'two lights', photos) }
}

/** What the photos of one skein say, before the verdict. */
export function photographs(kind: Kind, part: Part, nth: number) {
  const { taken, ...made } = pictures(kind, part, nth)
  const reads = taken.map(({ photo, marks }) => answered(readPhoto(photo, marks)))
  return { ...made, gathered: answered(severalPhotos(reads)) }
}

export function judge(kind: Kind, part: Part, nth: number): Judged {
  const { gathered, ...made } = photographs(kind, part, nth)
  const { series, undyed, positions, noise, faults } = gathered
  return {
    ...made,
    verdict: splitVerdict({ series, undyed, noise, faults, skein: { positions, dry: true, fibres: 1 } })
  }
}

function photographed(chance: PhotoChance, made: Skein, light: LightName, twoLights: boolean, count: number) {
  const yarns = yarnsOf(chance, made)
  const turned = chance.yes(0.5)
  const first = lights[light] as Spectrum
  const taken = camera(chance, first)
  const second = secondLight(chance, light, twoLights)
  const most = twoLights ? chance.between(0.5, 0.9) : chance.between(0, 0.03)
  // White comes out at 0.6 to 0.95 of the top, as exposure meters leave it.
  const exposure = chance.between(0.6, 0.95)
  return Array.from({ length: count }, () => {
    const laid = scene(chance, yarns, turned)
    const shot = {
      camera: {
        ...taken,
        gains: taken.gains.map((gain) => gain * Math.exp(0.02 * chance.normal())) as typeof taken.gains
      },
      lighting: { first, second, most },
      exposure: exposure * Math.exp(0.03 * chance.normal()),
      quality: Math.round(chance.between(80, 95))
    }
    return { photo: render(chance, laid, shot), marks: marks(chance, laid, made.wicking) }
  })
}

/** Of an uneven light: of the same lamp, but dimmer and a little warmer or cooler; or another lamp. */
function secondLight(chance: PhotoChance, light: LightName, another: boolean): Spectrum {
  const first = lights[light] as Spectrum
  if (!another) {
    const [dim, slope] = [chance.between(0.4, 1.6), 3 * chance.normal()]
    return first.map((value, nth) => Math.max(0, value * dim * (1 + (slope * ((nms[nth] as number) - 550)) / 550)))
  }
  const warm = light === 'tungsten' || light === 'warm LED'
  const other = lights[warm ? 'overcast' : 'tungsten'] as Spectrum
  const level = (of: Spectrum): number => of.reduce((sum, value) => sum + value, 0)
  return other.map((value) => (value * level(first)) / level(other))
}

function yarnsOf(chance: PhotoChance, { dyes, bands, series }: Skein): Yarns {
  const grey = (share: number): Spectrum => nms.map(() => share)
  return {
    undyed: dyes.base,
    series: series.map(({ one, other }) => dyed(dyes, one, other)),
    bands: bands.map(({ one, other }) => dyed(dyes, one, other)),
    ground: grey(chance.between(0.1, 0.5)),
    tie: chance.yes(0.5) ? grey(0.8) : grey(0.06),
    card: nms.map((_, nth) => 0.18 * (1 + (0.02 * (nth - 15)) / 15))
  }
}
