import { describe, expect, it } from 'vitest'
import { isRefused } from '../../../../src/core/chemistry/answer.ts'
import {
  type Marks,
  type Photo,
  type PhotoRead,
  patchesAlong,
  readPhoto,
  severalPhotos,
  spot
} from '../../../../src/core/colour/index.ts'
import { readPatch } from '../../../../src/core/colour/photo/patch-reading.ts'
import { photoChance } from '../../../photo-corpus/chance.ts'
import { answered, problemsOf } from '../../chemistry/answered.ts'

type Rgb = readonly [number, number, number]

const plain = (width: number, height: number, colour: Rgb): Photo => {
  const data = new Uint8ClampedArray(width * height * 4)
  for (let at = 0; at < data.length; at += 4) data.set([...colour, 255], at)
  return { data, width, height }
}

const fill = (photo: Photo, x: number, y: number, wide: number, high: number, colour: Rgb): void => {
  for (let row = y; row < y + high; row++)
    for (let column = x; column < x + wide; column++) photo.data.set(colour, 4 * (row * photo.width + column))
}

describe('one patch', () => {
  it('of one colour is that colour, with nothing left out, wherever it is turned to', () => {
    const photo = plain(100, 100, [120, 60, 200])
    for (const turnRad of [0, 0.4, 1.2, 3]) {
      const reading = readPatch(photo, { x: 50, y: 50, halfLong: 20, halfWide: 10, turnRad })
      expect(reading?.count).toBe(800)
      expect(reading?.leftOut).toBe(0)
      // IEC 61966-2-1: code 120 is ((120/255 + 0.055) / 1.055) ^ 2.4 of full light.
      expect(reading?.mean.r).toBeCloseTo(((120 / 255 + 0.055) / 1.055) ** 2.4, 9)
    }
  })

  it('with noise is the middle, and its pieces say how sure that is', () => {
    const [photo, chance] = [plain(100, 100, [0, 0, 0]), photoChance(5)]
    for (let at = 0; at < photo.data.length; at += 4) photo.data.fill(120 + 8 * chance.normal(), at, at + 3)
    const reading = readPatch(photo, spot(50, 50, 40))
    const [mean, pieces] = [reading?.mean.r ?? 0, reading?.pieces.map(({ r }) => r) ?? []]
    expect(pieces).toHaveLength(16)
    // A code is about 0.0033 of light there: 8 codes, over the root of 4,000 pixels.
    expect(Math.abs(mean - 0.1879)).toBeLessThan(4 * 0.0033 * (8 / 63) + 0.001)
    const sd = Math.sqrt(pieces.reduce((sum, piece) => sum + (piece - mean) ** 2, 0) / 15)
    expect(sd).toBeGreaterThan(0.5 * 0.0033 * (8 / 16))
    expect(sd).toBeLessThan(2 * 0.0033 * (8 / 16))
  })

  it('leaves out ties, shadow and lint, up to a third of it', () => {
    const photo = plain(100, 100, [120, 60, 200])
    fill(photo, 40, 0, 7, 100, [250, 250, 250])
    fill(photo, 60, 0, 5, 100, [20, 10, 30])
    const reading = readPatch(photo, spot(50, 50, 20))
    expect(reading?.leftOut).toBeCloseTo(12 / 40, 9)
    const clean = readPatch(plain(100, 100, [120, 60, 200]), spot(50, 50, 20))
    for (const channel of ['r', 'g', 'b'] as const)
      expect(reading?.mean[channel]).toBeCloseTo(clean?.mean[channel] ?? 9, 12)
  })

  it('half outside the picture is read by its other half; wholly outside is none', () => {
    const photo = plain(100, 100, [120, 60, 200])
    expect(readPatch(photo, spot(0, 50, 10))?.count).toBe(200)
    expect(readPatch(photo, spot(-30, 50, 10))).toBeNull()
    expect(readPatch(photo, spot(Number.NaN, 50, 10))).toBeNull()
  })

  it('of a large mark looks at four thousand pixels, not at millions', () => {
    const reading = readPatch(plain(2000, 1500, [120, 60, 200]), spot(1000, 750, 700))
    expect(reading?.count).toBeGreaterThan(3_600)
    expect(reading?.count).toBeLessThanOrEqual(4_000)
  })
})

