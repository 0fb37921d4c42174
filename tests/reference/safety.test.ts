// The published values behind the cautions; each file entry says how its source was seen.
import { describe, expect, it } from 'vitest'
import { aceticBand } from '../../src/core/safety/acid-strength.ts'
import { HOT_C } from '../../src/core/safety/hazard.ts'
import { burnsWithinS } from '../../src/core/safety/scald.ts'
import data from './data/08_safety.json' with { type: 'json' }

const third = data.scald_water_third_degree_adult.rows
const second = data.scald_second_and_third_degree.rows

describe('scalds (Moritz & Henriques, Am. J. Pathol. 23 (1947) 695-720, seen in secondary tables)', () => {
  it.each(third)(
    'water at $temperature_C °C is never said to take longer than $time_s s',
    ({ temperature_C, time_s }) => {
      expect(burnsWithinS(temperature_C)).not.toBeNull()
      expect(burnsWithinS(temperature_C)).toBeLessThanOrEqual(time_s)
    }
  )

  it.each(second)('nor than the second-degree time at $temperature_C °C', ({ temperature_C, second_degree_s }) => {
    expect(burnsWithinS(temperature_C)).toBeLessThanOrEqual(second_degree_s)
  })

  it('where the tables disagree the shorter counts: 5 min at 49 °C, 3 s at 60 °C', () => {
    expect(burnsWithinS(49)).toBe(300)
    expect(burnsWithinS(60)).toBe(3)
  })

  it('between table points the shorter neighbour counts, never a longer interpolation', () => {
    expect(burnsWithinS(57)).toBe(3)
    expect(burnsWithinS(62)).toBe(2)
    expect(burnsWithinS(50)).toBe(120)
    expect(burnsWithinS(70)).toBe(1)
  })

  it('a dyebath from 85 °C on is beyond every table: at once', () => {
    expect(burnsWithinS(85)).toBe(0)
    expect(burnsWithinS(100)).toBe(0)
  })

  it('below the coldest table point nothing is claimed', () => {
    expect(burnsWithinS(44)).toBeNull()
  })

  it('the hot cautions begin where a burn takes seconds', () => {
    expect(burnsWithinS(HOT_C)).toBeLessThanOrEqual(5)
  })
})

describe('acetic acid bands (CLP Annex VI 607-002-00-6, band edges from memory; % w/w)', () => {
  const names = ['irritant', 'corrosive', 'severe'] as const
  it.each(data.acetic_acid.classes.map((c, i) => ({ ...c, name: names[i] })))(
    'from $percent_from % on it is $name ($hazard)',
    ({ percent_from, percent_below, name }) => {
      expect(aceticBand(percent_from)).toBe(name)
      expect(aceticBand(percent_from - 0.01)).not.toBe(name)
      if (percent_below !== null) expect(aceticBand(percent_below - 0.01)).toBe(name)
    }
  )

  it('household vinegar, 4 to 6 %, is in no class', () => {
    for (const percent of [4, 5, 6]) expect(aceticBand(percent)).toBe('mild')
  })
})
