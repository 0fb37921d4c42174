import { describe, expect, test } from 'vitest'
import type { CannotTell, ReachedAt, TimeToTemperature } from '../../../../src/core/chemistry/heating/answer.ts'
import { newtonC } from '../../../../src/core/chemistry/heating/laws.ts'
import type { Asked, Reading } from '../../../../src/core/chemistry/heating/readings.ts'
import { timeToTemperature } from '../../../../src/core/chemistry/heating/time-to-temperature.ts'

const kettle = { sdC: 0.3, resolutionC: 0.1 }
/** 20 °C on a ring that would bring it to 110 °C: at 85 °C after 32.0 min. */
const onTheRing = { fromC: 20, towardsC: 110, perMin: 1 / 25 }
const inTheRoom = { fromC: 90, towardsC: 20, perMin: 1 / 60 }

const every = (stepMin: number, count: number): number[] => Array.from({ length: count }, (_, i) => i * stepMin)
const told = (pot: typeof onTheRing, minutes: number[]): Reading[] =>
  minutes.map((atMin) => ({ atMin, tempC: Math.round(newtonC(pot, atMin) * 10) / 10 }))
const read = (...pairs: [number, number][]): Reading[] => pairs.map(([atMin, tempC]) => ({ atMin, tempC }))

function reached(found: TimeToTemperature): ReachedAt {
  if (found.kind !== 'reached-at') throw new Error(JSON.stringify(found))
  return found
}

function refused(found: TimeToTemperature): CannotTell {
  if (found.kind !== 'cannot-tell') throw new Error(JSON.stringify(found))
  return found
}

describe('a pot on its way', () => {
  test('Heating: the time of 85 °C lies within its interval, which ends on both sides', () => {
    const { min, lowMin, highMin } = reached(
      timeToTemperature({ readings: told(onTheRing, every(3, 8)), targetC: 85, ...kettle })
    )
    expect(min).toBeCloseTo(32.02, 0)
    expect(lowMin).toBeLessThan(32.02)
    expect(highMin).toBeGreaterThan(32.02)
    expect((highMin ?? 0) - lowMin).toBeLessThan(5)
  })

  test('Cooling goes by the same function', () => {
    const readings = told(inTheRoom, every(5, 9))
    expect(reached(timeToTemperature({ readings, targetC: 40, ...kettle })).min).toBeCloseTo(75.2, 0)
  })

  test('Already past the target, it tells when it was there', () => {
    const readings = told(onTheRing, every(4, 12))
    const { min, highMin } = reached(timeToTemperature({ readings, targetC: 60, ...kettle }))
    expect(min).toBeCloseTo(25 * Math.log(90 / 50), 1)
    expect(highMin).toBeLessThan(readings.at(-1)?.atMin ?? 0)
  })

  test('A first reading at the target: reached then, and not before the first reading', () => {
    const readings = read([10, 80.1], [14, 84.2], [18, 87.9], [22, 91])
    const { min, lowMin, highMin } = reached(timeToTemperature({ readings, targetC: 80, ...kettle }))
    expect([min, lowMin]).toEqual([10, 10])
    expect(highMin).toBeGreaterThan(10)
    expect(highMin).toBeLessThan(11)
  })

  test('Early readings leave the late end open, and say no time is too late', () => {
    const readings = told(onTheRing, [0, 2, 4, 6])
    const { lowMin, highMin } = reached(timeToTemperature({ readings, targetC: 85, ...kettle }))
    expect(highMin).toBeNull()
    // No sooner than in a straight line.
    expect(lowMin).toBeGreaterThan(15)
  })

  test('A pot that heats faster and faster so far is taken for a straight line', () => {
    const readings = read([0, 20], [2, 23.8], [4, 27.8], [6, 32.1])
    const { min } = reached(timeToTemperature({ readings, targetC: 80, sdC: 0.5, resolutionC: 0.1 }))
    expect(min).toBeCloseTo(30, -1)
  })

  test('Two readings at one time count as two', () => {
    const once = timeToTemperature({ readings: told(onTheRing, [0, 5, 10, 15, 20]), targetC: 85, ...kettle })
    const twice = timeToTemperature({ readings: told(onTheRing, [0, 5, 10, 15, 20, 20, 20]), targetC: 85, ...kettle })
    expect(reached(twice).highMin ?? 0).toBeLessThan(reached(once).highMin ?? 0)
  })
})

