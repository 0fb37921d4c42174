import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { newtonC, newtonMin } from '../../../../src/core/chemistry/heating/laws.ts'
import type { PotCommand } from '../../../../src/core/pot/commands.ts'
import type { EarlierHeat } from '../../../../src/core/pot/expected/earlier.ts'
import { expectationsOf } from '../../../../src/core/pot/expected/expect.ts'
import type { Expectation } from '../../../../src/core/pot/expected/expectation.ts'
import { forecast } from '../../../../src/core/pot/forecast.ts'
import type { LiveState } from '../../../../src/core/pot/state.ts'
import type { Programme } from '../../../../src/core/protocol/model.ts'
import { Bench, T0 } from '../given.ts'
import { act, MIN, programme, ramp, wait } from '../programmes.ts'

const heating = { fromC: 20, towardsC: 120, perMin: 1 / 35 }
const levelling = { fromC: 20, towardsC: 70, perMin: 1 / 15 }

const toEighty = (more: Partial<Programme> = {}): Bench =>
  Bench.start(programme([ramp('heat', 20, 80, 2), act('off', { heat: 'off' })], [], more))

const cooling = (highC: number, more: Partial<Programme> = {}): Bench => {
  const until = [{ kind: 'temperature' as const, lowC: null, highC, going: 'down' as const }]
  return Bench.start(programme([wait('cool', null, { until }), act('out')], [], { roomC: 20, ...more }))
}

/** Whole degrees, as pads give them, at those minutes after the start. */
function readAt(pot: Bench, law: typeof heating, minutes: number[], exact = false): void {
  for (const min of minutes) {
    pot.nowMs = T0 + min * MIN
    const tempC = newtonC(law, min)
    pot.do({ type: 'ReadTemperature', tempC: exact ? tempC : Math.round(tempC) })
  }
}

const expected = (pot: Bench, earlier: EarlierHeat[] = []): Expectation | undefined =>
  expectationsOf(pot.state as LiveState, earlier)[pot.open()[0] as string]

const at = (found: Expectation | undefined): Extract<Expectation, { kind: 'at' }> => {
  if (found?.kind !== 'at') throw new Error(`expected a time and got ${JSON.stringify(found)}`)
  return found
}

const minutesOf = ({ atMs, leastMs, mostMs }: Extract<Expectation, { kind: 'at' }>) => ({
  at: (atMs - T0) / MIN,
  least: (leastMs - T0) / MIN,
  most: mostMs === null ? null : (mostMs - T0) / MIN
})

