import { describe, expect, it } from 'vitest'
import { metricUnits } from '../../../src/core/quantity/units.ts'
import { type BathView, bathView } from '../../../src/ui/screens/stove/bath-view.ts'
import { type LivePot, livePots } from '../../../src/ui/screens/stove/live.ts'
import { fixtureKitchen, noon } from './fixtures.ts'
import * as made from './pots.ts'

function view(journal: ReturnType<typeof made.moss>, nowMs = noon): BathView {
  const kitchen = fixtureKitchen([journal], noon)
  kitchen.tick(nowMs)
  const plain = JSON.stringify(bathView(livePots(kitchen.pots.value)[0] as LivePot, nowMs, metricUnits))
  return JSON.parse(plain.replaceAll('\u00a0', ' '))
}

describe('a bath says', () => {
  it('what goes on, until when, what then, and how warm it was', () => {
    const bath = view(made.moss())
    expect(bath.act).toBe('Holding')
    expect(bath.time).toEqual({ kind: 'to', atMs: noon + 438_000, about: false })
    expect(bath.detail).toBe('then judge the bath')
    expect(bath.mark).toEqual({ say: '86 °C, in range', stale: false })
    expect(bath.pad).toEqual({ kind: 'read', say: 'read temperature' })
  })

  it('a reading older than a quarter of an hour with its age, as stale', () => {
    const bath = view(made.heather(), noon + 20 * 60_000)
    expect(bath.mark).toEqual({ say: '86 °C, 22 min ago', stale: true })
  })

  it('a reading outside the range, and what is wanted', () => {
    expect(view(made.plum()).mark?.say).toBe('84 °C, low, wants 85–90 °C')
  })

  it('the act to come within a beat, with its depth and its own pad', () => {
    const bath = view(made.plum())
    expect(bath.act).toBe('Lower band 5')
    expect(bath.detail).toBe('to the fifth tie mark')
    expect(bath.gauge).toEqual({ now: 0.5, to: 0.625, label: '10 cm' })
    expect(bath.pad).toEqual({ kind: 'early', waitPath: 'dip[4]/hold', path: 'dip[5]/lower', say: 'lowered' })
  })

  it('one act at a time where it is due, and that it may be put off', () => {
    const bath = view(made.mossLate())
    expect(bath.act).toBe('Acid 2 in')
    expect(bath.pad).toEqual({ kind: 'ask', ask: { kind: 'done', path: 'A2', say: 'acid is in' } })
    expect(bath.duePath).toBe('A2')
  })

  it('that a stopped pot goes on dyeing, and never "held"', () => {
    const bath = view(made.plumStopped())
    expect(bath.status).toBe('stopped')
    expect(bath.act).toBe('Stopped, still dyeing')
    expect(bath.pad.kind).toBe('resume')
  })

  it('the act first when there is trouble', () => {
    const bath = view(made.plumTrouble())
    expect(bath.act).toBe('Heat off. Hands out.')
    expect(bath.pad.kind).toBe('settle')
  })

  it('how long a lifted skein is out of the bath, and its limit', () => {
    const bath = view(made.plumLifted())
    expect(bath.out).toEqual({ sinceMs: noon - 48_000, limitAtMs: noon - 48_000 + 180_000 })
  })

  it('the other branch in one line', () => {
    const bath = view(made.rustForks())
    expect(bath.chips.map((chip) => chip.say)).toEqual(['Soaking'])
    expect(bath.act).toBe('Heating')
  })

  it('heat off before the end where it is still on', () => {
    expect(view(made.done()).act).toBe('Heat off. All steps are done')
    expect(view(made.done()).pad.kind).toBe('finish')
  })
})
