import { describe, expect, it } from 'vitest'
import { fold } from '../../../src/core/pot/fold.ts'
import type { LiveState } from '../../../src/core/pot/state.ts'
import { knotsOf } from '../../../src/ui/screens/stove/live.ts'
import { type StrandShape, strandShape } from '../../../src/ui/screens/stove/strand-shape.ts'
import { noon } from './fixtures.ts'
import { fernCools, heather, moss, plum, rustForks } from './pots.ts'

const shapeOf = (journal: ReturnType<typeof moss>, nowMs = noon): StrandShape =>
  strandShape(knotsOf(fold(journal.entries) as LiveState, nowMs), nowMs, 240)

describe('a strand', () => {
  it('shows a repeat of unknown length as a loop that says its pass, and what follows faint with its range', () => {
    const shape = shapeOf(moss())
    expect(shape.loops.map((loop) => loop.say)).toEqual(['pass 1, up to 3'])
    const off = shape.knots.find((k) => k.label === 'Heat off')
    expect(off?.faint).toBe(true)
    expect(shape.ranges.some((r) => r.key === off?.key && r.to > r.from)).toBe(true)
    expect(shape.knots.find((k) => k.label === 'Bath grade')?.faint).toBe(false)
  })

  it('is plied where hands are wanted, and plain where the clock waits', () => {
    const shape = shapeOf(plum())
    const plied = shape.plies.map((p) => p.key)
    expect(plied).toContain('dip[5]/lower')
    expect(plied).not.toContain('dip[5]/hold')
    expect(shape.knots.some((k) => k.label === 'Hold')).toBe(false)
  })

  it('is cut past two hours and says how long it still is', () => {
    const shape = shapeOf(heather())
    expect(shape.cutMs).toBeGreaterThan(9 * 3_600_000)
    expect(shape.knots.every((k) => k.atMs - noon <= 2 * 3_600_000)).toBe(true)
    expect(shapeOf(fernCools()).cutMs).toBeNull()
  })

  it('forks where two branches run alongside', () => {
    const shape = shapeOf(rustForks())
    expect(shape.forks.map((f) => f.lane)).toEqual([1])
    expect(new Set(shape.knots.map((k) => k.lane)).size).toBe(2)
  })

  it('sinks: a minute later every coming knot hangs lower', () => {
    const journal = plum()
    const [now, later] = [shapeOf(journal), shapeOf(journal, noon + 20_000)]
    const height = (shape: StrandShape, key: string): number => shape.knots.find((k) => k.key === key)?.at ?? Number.NaN
    for (const key of ['dip[5]/lower', 'dip[6]/lower', 'A1']) {
      expect(height(later, key)).toBeLessThan(height(now, key))
    }
  })
})
