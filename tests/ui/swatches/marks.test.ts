import { describe, expect, it } from 'vitest'
import {
  clothShape,
  marksOf,
  moved,
  nearest,
  type Places,
  pixelMarks,
  stillToMark,
  usualShape,
  whereWords
} from '../../../src/ui/screens/swatches/marks.ts'

const shape = { ...usualShape, undyed: 1, series: 2, bands: 4, wicking: 1 }
const places: Places = {
  grey: { x: 0.5, y: 0.9 },
  from: { x: 0.1, y: 0.2 },
  to: { x: 0.9, y: 0.2 },
  'undyed 0': { x: 0.05, y: 0.2 },
  'series 0': { x: 0.3, y: 0.6 },
  'series 1': { x: 0.4, y: 0.6 }
}
const size = { widthPx: 4000, heightPx: 3000 }

describe('marks', () => {
  it('are the same places in a picture of any size, and the wicked bands are the last', () => {
    const large = pixelMarks(shape, places, size)
    const small = pixelMarks(shape, places, { widthPx: 400, heightPx: 300 })
    expect(large?.grey).toMatchObject({ x: 2000, y: 2700, turnRad: 0 })
    expect(large?.grey.halfLong).toBeCloseTo(105)
    expect(small?.grey).toMatchObject({ x: 200, y: 270 })
    expect(small?.grey.halfLong).toBeCloseTo(10.5)
    expect(large?.skein.map(({ band, zone }) => `${band} ${zone}`)).toEqual(['1 dyed', '2 dyed', '3 dyed', '4 wicking'])
    expect(large?.skein.map(({ patch }) => Math.round(patch.x))).toEqual([800, 1600, 2400, 3200])
    expect(large?.series.map(({ x }) => x)).toEqual([1200, 1600])
  })

  it('are not read while one is missing, and it is said which', () => {
    const { to: _, ...without } = places
    expect(pixelMarks(shape, without, size)).toBeNull()
    expect(stillToMark(shape, without).map(({ label }) => label)).toEqual(['Skein, end B'])
    // A place that is no longer wanted is no mark that is missing.
    expect(stillToMark({ ...shape, series: 1 }, places)).toEqual([])
  })

  it('stay in the picture, and say where they are', () => {
    expect(moved({ x: 0.98, y: 0.01 }, 0.05, -0.05)).toEqual({ x: 1, y: 0 })
    expect(whereWords(places.grey)).toBe('50 % across, 90 % down')
    expect(whereWords(undefined)).toBe('not marked yet')
  })

  it('are taken hold of by the nearest within reach', () => {
    const screen = { widthPx: 400, heightPx: 300 }
    expect(nearest(shape, places, { x: 0.36, y: 0.6 }, screen, 28)).toBe('series 1')
    expect(nearest(shape, places, { x: 0.34, y: 0.6 }, screen, 28)).toBe('series 0')
    expect(nearest(shape, places, { x: 0.6, y: 0.4 }, screen, 28)).toBeNull()
  })

  it('have a letter each of their own', () => {
    for (const along of ['line', 'spots'] as const) {
      const letters = marksOf({ ...usualShape, along, series: 10, bands: 20 }).map(({ letter }) => letter)
      expect(new Set(letters).size).toBe(letters.length)
    }
  })

  it('spot by spot are read in the order of the skein, wherever they lie, and the last wicked', () => {
    const spots = { ...shape, along: 'spots' } as const
    const at: Places = {
      ...places,
      'skein 0': { x: 0.9, y: 0.1 },
      'skein 1': { x: 0.5, y: 0.3 },
      'skein 2': { x: 0.1, y: 0.1 },
      'skein 3': { x: 0.1, y: 0.5 }
    }
    expect(marksOf(spots).map(({ letter }) => letter)).toEqual(['G', 'S1', 'S2', 'S3', 'S4', 'U1', '1', '2'])
    expect(
      marksOf(spots)
        .map(({ label }) => label)
        .slice(1, 5)
    ).toEqual(['Skein, spot 1, at end A', 'Skein, spot 2', 'Skein, spot 3', 'Skein, spot 4, at end B'])
    expect(pixelMarks(spots, places, size)).toBeNull()
    const marks = pixelMarks(spots, at, size)
    expect(marks?.skein.map(({ patch }) => [patch.x, patch.y, patch.turnRad])).toEqual([
      [3600, 300, 0],
      [2000, 900, 0],
      [400, 300, 0],
      [400, 1500, 0]
    ])
    expect(marks?.skein.map(({ band, at: along, zone }) => `${band} ${along} ${zone}`)).toEqual([
      '1 0.125 dyed',
      '2 0.375 dyed',
      '3 0.625 dyed',
      '4 0.875 wicking'
    ])
    // The ends of a line that were put before are no marks of it.
    expect(nearest(spots, at, { x: 0.9, y: 0.21 }, { widthPx: 400, heightPx: 300 }, 28)).toBeNull()
  })

  it('of a cloth are its clean and its stained place beside the card', () => {
    expect(marksOf(clothShape).map(({ letter, label }) => `${letter} ${label}`)).toEqual([
      'G Grey card',
      'C Clean cloth',
      'S Stained cloth'
    ])
    const at: Places = { grey: { x: 0.5, y: 0.5 }, 'undyed 0': { x: 0.2, y: 0.5 }, 'skein 0': { x: 0.8, y: 0.5 } }
    const marks = pixelMarks(clothShape, at, size)
    expect(marks).toMatchObject({ series: [], undyed: [{ x: 800 }], skein: [{ patch: { x: 3200 }, zone: 'dyed' }] })
  })
})
