import { describe, expect, it } from 'vitest'
import type { Programme } from '../../../src/core/protocol/model.ts'
import { cautionsBeforeStart, expectedCautions } from '../../../src/core/safety/before-start.ts'
import { act, dose, programme, ramp, wait } from '../pot/programmes.ts'

const plum = (percent: number | null = 5): Programme =>
  programme(
    [
      dose('A1', 30),
      ramp('warm', 20, 85, 2),
      dose('A2', 30),
      act('lift', { word: 'lift', yarn: 'out' }),
      act('off', { word: 'heat', heat: 'off' }),
      wait('cool', 30 * 60_000, {
        word: 'cool',
        until: [{ kind: 'temperature', lowC: null, highC: 40, going: 'down' }]
      }),
      act('out', { word: 'lift', yarn: 'out' })
    ],
    [],
    {
      cautions: ['Mind the cord.'],
      setOut: [{ ...(programme([]).setOut[0] as Programme['setOut'][0]), percent }]
    }
  )

const idsAt = (path: string): string[] =>
  expectedCautions(plum())
    .find((e) => e.path === path)
    ?.cautions.map((c) => c.id) ?? []

describe('before the start', () => {
  it('each caution is told once, those of the whole session first', () => {
    const ids = cautionsBeforeStart(plum()).map((c) => c.id)
    expect(new Set(ids).size).toBe(ids.length)
    expect(ids[0]).toBe('utensils')
    expect(ids).toEqual(
      expect.arrayContaining(['own: Mind the cord.', 'acid-mild', 'acid-vapour', 'heat-on', 'hot-lift'])
    )
  })

  it('the strength in the bottle decides, not the one the writer had in mind', () => {
    expect(cautionsBeforeStart(plum(80)).map((c) => c.id)).toContain('acid-corrosive')
    expect(cautionsBeforeStart(plum(null)).map((c) => c.id)).toContain('acid-unknown')
  })

  it('acid into a cold bath stings, into a hot one its vapour does', () => {
    expect(idsAt('A1')).toContain('acid-mild')
    expect(idsAt('A2')).toContain('acid-vapour')
  })

  it('a lift is hot until the bath has cooled', () => {
    expect(idsAt('lift')).toContain('hot-lift')
    expect(idsAt('cool')).toContain('cooling')
    expect(idsAt('out')).toEqual([])
  })
})