describe('what is expected of a heating', () => {
  it('is the protocol’s rate before any reading, and says so', () => {
    const found = at(expected(toEighty()))
    expect(minutesOf(found)).toEqual({ at: 30, least: 24, most: 45 })
    expect(found).toMatchObject({ targetC: 80, going: 'up', grounds: { by: 'rate' }, readings: 0, doubt: null })
  })

  it('goes by the rate from the last reading on while they are too few', () => {
    const pot = toEighty()
    readAt(pot, heating, [0, 10])
    const found = at(expected(pot))
    // 45 °C at 10 min, 2 °C/min to 80 °C.
    expect(minutesOf(found).at).toBe(27.5)
    expect(found).toMatchObject({ grounds: { by: 'rate' }, readings: 2, doubt: { code: 'too-few' } })
  })

  it('goes by the readings from the third on where they tell, with an interval that holds the truth', () => {
    const pot = toEighty()
    readAt(pot, heating, [0, 4, 8, 12, 16, 20, 24])
    const truth = newtonMin(heating, 80) as number
    const found = at(expected(pot))
    expect(found).toMatchObject({ grounds: { by: 'readings', count: 7, sinceMs: T0 }, readings: 7, doubt: null })
    const { at: likely, least, most } = minutesOf(found)
    expect(Math.abs(likely - truth)).toBeLessThan(2)
    expect(least).toBeLessThan(truth)
    expect(most).toBeGreaterThan(truth)
  })

  it('says early that it will not get there, and takes it back when the heat is turned up', () => {
    const pot = toEighty()
    const minutes = Array.from({ length: 11 }, (_, i) => i * 4)
    let saidAt = Number.NaN
    for (const min of minutes) {
      readAt(pot, levelling, [min])
      if (expected(pot)?.kind === 'never' && Number.isNaN(saidAt)) saidAt = min
    }
    // 64.7 °C of the 70 °C that it would level off at.
    expect(saidAt).toBeLessThanOrEqual(36)
    expect(expected(pot)).toMatchObject({ kind: 'never', readings: 11 })
    pot.do({ type: 'ChangeHeat', on: true, level: 'high' })
    expect(at(expected(pot))).toMatchObject({ grounds: { by: 'rate' } })
  })

  it('counts no reading from before the heat was set, water came in, skeins went in, or trouble', () => {
    const changes: PotCommand[] = [
      { type: 'ChangeHeat', on: true, level: 'low' },
      { type: 'TopUp', volumeML: 300, tempC: null, levelBefore: null, levelAfter: null },
      { type: 'AddUnplanned', amount: { value: 500, unit: 'mL', of: 'water', asEntered: '500 mL' } },
      { type: 'PutSkeinsIn', tags: ['S1'] },
      { type: 'ChangeBurner', burner: 'back left' },
      { type: 'CallTrouble', kind: 'boil-over' }
    ]
    for (const change of changes) {
      const pot = toEighty()
      readAt(pot, heating, [0, 5, 10, 15])
      expect((pot.state as LiveState).tempReadings.length, change.type).toBe(4)
      pot.nowMs += MIN
      pot.do(change)
      expect((pot.state as LiveState).tempReadings, change.type).toEqual([])
    }
  })

  it('keeps them where a little acid goes in', () => {
    const pot = toEighty({ liquorML: 3000 })
    readAt(pot, heating, [0, 5])
    pot.do({ type: 'AddUnplanned', amount: { value: 30, unit: 'mL', of: 'acid', asEntered: '30 mL' } })
    expect((pot.state as LiveState).tempReadings.length).toBe(2)
  })

  it('of two heatings on one flame counts the readings of the present one', () => {
    const pot = Bench.start(programme([ramp('one', 20, 50, 2), wait('hold', 10 * MIN), ramp('two', 50, 80, 2)]))
    readAt(pot, heating, [0, 6, 13])
    pot.pass(10)
    expect(pot.open()).toEqual(['two'])
    expect(at(expected(pot))).toMatchObject({ readings: 0, grounds: { by: 'rate' } })
    // The hold's last reading is fresh: from 51 °C at its end.
    expect(minutesOf(at(expected(pot))).at).toBe(23 + (80 - 51) / 2)
  })

  it('goes on by the later readings where the lid changed the curve', () => {
    const pot = toEighty()
    readAt(pot, { fromC: 20, towardsC: 50, perMin: 1 / 25 }, [0, 5, 10, 15, 20, 25])
    for (const min of [26, 28, 30, 32, 34]) {
      pot.nowMs = T0 + min * MIN
      pot.do({ type: 'ReadTemperature', tempC: Math.round(38 + (min - 25) * 3) })
    }
    const found = at(expected(pot))
    expect(found.grounds).toMatchObject({ by: 'readings' })
    expect(found.grounds.by === 'readings' && found.grounds.sinceMs).toBeGreaterThan(T0 + 14 * MIN)
    expect(minutesOf(found).at).toBeGreaterThan(37)
    expect(minutesOf(found).at).toBeLessThan(43)
  })

  it('ends under the local boil, where an open pot ends', () => {
    const given = { skeins: [], values: {}, materials: {}, roomC: null, boilC: 94 }
    const pot = Bench.start(programme([ramp('heat', 20, 94, 2)], [], { given }))
    // It gets to 94 and no further: what lies at the boil tells nothing of the way, and is no reason to say "never".
    readAt(pot, { fromC: 20, towardsC: 130, perMin: 1 / 40 }, [0, 5, 10, 15, 20, 25, 30, 35])
    const found = at(expected(pot))
    expect(found.targetC).toBe(94)
    const truth = newtonMin({ fromC: 20, towardsC: 130, perMin: 1 / 40 }, 93.5) as number
    expect(Math.abs(minutesOf(found).at - truth)).toBeLessThan(2)
  })

  it('is nothing in trouble', () => {
    const pot = toEighty()
    pot.do({ type: 'CallTrouble', kind: 'power-cut' })
    expect(expected(pot)).toBeUndefined()
  })

  it('comes to the truth as a heating without noise is read on (property)', () => {
    const pots = fc.record({
      fromC: fc.integer({ min: 10, max: 40 }),
      towardsC: fc.integer({ min: 95, max: 180 }),
      lifeMin: fc.integer({ min: 15, max: 60 })
    })
    fc.assert(
      fc.property(pots, ({ fromC, towardsC, lifeMin }) => {
        const law = { fromC, towardsC, perMin: 1 / lifeMin }
        const truth = newtonMin(law, 80) as number
        const pot = toEighty()
        const minutes = Array.from({ length: 12 }, (_, i) => (truth * i) / 12)
        readAt(pot, law, minutes, true)
        const found = at(expected(pot))
        expect(found.grounds.by).toBe('readings')
        expect(Math.abs(minutesOf(found).at - truth)).toBeLessThan(truth / 100)
      }),
      { seed: 20310614, numRuns: 60 }
    )
  })
})

