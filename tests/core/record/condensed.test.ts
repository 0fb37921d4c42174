import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { condensed, cutWords, leftWords, photosIn, rooms } from '../../../src/core/record/condensed.ts'

describe('what does not fit a printed record', () => {
  it('is left out of the middle, and counted: what is shown and what is said to be left is all there is', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(), { maxLength: 300 }), fc.integer({ min: 1, max: 90 }), (all, lines) => {
        const { head, left, tail } = condensed(all, { lines })
        expect(head.length + left + tail.length).toBe(all.length)
        expect([...head, ...all.slice(head.length, head.length + left), ...tail]).toEqual(all)
        // The line that says what is left counts too.
        expect(head.length + tail.length + (left > 0 ? 1 : 0)).toBeLessThanOrEqual(lines + 1)
        expect(left).not.toBe(1)
      })
    )
  })

  it('leaves photos out of the middle too, and counts each of them', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(), { maxLength: 60 }), fc.integer({ min: 0, max: 24 }), (all, photos) => {
        const { shown, left } = photosIn(all, { photos })
        expect(shown.length).toBe(Math.min(all.length, photos))
        expect(left).toBe(all.length - shown.length)
      })
    )
    const all = Array.from({ length: 9 }, (_, i) => i)
    expect(photosIn(all, { photos: 4 })).toEqual({ shown: [0, 1, 7, 8], left: 5 })
    expect(photosIn(all, { photos: 9 })).toEqual({ shown: all, left: 0 })
    expect(photosIn(all, { photos: 0 })).toEqual({ shown: [], left: 9 })
  })

  it('keeps the first and the last', () => {
    const all = Array.from({ length: 20 }, (_, i) => i)
    expect(condensed(all, { lines: 6 })).toEqual({ head: [0, 1, 2], left: 14, tail: [17, 18, 19] })
    expect(leftWords(14, 'readings')).toBe('and 14 more readings: see the file')
  })

  it('is said where a text is cut, and no letter is halved', () => {
    expect(cutWords('short', { letters: 5 })).toBe('short')
    expect(cutWords('two words', { letters: 5 })).toBe('two … (cut: see the file)')
    expect(cutWords('two words', { letters: 3 })).toBe('two … (cut: see the file)')
    expect(cutWords('🧶🧶🧶🧶', { letters: 2 })).toBe('🧶🧶 … (cut: see the file)')
  })

  it('never grows from one room to the next, and all of it is shown where there is room', () => {
    expect(rooms[0]).toEqual({ lines: Infinity, letters: Infinity, photos: 24 })
    rooms.slice(1).forEach((room, i) => {
      expect(room.lines).toBeLessThan(rooms[i]?.lines ?? 0)
      expect(room.letters).toBeLessThan(rooms[i]?.letters ?? 0)
      expect(room.photos).toBeLessThanOrEqual(rooms[i]?.photos ?? 0)
    })
  })
})
