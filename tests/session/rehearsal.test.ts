import { describe, expect, it } from 'vitest'
import { fold } from '../../src/core/pot/fold.ts'
import { rehearse } from '../../src/session/rehearsal.ts'
import { identity, T0 } from '../core/pot/given.ts'
import { act, alongside, ask, dose, gradeOf, MIN, programme, ramp, until, wait } from '../core/pot/programmes.ts'

const text = { title: 'Test', text: '', version: 'v', from: 'file' as const }

describe('a rehearsal', () => {
  it('heats at the stated rate: 20 to 80 °C at 1 °C/min takes 60 min', () => {
    const done = rehearse(programme([ramp('heat', 20, 80, 1), act('off', { heat: 'off' })]), identity(), text, T0)
    expect(done.stuck).toBeNull()
    expect(done.endedAfterMs).toBe(60 * MIN)
  })

  it('cools by Newton: with k 0.0112 a minute, 95 to 40 °C in a room of 20 takes 118 min', () => {
    // Worked from T = Ta + (T0 - Ta) e^-kt: ln(75/20)/0.0112 = 118.0 min. Computed from the definition.
    const down = { kind: 'temperature' as const, lowC: null, highC: 40, going: 'down' as const }
    const cool = wait('cool', null, { until: [down], clock: { leastMs: 0, likelyMs: 118 * MIN, mostMs: 0 } })
    const done = rehearse(programme([ramp('heat', 20, 95, 1), act('off', { heat: 'off' }), cool]), identity(), text, T0)
    const minutes = (done.endedAfterMs ?? 0) / MIN - 75
    expect(minutes).toBeGreaterThanOrEqual(117.9)
    expect(minutes).toBeLessThan(119.2)
  })

  const upTo = (lowC: number) => ({ kind: 'temperature' as const, lowC, highC: null, going: 'up' as const })
  const downTo = (highC: number) => ({ kind: 'temperature' as const, lowC: null, highC, going: 'down' as const })

  it('says at once what it waits for in vain: a bath that nobody heats never comes to 90 °C', () => {
    const done = rehearse(programme([act('in'), wait('hot', null, { until: [upTo(90)] })]), identity(), text, T0)
    expect(done.stuck).toBe(
      'hot: waits for 90 °C, which the simulated bath never reaches at this heat: it stays at 20 °C'
    )
    expect(done.endedAfterMs).toBeNull()
    expect(done.told.length).toBeLessThan(20)
  })

  it('says so of a bath that is to cool under the room, and names where it comes to', () => {
    const cold = wait('cold', null, { until: [downTo(10)] })
    const plan = programme([ramp('heat', 20, 60, 1), act('off', { heat: 'off' }), cold])
    const done = rehearse(plan, identity(), text, T0)
    expect(done.stuck).toContain('cold: waits for 10 °C')
    expect(done.stuck).toContain('it comes to 20 °C')
  })

  it('waits on while something else may still heat the bath, and says it when nothing more can', () => {
    const waiting = wait('hot', null, { until: [upTo(60)] })
    const heating = [wait('first', 30 * MIN), ramp('heat', 20, 80, 1)]
    const late = rehearse(programme([alongside('both', { yarn: [waiting], bath: heating })]), identity(), text, T0)
    expect(late.stuck).toBeNull()
    const idle = [wait('first', 30 * MIN), act('x')]
    const never = rehearse(programme([alongside('both', { yarn: [waiting], bath: idle })]), identity(), text, T0)
    expect(never.stuck).toContain('waits for 60 °C')
  })

  it('gives own answers their turn and ends a loop by them', () => {
    const plan = programme([
      until('clear', gradeOf('bath'), 3, [dose('acid', 20), wait('w', 10 * MIN)]),
      ask('last', gradeOf('bath'))
    ])
    const given = ['half', 'tint', 'clear'] as const
    let n = 0
    const person = {
      delayMs: () => 0,
      answer: () => ({ kind: 'grade' as const, grade: given[n++] ?? ('clear' as const), hue: null })
    }
    const done = rehearse(plan, identity(), text, T0, person)
    expect(done.endedAfterMs).toBe(20 * MIN)
    expect(done.told.filter((e) => e.event.type === 'Dosed')).toHaveLength(2)
  })

  it('leaves a journal that folds to the very state it ended in', () => {
    const done = rehearse(programme([wait('w', 5 * MIN), act('x')]), identity(), text, T0)
    const entries = done.told.map((told, i) => ({
      v: 2,
      streamId: 'pot/a',
      writerId: 'rehearsal',
      seq: i + 1,
      after: null,
      recordedAtMs: told.atMs,
      bootId: 'b',
      monoMs: 0,
      tzOffsetMin: 0,
      crc: '',
      ...told
    }))
    expect(fold(entries)).toEqual(done.state)
  })
})
