import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fitting, gatheredText, placeLabels, type Room, type Wish, wrap } from '../../../src/ui/screens/stove/labels.ts'

const room: Room = { height: 200, lineHeight: 20, lineLetters: 12, linesMost: 2, slideMost: 30 }

const words = ['Acid 1', 'Band 1', 'Band 2', 'Band 3', 'Bath grade', 'Heat off', '40 °C', 'Rinse until clear']
const wishes = fc
  .array(fc.record({ text: fc.constantFrom(...words), at: fc.double({ min: 0, max: 200, noNaN: true }) }), {
    minLength: 1,
    maxLength: 30
  })
  .map((list): Wish[] => list.map((wish, i) => ({ ...wish, key: String(i), faint: false })))

describe('labels beside a strand', () => {
  it('never overlap, keep the order of their knots, and stay between the water and the rod', () => {
    fc.assert(
      fc.property(wishes, (given) => {
        const placed = placeLabels(given, room)
        for (const label of placed) {
          expect(label.at - (label.lines * room.lineHeight) / 2).toBeGreaterThanOrEqual(-1e-6)
          expect(label.at + (label.lines * room.lineHeight) / 2).toBeLessThanOrEqual(room.height + 1e-6)
        }
        for (let i = 1; i < placed.length; i++) {
          const [below, above] = [placed[i - 1], placed[i]]
          const touch = (((below?.lines ?? 0) + (above?.lines ?? 0)) * room.lineHeight) / 2
          expect((above?.at ?? 0) - (below?.at ?? 0)).toBeGreaterThanOrEqual(touch - 1e-6)
        }
      })
    )
  })

  it('speak for every knot, each once, and leave the knots where they are', () => {
    fc.assert(
      fc.property(wishes, (given) => {
        const spoken = placeLabels(given, room).flatMap((label) => label.ats)
        expect([...spoken].sort((a, b) => a - b)).toEqual(given.map((w) => w.at).sort((a, b) => a - b))
      })
    )
  })

  it('stand beside their knots where there is room', () => {
    const placed = placeLabels(
      [
        { key: 'a', text: 'Acid 1', at: 40, faint: false },
        { key: 'b', text: 'Heat off', at: 120, faint: true }
      ],
      room
    )
    expect(placed.map((l) => [l.text, l.at])).toEqual([
      ['Acid 1', 40],
      ['Heat off', 120]
    ])
  })

  it('gather as a count of the same, else as the first and how many more', () => {
    expect(gatheredText(['Band 1', 'Band 2', 'Band 3'])).toBe('3 bands')
    expect(gatheredText(['Band 7', 'Band 8', 'Acid 1'])).toBe('2 bands, +1')
    expect(gatheredText(['Acid 1', 'Heat off'])).toBe('Acid 1, +1')
    expect(gatheredText(['Heat off'])).toBe('Heat off')
  })

  it('gather eight bands that hang within a finger’s breadth into one label', () => {
    const bands = Array.from(
      { length: 8 },
      (_, i): Wish => ({ key: `${i}`, text: `Band ${i + 1}`, at: 100 + i, faint: false })
    )
    expect(placeLabels(bands, { ...room, height: 60 }).map((l) => l.text)).toEqual(['8 bands'])
  })

  it('take the fullest wording that fits, and break between words only', () => {
    const narrow = { lineLetters: 10, linesMost: 2 }
    expect(fitting(['Bath grade, pass 1, up to 3', 'Bath grade 1 of 3', 'Bath grade'], narrow)).toBe(
      'Bath grade 1 of 3'
    )
    expect(wrap('Bath grade 1 of 3', 10)).toEqual(['Bath grade', '1 of 3'])
    expect(fitting(['Neutralising'], narrow)).toBe('Neutralising')
  })
})