it('patches along a line lie in the middle of equal stretches, along it', () => {
  const patches = patchesAlong({ x: 10, y: 20 }, { x: 110, y: 20 }, 30, 5)
  expect(patches.map(({ x, y }) => [x, y])).toEqual([20, 40, 60, 80, 100].map((x) => [x, 20]))
  expect(patches[0]).toMatchObject({ halfLong: 7, halfWide: 15, turnRad: 0 })
})

const grey: Rgb = [118, 118, 118]
const wool: Rgb = [225, 215, 195]

/** Card at the left, undyed yarn at both ends, a series of four, a skein of three. */
function still(change: (photo: Photo) => void = () => {}): Photo {
  const photo = plain(600, 300, [90, 90, 90])
  fill(photo, 0, 0, 60, 60, grey)
  fill(photo, 0, 100, 50, 50, wool)
  fill(photo, 550, 100, 50, 50, wool)
  for (const nth of [0, 1, 2, 3])
    fill(photo, 100 + 100 * nth, 200, 60, 60, [60 + 30 * nth, 40 + 30 * nth, 120 + 20 * nth])
  for (const nth of [0, 1, 2])
    fill(photo, 100 + 130 * nth, 100, 130, 50, [70 + 30 * nth, 50 + 30 * nth, 125 + 20 * nth])
  change(photo)
  return photo
}

const marks = (): Marks => ({
  grey: spot(30, 30, 20),
  undyed: [spot(25, 125, 15), spot(575, 125, 15)],
  series: [0, 1, 2, 3].map((nth) => spot(130 + 100 * nth, 230, 15)),
  skein: patchesAlong({ x: 100, y: 125 }, { x: 490, y: 125 }, 30, 3).map((patch, nth) => ({
    patch,
    at: (nth + 0.5) / 3,
    band: nth + 1,
    zone: 'dyed'
  }))
})

const read = (change?: (photo: Photo) => void): PhotoRead => answered(readPhoto(still(change), marks()))

describe('a photo with its marks', () => {
  it('is told by its card: the card of 18 % comes out neutral whatever its light, and the same light on all changes nothing', () => {
    const { series } = read()
    const warm = (photo: Photo): void => {
      for (let at = 0; at < photo.data.length; at += 4)
        for (const [channel, times] of [1, 0.92, 0.7].entries()) {
          const code = photo.data[at + channel] as number
          const light = ((code / 255 + 0.055) / 1.055) ** 2.4 * times
          photo.data[at + channel] = 255 * (1.055 * light ** (1 / 2.4) - 0.055)
        }
    }
    const under = read(warm).series
    // Von Kries in another cone space than the picture's own primaries, and rounding to 8 bits: within 3 units.
    for (const [nth, one] of series.entries()) {
      const other = under[nth]?.lab
      expect(Math.hypot(one.lab.a - (other?.a ?? 99), one.lab.b - (other?.b ?? 99))).toBeLessThan(3)
      expect(Math.abs(one.lab.l - (other?.l ?? 99))).toBeLessThan(1.5)
    }
    expect(read().faults).toEqual([])
  })

  it('knows where everything lies between the undyed places, and how the light differs', () => {
    const { undyed, skein, light } = read((photo) => fill(photo, 550, 100, 50, 50, [222, 212, 190]))
    expect(undyed.map(({ lightAt }) => lightAt)).toEqual([0, 1])
    expect(skein.map(({ lightAt }) => lightAt)).toEqual([165, 295, 425].map((x) => (x - 25) / 550))
    expect(light?.l).toBeLessThan(-0.5)
    expect(light?.b).toBeGreaterThan(0.3)
  })

  it('refuses marks outside the picture, a black card and a card that can not be, each by its name', () => {
    const outside = marks()
    outside.series[2] = spot(900, 230, 15)
    outside.grey = spot(30, 900, 10)
    const problems = problemsOf(readPhoto(still(), outside))
    expect(problems.map(({ field }) => field)).toEqual(['grey', 'series 3'])
    expect(problems[0]?.instead).toContain('600 x 300')
    const black = problemsOf(
      readPhoto(
        still((photo) => fill(photo, 0, 0, 60, 60, [0, 0, 0])),
        marks()
      )
    )
    expect(black.map(({ field }) => field)).toEqual(['grey'])
    for (const cardShare of [0, 18, Number.NaN])
      expect(problemsOf(readPhoto(still(), { ...marks(), cardShare }))[0]?.field).toBe('cardShare')
  })
})

