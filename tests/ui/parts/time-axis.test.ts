import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { slide, timeAxis } from '../../../src/ui/parts/time-axis.ts'

const min = 60_000

describe('the time axis of a record', () => {
  it('keeps the proportions of short stretches and cuts long waits, saying how long they were', () => {
    const axis = timeAxis([0, 10 * min, 20 * min, 500 * min, 510 * min], 300)
    expect(axis.cuts).toMatchObject([{ lengthMs: 480 * min }])
    const step = axis.place(10 * min) - axis.place(0)
    expect(axis.place(20 * min) - axis.place(10 * min)).toBeCloseTo(step, 9)
    expect(axis.place(510 * min) - axis.place(500 * min)).toBeCloseTo(step, 9)
    expect(axis.place(510 * min)).toBeCloseTo(300, 9)
  })

  it('never puts a later time before an earlier one, whatever the times', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 10 ** 8 }), { minLength: 1, maxLength: 60 }), (times) => {
        const axis = timeAxis(times, 800, 6)
        const places = [...times].sort((a, b) => a - b).map(axis.place)
        places.forEach((place, i) => {
          expect(place).toBeGreaterThanOrEqual(i === 0 ? 0 : (places[i - 1] as number))
          expect(place).toBeLessThanOrEqual(800.0001)
        })
      })
    )
  })

  it('tells apart what is nearly at the same time', () => {
    const axis = timeAxis([0, 1000, 60 * min], 800, 6)
    expect(axis.place(1000)).toBeGreaterThan(6)
  })
})

describe('labels', () => {
  it('slide apart and stay in order', () => {
    const at = slide([10, 12, 14, 90], [20, 20, 20, 20], 100)
    expect(at).toEqual([10, 30, 50, 90])
    expect(slide([95, 99], [20, 20], 100)).toEqual([70, 90])
  })
})
