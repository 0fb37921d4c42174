import { describe, expect, it } from 'vitest'
import { rehearse } from '../../src/session/rehearsal.ts'
import { identity, T0 } from '../core/pot/given.ts'
import { withSteps } from '../core/protocol/broken-files.ts'
import { minuteMs, programmeFrom, stepOf } from '../core/protocol/made.ts'

const protocol = { title: 'Test', text: '', version: 'v', from: 'file' as const }

const endsAfterMin = (steps: string): number => {
  const done = rehearse(programmeFrom(withSteps(steps, 'liquor: 20:1\nstart: 98 °C\n')), identity(), protocol, T0)
  if (done.stuck !== null) throw new Error(done.stuck)
  return (done.endedAfterMs ?? 0) / minuteMs
}

describe('a bath that is cooled with cold water', () => {
  it('falls at the rate that is written: 98 to 60 °C at 2 °C/min is 19 min, and not an hour', () => {
    // A thermometer a tenth short is read again a minute later.
    expect(endsAfterMin('- cool: {until: 60 °C, rate: 2 °C/min}')).toBeGreaterThanOrEqual(19)
    expect(endsAfterMin('- cool: {until: 60 °C, rate: 2 °C/min}')).toBeLessThanOrEqual(20.1)
    // By itself: ln(78/40)/0.0112 = 59.6 min.
    expect(endsAfterMin('- heat: 98 °C\n- heat: off\n- cool: 60 °C')).toBeGreaterThan(59)
  })

  it('is expected so by the programme, which knows how warm it is afterwards', () => {
    const programme = programmeFrom(
      withSteps(
        '- cool: {id: c, until: 60 °C, rate: 2 °C/min}\n- heat: {id: h, to: 80 °C, rate: 1 °C/min}\n- heat: off',
        'start: 98 °C\n'
      )
    )
    expect(stepOf(programme, 'c').clock.likelyMs).toBe(19 * minuteMs)
    expect(stepOf(programme, 'c').detail).toBe('at 2 °C/min, cold water at the wall')
    expect(stepOf(programme, 'c').bench).toBe(false)
    // A tenth is lost in the seconds of turning the ring up.
    expect(Math.abs((stepOf(programme, 'h').ramp?.expectedFromC ?? 0) - 60)).toBeLessThan(0.2)
  })
})

describe('a bath that is filled afresh', () => {
  it('is heated from the new water: 50 to 80 °C at 1 °C/min is 30 min though the old liquor was at 90 °C', () => {
    const steps =
      '- heat: {to: 90 °C, rate: 60 °C/h}\n- heat: off\n- fill: {at: 50 °C}\n- heat: {to: 80 °C, rate: 1 °C/min}\n- heat: off'
    const done = rehearse(programmeFrom(withSteps(steps, 'liquor: 20:1\nstart: 90 °C\n')), identity(), protocol, T0)
    const readings = done.told.filter(({ event }) => event.type === 'TemperatureRead')
    expect(readings.at(-1)?.atMs).toBeGreaterThanOrEqual(T0 + 30 * minuteMs)
    expect(readings.at(-1)?.event).toMatchObject({ tempC: 80 })
  })
})

describe('an oven', () => {
  it('is turned on and off by its name, and counts as heat', () => {
    const programme = programmeFrom(
      withSteps('- heat: {id: h, to: 85 °C, with: the oven}\n- heat: {id: o, to: off, with: the oven}')
    )
    expect(stepOf(programme, 'h-up')).toMatchObject({ call: 'The oven on, to 85 °C', done: 'the oven is on' })
    expect(stepOf(programme, 'h')).toMatchObject({ doing: 'Heating to 85 °C, the oven on', heat: 'on' })
    expect(stepOf(programme, 'o')).toMatchObject({ call: 'The oven off', done: 'the oven is off', heat: 'off' })
  })
})