describe('what is wrong with a photo', () => {
  const codes = (change: (photo: Photo) => void, put: (marks: Marks) => Marks = (same) => same): string[] =>
    answered(readPhoto(still(change), put(marks()))).faults.map(({ code, of, nth }) => `${code} ${of} ${nth}`)

  it('clipped: too bright, or a colour out of what sRGB can tell', () => {
    expect(codes((photo) => fill(photo, 100, 200, 60, 60, [255, 90, 40]))).toEqual(['clipped series 0'])
    expect(codes((photo) => fill(photo, 230, 100, 130, 50, [0, 90, 40]))).toEqual(['clipped skein 1'])
  })

  it('too dark', () => {
    expect(codes((photo) => fill(photo, 0, 0, 60, 60, [30, 30, 30]))).toContain('too-dark grey card 0')
  })

  it('two lights: the undyed yarn differs across the picture in colour, or in lightness', () => {
    expect(codes((photo) => fill(photo, 550, 100, 50, 50, [225, 205, 165]))).toEqual(['two-lights undyed 1'])
    expect(codes((photo) => fill(photo, 550, 100, 50, 50, [185, 177, 160]))).toEqual(['two-lights undyed 1'])
    expect(codes((photo) => fill(photo, 550, 100, 50, 50, [222, 212, 192]))).toEqual([])
  })

  it('a grey card that is not: far from grey itself, or it makes the undyed yarn a colour', () => {
    expect(codes((photo) => fill(photo, 0, 0, 60, 60, [150, 118, 40]))).toContain('grey-not-neutral grey card 0')
    expect(codes((photo) => fill(photo, 0, 0, 60, 60, [100, 118, 140]))).toContain('grey-not-neutral grey card 0')
  })

  it('too small', () => {
    const small = (all: Marks): Marks => ({ ...all, series: [spot(130, 230, 5), ...all.series.slice(1)] })
    expect(codes(() => {}, small)).toEqual(['too-small series 0'])
  })

  it('says what would be right', () => {
    const { faults } = read((photo) => fill(photo, 100, 200, 60, 60, [255, 90, 40]))
    expect(faults[0]?.say).toContain('Expose it less')
  })
})

describe('several photos', () => {
  it('are averaged; a fault of half of them counts; the light is the mean', () => {
    const clipped = (photo: Photo): void => fill(photo, 100, 200, 60, 60, [255, 90, 40])
    const all = answered(severalPhotos([read(), read(clipped), read(clipped)]))
    expect(all.faults.map(({ of, nth }) => `${of} ${nth}`)).toEqual(['series 0'])
    expect(answered(severalPhotos([read(), read(), read(clipped)])).faults).toEqual([])
    expect(all.series[1]?.lab.l).toBeCloseTo(read().series[1]?.lab.l ?? 0, 9)
    expect(all.noise.photos).toBe(3)
    expect(all.noise.freedom).toBe(6 * 2)
  })

  it('are refused when there are none, or when their marks differ', () => {
    expect(isRefused(severalPhotos([]))).toBe(true)
    const fewer = answered(readPhoto(still(), { ...marks(), series: marks().series.slice(1) }))
    const problems = problemsOf(severalPhotos([read(), fewer]))
    expect(problems[0]?.what).toContain('Photo 2')
  })
})
