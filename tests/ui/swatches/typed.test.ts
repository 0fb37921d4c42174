import { describe, expect, it } from 'vitest'
import { splitVerdict } from '../../../src/core/colour/index.ts'
import { givenOf, linesOf, noTyped } from '../../../src/ui/screens/swatches/typed.ts'

const lab = { kind: 'lab', white: 'D65/10' } as const

describe('readings typed from an instrument', () => {
  it('are read with a point or a comma, one thing a line, readings parted by semicolons', () => {
    const expected = [
      [{ l: 42.1, a: 30, b: -11 }],
      [
        { l: 50, a: 1, b: 2 },
        { l: 51, a: 1.5, b: 2 }
      ]
    ]
    expect(linesOf('42.1 30 -11\n\n50 1 2; 51 1.5 2', lab)).toEqual({ things: expected, problem: null })
    expect(linesOf('42,1 30 −11', lab).things).toEqual([expected[0]])
    expect(linesOf('42.1, 30, -11', lab).things).toEqual([expected[0]])
  })

  it('say on which line a slip is, and what would be right', () => {
    expect(linesOf('42 30 11\n48 27', lab).problem).toBe('Line 2: 2 figures where three are wanted: L*, a* and b*.')
    expect(linesOf('42 x 11', lab).problem).toBe('Line 1: “x” is no number.')
    expect(linesOf('142 0 0', lab).problem).toMatch(/^Line 1: .*L\*/)
  })

  it('are a curve in % where the instrument gives that', () => {
    const even = new Array(31).fill('18').join(' ')
    const [[grey] = []] = linesOf(even, { kind: 'reflectance', white: 'D65/10' }).things
    // CIELAB of 18 % even reflectance: L* = 116 · 0.18^(1/3) - 16.
    expect(grey?.l).toBeCloseTo(116 * Math.cbrt(0.18) - 16, 1)
    expect(Math.hypot(grey?.a ?? 9, grey?.b ?? 9)).toBeLessThan(0.1)
  })

  /** Hue 20 degrees at every depth; `turn` more at the far end of the skein. */
  const of = (turn: number) => {
    const colour = (l: number, deg: number, stray: number): string => {
      const [chroma, rad] = [50 - 0.5 * (l - 40), (deg * Math.PI) / 180]
      return `${l} ${(chroma * Math.cos(rad) + stray).toFixed(2)} ${(chroma * Math.sin(rad) - stray).toFixed(2)}`
    }
    const thrice = (l: number, deg: number): string =>
      [0.1, -0.1, (l % 3) / 30].map((stray) => colour(l, deg, stray)).join('; ')
    return {
      ...noTyped,
      undyed: '88 0 12',
      series: [40, 46, 52, 58, 64, 70, 76].map((l) => thrice(l, 20)).join('\n'),
      skein: [42, 47, 52, 57, 62, 67].map((l, nth) => thrice(l, 20 + (turn * nth) / 5)).join('\n')
    }
  }
  const judge = (typed: typeof noTyped) => {
    const { positions, ...given } = givenOf(typed).given
    return splitVerdict({ ...given, skein: { positions, dry: true, fibres: 1 } })
  }

  it('are judged as a photo is: one that turns is split, one that only pales is not', () => {
    expect(judge(of(25)).verdict).toBe('split')
    expect(judge(of(0)).verdict).toBe('only-lighter')
    expect(judge({ ...of(25), wicking: '2' }).deltaH.map(({ leftOut }) => leftOut)).toEqual([
      null,
      null,
      null,
      null,
      'wicking',
      'wicking'
    ])
  })

  it.each(['2.5', '-1', 'two', '7'])(
    'refuse “%s” places above the liquor of six, and say what would be right',
    (wicking) => {
      expect(givenOf({ ...of(25), wicking }).problems.wicking).toBe('Write how many as a whole number, from 0 to 6.')
    }
  )

  it.each(['', '0', ' 6 '])('take “%s” of six', (wicking) => {
    expect(givenOf({ ...of(25), wicking }).problems.wicking).toBeNull()
  })

  it('that were read only once each cannot tell', () => {
    const once = (text: string): string => text.replaceAll(/;[^\n]*/g, '')
    const typed = of(25)
    expect(judge({ ...typed, series: once(typed.series), skein: once(typed.skein) }).why.code).toBe('no-repeats')
  })
})
