import { describe, expect, it } from 'vitest'
import { turnSay } from '../../../src/core/record/skein-verdict.ts'
import { countsWords, faultSay } from '../../../src/ui/parts/swatch-words.ts'
import { plotOf, stripOf, ticks } from '../../../src/ui/screens/swatches/drawing.ts'
import { judged } from '../../../src/ui/screens/swatches/judged.ts'
import { photographs } from '../../photo-corpus/case.ts'

describe('what is drawn of a verdict', () => {
  // A split with its last band above the liquor, and six swatches in its series.
  const { gathered } = photographs('split', 'judge', 50_004)
  const found = judged(gathered, { dry: true, fibres: 1 })

  it('has a cell for each band with the control at its depth, and says what does not count', () => {
    const cells = stripOf(found)
    expect(cells.map(({ band }) => band)).toEqual([1, 2, 3, 4, 5, 6, 7])
    for (const { colour, control } of cells) {
      expect(colour).toMatch(/^#[0-9a-f]{6}$/)
      expect(control).toMatch(/^#[0-9a-f]{6}$/)
    }
    expect(cells.map(({ found }) => countsWords(found))).toEqual([
      ...new Array(6).fill('Counts'),
      'Above the liquor, never counts'
    ])
    expect(turnSay(found.verdict)).toBe('Turns yellower from band 2')
  })

  it('draws hue as one run against depth, each with its doubt', () => {
    const plot = plotOf(found)
    expect(plot?.swatches).toHaveLength(6)
    expect(plot?.skein.map(({ leftOut }) => leftOut)).toEqual([...new Array(6).fill(null), 'wicking'])
    for (const { sdDeg, hueDeg } of plot?.skein ?? []) {
      expect(sdDeg).toBeGreaterThan(0)
      expect(hueDeg).toBeGreaterThan(plot?.hue[0] ?? 360)
      expect(hueDeg).toBeLessThan(plot?.hue[1] ?? 0)
    }
    const [first, last] = [plot?.skein[0], plot?.skein[5]]
    // Its ΔH* of 10 at a chroma of some 40 is a good ten degrees.
    expect(Math.abs((first?.hueDeg ?? 0) - (last?.hueDeg ?? 0))).toBeGreaterThan(10)
  })

  it('does not jump where the hue passes 360 degrees', () => {
    const turned = { ...found, series: found.series.map(turn), labs: found.labs.map((lab) => turn({ lab }).lab) }
    const hues = plotOf(turned)?.skein.map(({ hueDeg }) => hueDeg) ?? []
    expect(hues.length).toBe(7)
    expect(Math.max(...hues) - Math.min(...hues)).toBeLessThan(40)
  })

  it('has no curve without a series', () => {
    expect(plotOf(judged({ ...gathered, series: [] }, { dry: true, fibres: 1 }))).toBeNull()
  })

  it('has round figures on its axes', () => {
    expect(ticks([41, 83])).toEqual([50, 60, 70, 80])
    expect(ticks([-4, 7])).toEqual([-4, -2, 0, 2, 4, 6])
  })
})

/** By 200 degrees: greens of 150 to 170 become reds on both sides of 0. */
function turn<T extends { lab: { l: number; a: number; b: number } }>(one: T): T {
  const { l, a, b } = one.lab
  const rad = (200 * Math.PI) / 180
  return { ...one, lab: { l, a: a * Math.cos(rad) - b * Math.sin(rad), b: a * Math.sin(rad) + b * Math.cos(rad) } }
}

it('a fault says what, where, and what would be right', () => {
  const say = 'Expose it less.'
  expect(faultSay({ code: 'clipped', of: 'skein', nth: 2, say })).toBe(
    'Too bright or too dark to read, skein 3: Expose it less.'
  )
})
