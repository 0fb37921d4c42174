// Every built-in protocol against its times added up by hand, through the real engine.
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { alarmBudget, SOUNDS_AN_HOUR_MOST } from '../../src/core/pot/alarm-budget.ts'
import { programmeOf } from '../../src/core/protocol/programme.ts'
import { stepAt } from '../../src/core/protocol/tree.ts'
import { type Rehearsal, rehearse } from '../../src/session/rehearsal.ts'
import { identity, T0 } from '../core/pot/given.ts'
import { inputs, minuteMs, protocolFrom } from '../core/protocol/made.ts'
import { builtInTimes } from './built-in-times.ts'

/** A clock is exact. A thermometer shows tenths and is read again a minute or so later where it is short of its mark.
 * Own measure. */
const byClockMin = 0.05
const byThermometerMin = 1.5
/** Over the whole protocol: two such readings. */
const wholeMin = 2

const files = readdirSync(new URL('../../protocols/', import.meta.url)).filter((name) => name.endsWith('.yaml'))
const textOf = (file: string): string => readFileSync(new URL(`../../protocols/${file}`, import.meta.url), 'utf8')

/** Started as it stands: 100 g, no answer typed, the bottles of the file. */
function rehearsed(file: string): Rehearsal {
  const text = textOf(file)
  const made = programmeOf(protocolFrom(text), inputs())
  if (!made.ok) throw new Error(`${file} can't be started: ${made.problems.map(({ what }) => what).join(' ')}`)
  return rehearse(made.programme, identity(), { title: file, text, version: '1', from: 'built-in' }, T0)
}

/** When a step was closed first, minutes after the start. */
function closedAtMin({ told }: Rehearsal, path: string): number {
  const found = told.find(({ event }) => event.type === 'StepClosed' && event.path === path)
  if (!found) throw new Error(`${path} was never closed`)
  return (found.atMs - T0) / minuteMs
}

function readsThermometer({ told }: Rehearsal, path: string): boolean {
  const started = told.find(({ event }) => event.type === 'PotStarted')?.event
  const step = started?.type === 'PotStarted' ? stepAt(started.programme, path) : null
  return Boolean(step?.ramp || step?.wait?.until.some(({ kind }) => kind === 'temperature'))
}

it('there are built-in protocols for every technique, and each has its times written down', () => {
  expect(Object.keys(builtInTimes).sort()).toEqual([...files].sort())
  expect(files.length).toBeGreaterThanOrEqual(28)
})

describe.each(Object.entries(builtInTimes))('%s', (file, pieces) => {
  const done = rehearsed(file)

  it('starts with its defaults and comes to its end with nobody stuck', () => {
    expect(done.told[0]?.event.type).toBe('PotStarted')
    expect([done.stuck, done.state.status]).toEqual([null, 'complete'])
  })

  it('takes the times added up by hand, piece by piece and as a whole', () => {
    const off: string[] = []
    let expectedMin = 0
    let lastMin = 0
    for (const [minutes, path, why] of pieces) {
      expectedMin += minutes
      const atMin = closedAtMin(done, path)
      const tolerance = readsThermometer(done, path) ? byThermometerMin : byClockMin
      if (Math.abs(atMin - lastMin - minutes) > tolerance || Math.abs(atMin - expectedMin) > wholeMin) {
        const took = (atMin - lastMin).toFixed(2)
        off.push(
          `${path} took ${took} min, by hand ${minutes}; over at ${atMin.toFixed(2)}, by hand ${expectedMin}: ${why}`
        )
      }
      lastMin = atMin
    }
    expect(off).toEqual([])
    expect(Math.abs((done.endedAfterMs ?? 0) / minuteMs - expectedMin)).toBeLessThanOrEqual(wholeMin)
  })

  // No technique makes more sounds unavoidable: bands and portions in a row are beats for hands that are there already.
  it(`keeps within ${SOUNDS_AN_HOUR_MOST} sounds an hour`, () => {
    const { sounds, mostAnHour } = alarmBudget(done.told)
    expect(sounds).toBeGreaterThan(0)
    expect(mostAnHour).toBeLessThanOrEqual(SOUNDS_AN_HOUR_MOST)
  })

  it('says when and on what to use it, what goes wrong, that it is invented, and what lateness does', () => {
    const { use, trouble, about, demo } = protocolFrom(textOf(file))
    expect([use, trouble, about].map((text) => (text ?? '').length > 30)).toEqual([true, true, true])
    // For which goods: what is right for wool harms cotton, and the other way about.
    expect(use).toMatch(/wool|silk|cotton|linen|cellulose/)
    expect(demo).toBe(true)
    expect(textOf(file)).toMatch(/^late: (shift|absorb|off-protocol)$/m)
    expect(textOf(file)).toMatch(/^# .*invented for the demo/ms)
  })
})
