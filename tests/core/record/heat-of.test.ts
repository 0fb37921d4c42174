import { describe, expect, it } from 'vitest'
import { newtonC, newtonMin } from '../../../src/core/chemistry/heating/laws.ts'
import { fromEarlier } from '../../../src/core/pot/expected/earlier.ts'
import { expectationsOf } from '../../../src/core/pot/expected/expect.ts'
import type { LiveState } from '../../../src/core/pot/state.ts'
import type { Programme } from '../../../src/core/protocol/model.ts'
import { heatOf } from '../../../src/core/record/heat-of.ts'
import { Bench, identity, T0 } from '../pot/given.ts'
import { act, MIN, programme, ramp, wait } from '../pot/programmes.ts'

const rise = { fromC: 20, towardsC: 110, perMin: 1 / 40 }
const fall = { fromC: 80, towardsC: 20, perMin: 1 / 70 }
const bigPot = { kind: 'pot' as const, itemId: 'p1', name: 'big pot', lot: '', about: '' }
const until = [{ kind: 'temperature' as const, lowC: null, highC: 40, going: 'down' as const }]
const method = (more: Partial<Programme> = {}): Programme =>
  programme([ramp('heat', 20, 80, 2), act('off', { heat: 'off' }), wait('cool', null, { until })], [], more)

/** A batch that heats to 80 °C and cools to 40 °C, read every five minutes in whole degrees. */
function batch(law: typeof rise, more: Partial<Programme> = {}): Bench {
  const pot = Bench.start(method(more))
  const top = newtonMin(law, 80) as number
  const read = (by: typeof rise, min: number, atMin: number): void => {
    pot.nowMs = T0 + atMin * MIN
    pot.do({ type: 'ReadTemperature', tempC: Math.round(newtonC(by, min)) })
  }
  for (let min = 0; min < top; min += 5) read(law, min, min)
  read(law, top, top)
  pot.do({ type: 'MarkDone', path: 'off' })
  const down = newtonMin(fall, 40) as number
  for (let min = 0; min < down; min += 10) read(fall, min, top + min)
  read(fall, down, top + down)
  pot.pass(1)
  if (pot.run.stepsDone) pot.do({ type: 'Finish', bath: 'dropped' })
  return pot
}

const way = { fromC: 20, targetC: 80, going: 'up' as const }
const fresh = (more: Partial<Programme> = {}): LiveState => Bench.start(method(more)).state as LiveState

describe('what a settled batch leaves for the next', () => {
  it('is how it went up and how it cooled, by pot, burner and liquor', () => {
    const heat = heatOf(batch(rise).entries)
    expect(heat).toMatchObject({ potId: 'pot-a', pot: '', liquorML: 3000 })
    const [up, down] = heat?.runs ?? []
    expect(up).toMatchObject({ going: 'up', burner: 'front left', level: null, fromC: 20, toC: 80 })
    // (110 - 20) / 40 °C/min at its start.
    expect(up?.startCPerMin).toBeGreaterThan(2.25 * 0.9)
    expect(up?.startCPerMin).toBeLessThan(2.25 * 1.1)
    expect(down).toMatchObject({ going: 'down' })
    expect(down?.perMin).toBeCloseTo(1 / 70, 3)
  })

  it('is nothing while it runs, and nothing where nothing was read', () => {
    const pot = Bench.start(method())
    expect(heatOf(pot.entries)).toBeNull()
    pot.do({ type: 'Abort', reason: 'no time' })
    expect(heatOf(pot.entries)).toBeNull()
  })

  it('leaves out a reading that was taken back, and takes a corrected one as corrected', () => {
    const pot = Bench.start(method())
    pot.do({ type: 'ReadTemperature', tempC: 20 })
    pot.nowMs += 10 * MIN
    pot.do({ type: 'ReadTemperature', tempC: 90 - 50 })
    const entry = pot.entries.findLast(({ event }) => event.type === 'TemperatureRead')
    pot.nowMs += MIN
    pot.do({ type: 'ReadTemperature', tempC: 79 })
    pot.do({ type: 'Undo' })
    const ref = { writerId: 'w', seq: entry?.seq ?? 0 }
    pot.do({ type: 'Correct', entry: ref, field: 'tempC', was: '40', now: '45', why: 'read wrong' })
    pot.do({ type: 'Abort', reason: 'no time' })
    expect(heatOf(pot.entries)?.runs).toMatchObject([{ fromC: 20, toC: 45, startCPerMin: 2.5, perMin: 0 }])
  })
})

describe('the first estimate from earlier batches', () => {
  const truth = newtonMin(rise, 80) as number

  it('is near the truth before any reading, and says how many it rests on', () => {
    const heat = heatOf(batch(rise).entries)
    const state = fresh()
    const found = expectationsOf(state, heat ? [heat] : []).heat
    expect(found).toMatchObject({ kind: 'at', grounds: { by: 'batches', count: 1, pot: false }, readings: 0 })
    if (found?.kind !== 'at') throw new Error('no time')
    expect(Math.abs((found.atMs - T0) / MIN - truth)).toBeLessThan(3)
    expect((found.leastMs - T0) / MIN).toBeLessThan(truth)
    expect(((found.mostMs ?? 0) - T0) / MIN).toBeGreaterThan(truth)
  })

  it('has the spread of several as its interval', () => {
    const quick = { ...rise, perMin: 1 / 32 }
    const slow = { ...rise, perMin: 1 / 50 }
    const all = [rise, quick, slow].flatMap((law) => heatOf(batch(law).entries) ?? [])
    const found = fromEarlier(all, fresh(), way)
    expect(found?.count).toBe(3)
    expect(found?.leastMin).toBeLessThan(newtonMin(quick, 80) as number)
    expect(found?.mostMin).toBeGreaterThan(newtonMin(slow, 80) as number)
    expect(Math.abs((found?.min ?? 0) - truth)).toBeLessThan(3)
  })

  it('takes twice as long for twice the water, and nothing from a pot of another size', () => {
    const all = [heatOf(batch(rise).entries)].flatMap((heat) => heat ?? [])
    const one = fromEarlier(all, fresh(), way)?.min ?? 0
    expect(fromEarlier(all, fresh({ liquorML: 6000 }), way)?.min).toBeCloseTo(2 * one, 5)
    expect(fromEarlier(all, fresh({ liquorML: 6100 }), way)).toBeNull()
  })

  it('is of the same pot, burner and heat only', () => {
    const all = [heatOf(batch(rise).entries)].flatMap((heat) => heat ?? [])
    const state = fresh()
    expect(fromEarlier(all, state, way)).not.toBeNull()
    expect(fromEarlier(all, { ...state, pot: { ...identity(), burner: 'back left' } }, way)).toBeNull()
    expect(fromEarlier(all, { ...state, pot: { ...identity(), uses: [bigPot] } }, way)).toBeNull()
    expect(fromEarlier(all, { ...state, heatLevel: 'low' }, way)).toBeNull()
    const named = all.map((heat) => ({ ...heat, pot: 'big pot' }))
    expect(fromEarlier(named, { ...state, pot: { ...identity(), uses: [bigPot] } }, way)?.pot).toBe(true)
  })

  it('is none where most of them would not have got there', () => {
    const low = { fromC: 20, towardsC: 85, perMin: 1 / 20 }
    const all = [heatOf(batch(low).entries)].flatMap((heat) => heat ?? [])
    expect(fromEarlier(all, fresh(), { ...way, targetC: 95 })).toBeNull()
  })
})