describe('a pot that will not get there', () => {
  const weak = { fromC: 20, towardsC: 80, perMin: 1 / 25 }

  test('It levels off before the target: never, once the readings say so', () => {
    expect(timeToTemperature({ readings: told(weak, every(5, 10)), targetC: 85, ...kettle })).toEqual({ kind: 'never' })
  })

  test('Before they say so, it is not called never', () => {
    const found = refused(timeToTemperature({ readings: told(weak, every(4, 6)), targetC: 85, ...kettle }))
    expect(found.code).toBe('may-level-off')
    expect(found.lowMin).toBeGreaterThan(35)
    expect(found.why).toMatch(/^It may level off before 85 °C: not before minute \d+(\.\d)?, if at all\.$/)
  })

  test('What an interval of 95 % leaves out is not yet called never', () => {
    const asked = { readings: told({ ...weak, towardsC: 83 }, every(5, 11)), targetC: 85, ...kettle }
    expect(refused(timeToTemperature(asked)).code).toBe('may-level-off')
    expect(timeToTemperature({ ...asked, readings: told({ ...weak, towardsC: 83 }, every(5, 16)) })).toEqual({
      kind: 'never'
    })
  })

  test('All over before the second reading: steady since, and never hotter', () => {
    const readings = read([0, 20], [5, 60], [10, 60.1], [15, 59.9], [20, 60])
    expect(timeToTemperature({ readings, targetC: 75, ...kettle })).toEqual({ kind: 'never' })
  })

  test('A late end more than a day off is no end', () => {
    const slow = { fromC: 90, towardsC: 20, perMin: 1 / 400 }
    const asked = { readings: told(slow, every(60, 10)), ...kettle }
    expect(reached(timeToTemperature({ ...asked, targetC: 22.8 })).highMin).toBeNull()
    expect(reached(timeToTemperature({ ...asked, targetC: 30 })).highMin).toBeLessThan(1440)
  })

  test('A room that is warmer than the target: cooling never gets there', () => {
    const readings = told({ ...inTheRoom, towardsC: 28 }, every(12, 20))
    expect(timeToTemperature({ readings, targetC: 24, ...kettle })).toEqual({ kind: 'never' })
  })

  test('Over the boil: never, at sea level without being told, elsewhere by the boil of the place', () => {
    const readings = told(onTheRing, every(3, 10))
    expect(timeToTemperature({ readings, targetC: 101, ...kettle })).toEqual({ kind: 'never' })
    expect(timeToTemperature({ readings, targetC: 94, boilC: 93.5, ...kettle })).toEqual({ kind: 'never' })
    expect(timeToTemperature({ readings, targetC: 94, boilC: 94, ...kettle }).kind).toBe('reached-at')
  })

  test('Steady for an hour is never; steady for three readings is not known', () => {
    const steady = (minutes: number[]) => minutes.map((atMin, i) => ({ atMin, tempC: 60 + 0.1 * (i % 2) }))
    expect(timeToTemperature({ readings: steady(every(5, 25)), targetC: 85, ...kettle })).toEqual({ kind: 'never' })
    const found = refused(timeToTemperature({ readings: steady([0, 2, 4]), targetC: 85, ...kettle }))
    expect(found.code).toBe('steady')
  })

  test('Readings that move away are never when one says which way it should go, and else told as that', () => {
    const readings = told(inTheRoom, every(4, 8))
    const asked = { readings, targetC: 95, ...kettle }
    expect(timeToTemperature({ ...asked, towards: 'up' })).toEqual({ kind: 'never' })
    expect(refused(timeToTemperature(asked)).code).toBe('moves-away')
    // It is where it should go, and was before anybody looked.
    expect(reached(timeToTemperature({ ...asked, towards: 'down' })).highMin).toBe(0)
  })
})

describe('a pot at the boil', () => {
  test('Readings at the boil do not bend the curve', () => {
    const minutes = every(4, 20)
    const boiling = told(onTheRing, minutes).map(({ atMin, tempC }) => ({ atMin, tempC: Math.min(98.2, tempC) }))
    const found = reached(timeToTemperature({ readings: boiling, targetC: 85, boilC: 98.2, ...kettle }))
    expect(found.min).toBeCloseTo(32.02, 1)
    // Without the boil of the place they do, and it is seen.
    expect(refused(timeToTemperature({ readings: boiling, targetC: 85, ...kettle })).code).toBe('not-one-curve')
  })

  test('A simmer a little under the boil counts as the boil', () => {
    const simmering = told(onTheRing, every(4, 20)).map(({ atMin, tempC }) => ({ atMin, tempC: Math.min(98, tempC) }))
    const asked = { readings: simmering, targetC: 85, boilC: 98.2, sdC: 0.05, resolutionC: 0.1 }
    expect(reached(timeToTemperature(asked)).min).toBeCloseTo(32.02, 1)
  })

  test('A pot that cools from the boil keeps its first reading', () => {
    const readings = told({ fromC: 100, towardsC: 20, perMin: 1 / 50 }, [0, 10, 20])
    expect(timeToTemperature({ readings, targetC: 50, ...kettle }).kind).toBe('reached-at')
  })
})

