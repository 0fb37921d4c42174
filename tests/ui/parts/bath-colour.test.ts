import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { BATH_INK, bathColour, contrast } from '../../../src/ui/parts/bath-colour.ts'

const channel = fc.integer({ min: 0, max: 255 })
const colour = fc
  .tuple(channel, channel, channel)
  .map((rgb) => `#${rgb.map((c) => c.toString(16).padStart(2, '0')).join('')}`)

describe('the colour of a bath', () => {
  it('lets its text be read with 7:1 for any dye (WCAG 2.2, 1.4.6)', () => {
    fc.assert(
      fc.property(colour, (dye) => {
        expect(contrast(bathColour(dye), BATH_INK)).toBeGreaterThanOrEqual(7)
      })
    )
  })

  it('keeps a dye that is dark enough as it is', () => {
    expect(bathColour('#2a1030')).toBe('#2a1030')
  })

  it('keeps the order of red, green and blue: a yellow bath stays yellowish', () => {
    const [r, g, b] = [1, 3, 5].map((at) => Number.parseInt(bathColour('#f2c230').slice(at, at + 2), 16))
    expect(r).toBeGreaterThan(g as number)
    expect(g).toBeGreaterThan(b as number)
  })

  it('shows what is no colour as undyed', () => {
    expect(bathColour('plum')).toBe(bathColour('#6b5f4c'))
    expect(bathColour('#abc;background:url(x)')).toBe(bathColour(''))
  })

  it('measures contrast as WCAG 2.2 does: black on white is 21, equal colours are 1', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9)
    expect(contrast('#777777', '#777777')).toBe(1)
    // From memory: #767676 on white is the well-known first grey to reach 4.5:1.
    expect(contrast('#767676', '#ffffff')).toBeGreaterThanOrEqual(4.5)
    expect(contrast('#777777', '#ffffff')).toBeLessThan(4.5)
  })
})
