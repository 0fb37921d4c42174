// How often the interval holds the truth. 95 % is what it says; 93 to 97 % is asked.
import { describe, expect, test } from 'vitest'
import { timeToTemperature } from '../../../../src/core/chemistry/heating/time-to-temperature.ts'
import { Chance } from '../../../simulation/chance.ts'
import { type ChancePot, potByChance } from './pots-by-chance.ts'

const pots = 2000

type Count = { held: number; early: number; late: number; refused: number }

/** "Never" is an answer too, and a wrong one of a pot that gets there; only `cannot-tell` is none. */
function count(kind: 'heating' | 'cooling', seed: number, seen: (pot: ChancePot) => ChancePot = (pot) => pot): Count {
  const chance = new Chance(seed)
  const counted = { held: 0, early: 0, late: 0, refused: 0 }
  for (let no = 0; no < pots; no++) {
    const pot = potByChance(chance, kind)
    const found = timeToTemperature(seen(pot))
    if (found.kind === 'cannot-tell') counted.refused += 1
    else if (found.kind === 'never') counted.late += 1
    else if (pot.truthMin < found.lowMin) counted.early += 1
    else if (found.highMin !== null && pot.truthMin > found.highMin) counted.late += 1
    else counted.held += 1
  }
  return counted
}

const share = ({ held, early, late }: Count): number => held / (held + early + late)

describe.each(['heating', 'cooling'] as const)(`2,000 pots that are %s (seed 5)`, (kind) => {
  test('The interval holds the true time in 93 to 97 % of those it is given for', () => {
    const found = count(kind, 5)
    expect(share(found)).toBeGreaterThanOrEqual(0.93)
    expect(share(found)).toBeLessThanOrEqual(0.97)
    // Misses lie on both sides, and answers are the rule.
    expect(found.early / pots).toBeGreaterThan(0.01)
    expect(found.late / pots).toBeGreaterThan(0.01)
    expect(found.refused / pots).toBeLessThan(0.05)
  })

  test('Said to read better than it does, a thermometer gets too narrow an interval: the count can fail', () => {
    const boast = count(kind, 5, (pot) => ({ ...pot, sdC: pot.sdC * 0.7, resolutionC: pot.resolutionC * 0.7 }))
    expect(share(boast)).toBeLessThan(0.9)
  })
})