describe('what is refused', () => {
  test('Two readings, or three of which two are at one time', () => {
    const two = refused(timeToTemperature({ readings: read([0, 20], [5, 36]), targetC: 85, ...kettle }))
    expect(two).toEqual({ kind: 'cannot-tell', code: 'too-few', why: 'Three readings at different times are needed.' })
    const three = timeToTemperature({ readings: read([0, 20], [5, 36], [5, 36.2]), targetC: 85, ...kettle })
    expect(refused(three).code).toBe('too-few')
    expect(refused(timeToTemperature({ readings: [], targetC: 85, ...kettle })).code).toBe('too-few')
  })

  test('Cold water in between: no one curve, and from which minute on there is one', () => {
    const before = told(onTheRing, every(3, 7))
    const after = told({ ...onTheRing, fromC: 45 }, every(3, 7)).map(({ atMin, tempC }) => ({
      atMin: atMin + 20,
      tempC
    }))
    const found = refused(timeToTemperature({ readings: [...before, ...after], targetC: 85, ...kettle }))
    expect(found.code).toBe('not-one-curve')
    expect(found.fitsFromMin).toBe(20)
    expect(found.why).toContain('Those from minute 20 on do.')
    expect(reached(timeToTemperature({ readings: after, targetC: 85, ...kettle })).min).toBeGreaterThan(40)
  })

  test.each([20, 2])('One reading mistyped by %d °C among ten is seen', (byC) => {
    const readings = told(onTheRing, every(3, 10))
    const mistyped = readings.map((reading, i) => (i === 4 ? { ...reading, tempC: reading.tempC + byC } : reading))
    expect(refused(timeToTemperature({ readings: mistyped, targetC: 85, ...kettle })).code).toBe('not-one-curve')
  })

  test('Readings that never follow a curve are not said to from any minute on', () => {
    const readings = every(3, 10).map((atMin, i) => ({ atMin, tempC: 40 + 15 * (i % 2) }))
    const found = refused(timeToTemperature({ readings, targetC: 85, ...kettle }))
    expect(found.code).toBe('not-one-curve')
    expect(found.fitsFromMin).toBeUndefined()
  })

  const good: Asked = { readings: told(onTheRing, every(3, 8)), targetC: 85, ...kettle }
  const withReading = (reading: unknown): Partial<Asked> => ({
    readings: [...good.readings.slice(0, 2), reading as Reading]
  })
  test.each<[string, unknown, string]>([
    ['no list', { readings: undefined }, 'There are no readings: give a list of them, each with its minute and °C.'],
    ['a hole', withReading(null), 'Reading 3: it wants its minute and its temperature in °C.'],
    ['no minute', withReading({ tempC: 40 }), 'Reading 3: its minute is missing: write a number of minutes.'],
    [
      'a text',
      withReading({ atMin: 6, tempC: '40,5' }),
      'Reading 3: its temperature is the text "40,5": write −10 to 120 °C as a number.'
    ],
    [
      'not a number',
      withReading({ atMin: 6, tempC: Number.NaN }),
      'Reading 3: its temperature is NaN: write −10 to 120 °C as a number.'
    ],
    [
      '°F',
      withReading({ atMin: 6, tempC: 185 }),
      'Reading 3: its temperature is 185: write −10 to 120 °C as a number.'
    ],
    [
      'endless time',
      withReading({ atMin: Infinity, tempC: 40 }),
      'Reading 3: its minute is Infinity: write a number of minutes.'
    ],
    ['no target', { targetC: undefined }, 'The target is missing: write −10 to 120 °C as a number.'],
    ['a target in °F', { targetC: 185 }, 'The target is 185: write −10 to 120 °C as a number.'],
    [
      'a negative deviation',
      { sdC: -0.3 },
      'The standard deviation of a reading is -0.3: write 0 to 20 °C as a number.'
    ],
    ['a step of 100', { resolutionC: 100 }, 'The step of the thermometer is 100: write 0 to 20 °C as a number.'],
    ['a boil of 212', { boilC: 212 }, 'The boiling point is 212: write 60 to 120 °C as a number.'],
    ['a way that is none', { towards: 'hot' }, '"hot" is no direction: write up or down.']
  ])('Bad input, %s: where, what and what would be right', (_, wrong, why) => {
    const asked = { ...good, ...(wrong as Partial<Asked>) }
    expect(timeToTemperature(asked)).toEqual({ kind: 'cannot-tell', code: 'bad-input', why })
    expect(timeToTemperature(good).kind).toBe('reached-at')
  })
})
