import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { serve } from '../../../src/core/shelf/serving.ts'

const lot = (itemId: string, free: number | null, gPerML: number | null = 0.01) => ({ itemId, free, gPerML })

describe('what bottles give', () => {
  it('38 mL are 30 out of the one and 8 out of the other, and nothing is short', () => {
    const served = serve(38, [lot('12', 30), lot('13', 100)])
    expect(served.parts).toEqual([
      { itemId: '12', amount: 30 },
      { itemId: '13', amount: 8 }
    ])
    expect(served.short).toBe(0)
    expect(served.gPerML).toBeCloseTo(0.01, 12)
  })

  it('30 of 38 mL leave 8 short', () => {
    expect(serve(38, [lot('12', 30)]).short).toBeCloseTo(8, 9)
  })

  it('a lot half as strong gives twice as much for the rest, and all of it is as strong as both together', () => {
    const served = serve(38, [lot('12', 30), lot('13', 100, 0.005)])
    expect(served.parts[1]?.amount).toBeCloseTo(16, 9)
    expect(served.gPerML).toBeCloseTo(0.38 / 46, 12)
  })

  it('a bottle whose level nobody told gives what is asked, and one that is overdrawn gives nothing', () => {
    expect(serve(38, [lot('12', null)])).toMatchObject({ parts: [{ amount: 38 }], short: 0 })
    expect(serve(38, [lot('12', -5), lot('13', null)]).parts.map(({ amount }) => amount)).toEqual([0, 38])
  })
})

describe('whatever there is', () => {
  const someLot = fc.record({
    itemId: fc.uuid(),
    free: fc.option(fc.double({ min: -50, max: 500, noNaN: true }), { nil: null }),
    gPerML: fc.double({ min: 0.001, max: 0.5, noNaN: true })
  })

  it('as much of what is active goes in as was wanted, and no bottle but for the shortage gives more than is free', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 1000, noNaN: true }),
        fc.array(someLot, { minLength: 1, maxLength: 4 }),
        (wanted, lots) => {
          const { parts, short, gPerML } = serve(wanted, lots)
          const first = lots[0]?.gPerML ?? 0
          const grams = parts.reduce((sum, { amount }, i) => sum + amount * (lots[i]?.gPerML ?? 0), 0)
          const dust = 0.005 * Math.max(...lots.map((one) => one.gPerML))
          expect(Math.abs(grams - wanted * first)).toBeLessThanOrEqual(dust * 1.0001 + 1e-9)
          parts.forEach(({ amount }, i) => {
            const isLast = i === parts.length - 1
            const free = Math.max(0, lots[i]?.free ?? Number.POSITIVE_INFINITY)
            expect(amount - (isLast ? short : 0)).toBeLessThanOrEqual(free + 1e-9)
            expect(amount).toBeGreaterThanOrEqual(0)
          })
          expect(short).toBeGreaterThanOrEqual(0)
          expect(gPerML).toBeGreaterThan(0)
        }
      )
    )
  })
})