describe('what is expected of a cooling', () => {
  it('counts the readings since the heat went off, also those before its step began', () => {
    const law = { fromC: 90, towardsC: 20, perMin: 1 / 60 }
    const until = [{ kind: 'temperature' as const, lowC: null, highC: 40, going: 'down' as const }]
    const pot = Bench.start(programme([wait('rest', 10 * MIN), wait('cool', null, { until })], [], { roomC: 20 }))
    readAt(pot, law, [0, 5])
    pot.pass(7)
    readAt(pot, law, [15, 25, 35, 45])
    expect(pot.open()).toEqual(['cool'])
    const found = at(expected(pot))
    expect(found).toMatchObject({ going: 'down', targetC: 40, readings: 6, grounds: { by: 'readings', count: 6 } })
    expect(Math.abs(minutesOf(found).at - (newtonMin(law, 40) as number))).toBeLessThan(6)
  })

  it('goes by the usual cooling towards the room from one reading, and by nothing from none', () => {
    const pot = cooling(40, { coolingPerMin: 0.01 })
    expect(expected(pot)).toBeUndefined()
    readAt(pot, { fromC: 90, towardsC: 20, perMin: 1 / 60 }, [0])
    expect(minutesOf(at(expected(pot))).at).toBeCloseTo(Math.log(70 / 20) / 0.01, 3)
  })

  it('never gets under the room', () => {
    const pot = cooling(15)
    const law = { fromC: 60, towardsC: 20, perMin: 1 / 12 }
    readAt(pot, law, [0, 5, 10, 15, 20, 25, 30, 40, 50])
    expect(expected(pot)).toMatchObject({ kind: 'never', going: 'down' })
  })
})

describe('the knots', () => {
  const knots = (pot: Bench, earlier: EarlierHeat[] = []) => {
    const state = pot.state as LiveState
    return forecast(state, pot.nowMs, expectationsOf(state, earlier)).map((knot) => ({
      path: knot.path,
      at: Math.round((knot.atMs - T0) / MIN),
      least: Math.round((knot.leastMs - T0) / MIN),
      most: Math.round((knot.mostMs - T0) / MIN),
      faint: knot.faint
    }))
  }

  it('move with each reading, and what follows moves along', () => {
    const pot = toEighty()
    const [heat, off] = knots(pot)
    expect(heat).toMatchObject({ path: 'heat', at: 30, least: 24, most: 45 })
    // Half a minute of hands at the thermometer.
    expect(off).toMatchObject({ path: 'off', at: 31, faint: false })
    readAt(pot, heating, [0, 5, 10, 15, 20, 25])
    const [later, after] = knots(pot)
    const truth = newtonMin(heating, 80) as number
    expect(Math.abs((later?.at ?? 0) - truth)).toBeLessThan(2)
    expect((after?.at ?? 0) - (later?.at ?? 0)).toBeLessThanOrEqual(1)
    expect(after?.at).not.toBe(off?.at)
    expect((later?.most ?? 0) - (later?.least ?? 0)).toBeGreaterThan(0)
  })

  it('leave what is due where it was: a guess moves no call', () => {
    const pot = toEighty()
    readAt(pot, heating, [0, 5, 10, 15])
    const { active } = pot.run
    const before = JSON.stringify(active)
    knots(pot)
    expect(JSON.stringify(pot.run.active)).toBe(before)
    expect(pot.due('heat')).not.toBe(knots(pot)[0]?.at)
  })

  it('are faint after what may never come', () => {
    const pot = toEighty()
    readAt(pot, levelling, [0, 5, 10, 15, 20, 25, 30, 35, 40])
    const [heat, off] = knots(pot)
    expect(expected(pot)?.kind).toBe('never')
    expect(heat?.most).toBeGreaterThan(24 * 60)
    expect(off).toMatchObject({ faint: true })
  })
})
