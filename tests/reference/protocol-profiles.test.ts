// Times of the built-in protocols against published profiles.
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { coolingMin, usualCoolingPerMin } from '../../src/core/protocol/cooling.ts'
import type { Step } from '../../src/core/protocol/model.ts'
import { stepsOf } from '../../src/core/protocol/tree.ts'
import { minuteMs, programmeFrom } from '../core/protocol/made.ts'

const builtIn = (name: string) =>
  programmeFrom(readFileSync(new URL(`../../protocols/${name}`, import.meta.url), 'utf8'))

const span = (steps: Step[], from: string, to: string): number => {
  const paths = steps.map((step) => step.path)
  const between = steps.slice(paths.indexOf(from), paths.indexOf(to) + 1)
  expect(between.length).toBeGreaterThan(1)
  return between.reduce((sum, step) => sum + step.clock.likelyMs, 0) / minuteMs
}

describe('the exhaust profile', () => {
  // Published exhaust dyeing of wool with C.I. Acid Red 1, Yellow 17 and Blue 45: 10 min at 23 °C, 1 °C/min to 60 °C,
  // 10 min, 1 °C/min to 90 °C, 30 min, cooled to 80 °C; 3 % owf, liquor ratio 30:1 (reprint of a journal method).
  const programme = builtIn('lab-dip-exhaust.yaml')
  const steps = stepsOf(programme)
  const at = (path: string) => steps.find((step) => step.path === path)

  it('ends its heat 117 minutes after the goods are in, to the minute', () => {
    // 10 + 37 + 10 + 30 + 30; the two acts at the ring are seconds.
    expect(Math.floor(span(steps, 'cold', 'at-90'))).toBe(117)
    expect(steps.map((step) => step.path).indexOf('heat')).toBe(steps.map((step) => step.path).indexOf('at-90') + 1)
  })

  it('rises at 1 °C/min from 23 to 60 °C and from 60 to 90 °C', () => {
    expect(at('rise-60')?.ramp).toMatchObject({ expectedFromC: 23, lowC: 60, cPerMin: 1 })
    expect(at('rise-60')?.clock.likelyMs).toBe(37 * minuteMs)
    expect(at('rise-90')?.ramp).toMatchObject({ expectedFromC: 60, lowC: 90, cPerMin: 1 })
    expect(at('rise-90')?.clock.likelyMs).toBe(30 * minuteMs)
  })

  it('takes 3 % owf at a liquor ratio of 30:1, and cools to 80 °C', () => {
    expect(programme.liquorRatio).toBe(30)
    // 3 g of dye for 100 g at 1 % w/v.
    expect(programme.setOut.find((one) => one.id === 'dye')?.amount).toMatchObject({ value: 300, unit: 'mL' })
    expect(at('cool')?.wait?.until).toEqual([{ kind: 'temperature', lowC: null, highC: 80, going: 'down' }])
  })
})

describe('the levelling profile', () => {
  // Broadbent, Basic Principles of Textile Coloration, SDC 2001, Fig. 13.2, p. 244: levelling acid dyes on wool, from
  // 40-50 °C to the boil in about 45 min, about 60 min at the boil.
  const programme = programmeFrom(`strandline: 1
title: Levelling dyes
start: 50 °C
steps:
  - fill: {liquor: 30:1, at: 50 °C}
  - enter
  - heat: {id: rise, to: the boil, rate: 1.1 °C/min}
  - hold: {id: boil, for: 60 min, at: the boil}
  - heat: off
  - cool: {until: 50 °C}
`)

  it('reaches the boil in about 45 minutes and holds it for about 60', () => {
    const steps = stepsOf(programme)
    const of = (path: string) => (steps.find((step) => step.path === path)?.clock.likelyMs ?? 0) / minuteMs
    // "About": the figure is read off a curve to about 3 min.
    expect(Math.abs(of('rise') - 45)).toBeLessThanOrEqual(3)
    expect(of('boil')).toBe(60)
  })
})

describe('cooling by Newton', () => {
  // Computed: 95 °C to 80 °C in 20 min in a room of 20 °C gives k = ln(75/60)/20 = 0.0112 a minute, and 40 °C after
  // 118 min. No published curve of a dye pot was found.
  it('has the constant of the worked example, and reaches 40 °C at its 118 minutes', () => {
    expect(usualCoolingPerMin).toBeCloseTo(Math.log(75 / 60) / 20, 4)
    expect(coolingMin(95, 80, 20, usualCoolingPerMin)).toBeCloseTo(20, 0)
    expect(Math.round(coolingMin(95, 40, 20, usualCoolingPerMin) ?? 0)).toBe(118)
  })

  it('never gets below the room, and takes no time for what is reached', () => {
    expect(coolingMin(95, 20, 20, usualCoolingPerMin)).toBeNull()
    expect(coolingMin(95, 15, 20, usualCoolingPerMin)).toBeNull()
    expect(coolingMin(40, 60, 20, usualCoolingPerMin)).toBe(0)
  })

  it('agrees with Newton cooling computed from the definition', () => {
    // 90 °C to 40 °C at 20 °C with a time constant of 60 min: 60 ln(70/20) = 75.16577811 min.
    expect(coolingMin(90, 40, 20, 1 / 60)).toBeCloseTo(75.16577811, 6)
  })
})
