import { describe, expect, it } from 'vitest'
import type { Step } from '../../../src/core/protocol/model.ts'
import { inFull } from '../../../src/core/safety/caution.ts'
import { cautionsFor } from '../../../src/core/safety/cautions-for.ts'
import type { CautionContext } from '../../../src/core/safety/hazard.ts'
import { general, rules } from '../../../src/core/safety/rules.ts'
import { minuteMs, someDose, someStep } from './some-step.ts'

const cold: CautionContext = { bathTempC: 20, heatOn: false, strengthPercent: null }
const ids = (step: Step, context: CautionContext): string[] => cautionsFor(step, context).map((c) => c.id)
const acid = (of: string): Step => someStep({ word: 'add', behaviour: 'dose', dose: someDose(of) })

describe('heat and hands', () => {
  it('warns of hot liquor from 60 °C on, not below', () => {
    const turn = someStep({ word: 'turn' })
    expect(ids(turn, { ...cold, bathTempC: 60 })).toContain('hot-liquor')
    expect(ids(turn, { ...cold, bathTempC: 59 })).not.toContain('hot-liquor')
  })

  it('takes a heated bath nobody has read for a hot one', () => {
    expect(ids(someStep({ word: 'enter' }), { ...cold, bathTempC: null, heatOn: true })).toContain('hot-liquor')
    expect(ids(someStep({ word: 'enter' }), { ...cold, bathTempC: null })).not.toContain('hot-liquor')
  })

  it('speaks of the lift, not of the reach, where yarn leaves a hot bath', () => {
    const found = ids(someStep({ word: 'lift', yarn: 'out' }), { ...cold, bathTempC: 85 })
    expect(found).toContain('hot-lift')
    expect(found).not.toContain('hot-liquor')
  })

  it('tells to stay by the pot on every wait with the heat on, and never on heat off', () => {
    const hold = someStep({ word: 'hold', wait: { forMs: minuteMs, leastMs: 0, graceMs: 0, from: null, until: [] } })
    expect(ids(hold, { ...cold, heatOn: true })).toContain('heat-on')
    expect(ids(someStep({ word: 'heat', heat: 'on' }), cold)).toContain('heat-on')
    const off = ids(someStep({ word: 'heat', heat: 'off' }), { ...cold, heatOn: true })
    expect(off).toContain('heat-off')
    expect(off).not.toContain('heat-on')
  })

  it('knows a cool-down only with the heat off; with it on the caution is to stay', () => {
    const cool = someStep({ word: 'cool', wait: { forMs: minuteMs, leastMs: 0, graceMs: null, from: null, until: [] } })
    expect(ids(cool, cold)).toContain('cooling')
    expect(ids(cool, { ...cold, heatOn: true })).not.toContain('cooling')
    expect(ids(cool, { ...cold, heatOn: true })).toContain('heat-on')
  })
})

describe('acids', () => {
  it.each([
    [5, 'acid-mild'],
    [9.9, 'acid-mild'],
    [10, 'acid-irritant'],
    [25, 'acid-corrosive'],
    [80, 'acid-corrosive'],
    [90, 'acid-severe'],
    [null, 'acid-unknown']
  ])('acetic acid of %s %% calls for %s', (strengthPercent, id) => {
    const found = ids(acid('acetic acid'), { ...cold, strengthPercent })
    expect(found.filter((f) => /^acid-(mild|irritant|corrosive|severe|unknown)$/.test(f))).toEqual([id])
  })

  it('keeps a mild acid over a hot bath to the vapour', () => {
    const found = ids(acid('vinegar'), { bathTempC: 85, heatOn: true, strengthPercent: 5 })
    expect(found[0]).toBe('acid-vapour')
    expect(found).not.toContain('acid-mild')
  })

  it('puts a concentrate before the vapour', () => {
    expect(ids(acid('vinegar'), { bathTempC: 85, heatOn: true, strengthPercent: 95 }).slice(0, 2)).toEqual([
      'acid-severe',
      'acid-vapour'
    ])
  })

  it('tells citric dust from citric in solution', () => {
    const dust = someStep({ word: 'add', dose: someDose('citric acid', 2, 'g') })
    expect(ids(dust, cold)).toEqual(expect.arrayContaining(['citric-dust', 'powder']))
    expect(ids(acid('citric acid'), cold)).toContain('citric')
    expect(ids(acid('citric acid'), cold)).not.toContain('citric-dust')
  })

  it('knows an acid by its kind when the name does not say', () => {
    expect(ids(acid('cup A'), { ...cold, kind: 'acid', strengthPercent: 5 })).toContain('acid-mild')
    expect(ids(acid('cup A'), { ...cold, kind: 'stock', strengthPercent: 1 })).toEqual([])
  })

  it('does not take an acid dye for an acid', () => {
    expect(ids(acid('C.I. Acid Red 1'), { ...cold, kind: 'stock', strengthPercent: 1 })).toEqual([])
  })

  it('says never with bleach at every acid', () => {
    expect(ids(acid('vinegar'), cold)).toContain('acid-and-bleach')
    expect(ids(acid('bleach'), cold)).toContain('acid-and-bleach')
  })
})

describe('other hazards', () => {
  it.each([
    ['hydros', someStep({ word: 'add', dose: someDose('hydros', 5, 'g') })],
    ['hydros-and-acid', someStep({ word: 'add', dose: someDose('hydros', 5, 'g') })],
    ['hydros-and-acid', someStep({ word: 'add', call: 'Acid into the vat', dose: someDose('vinegar') })],
    ['alkali', someStep({ word: 'add', dose: someDose('soda ash', 5, 'g') })],
    ['mordant', someStep({ word: 'add', dose: someDose('alum', 5, 'g') })],
    ['powder', someStep({ word: 'do', call: 'Weigh out the powder' })],
    ['steam', someStep({ word: 'hold', call: 'Steam, lid on' })],
    ['microwave', someStep({ word: 'do', call: 'Microwave 2 min' })],
    ['oven', someStep({ word: 'hold', detail: 'covered pan in the oven' })],
    ['disposal', someStep({ word: 'rinse' })],
    ['disposal', someStep({ word: 'do', call: 'Drop the bath' })]
  ])('%s is warned of where it is met', (id, step) => {
    expect(ids(step, cold)).toContain(id)
    expect(ids(someStep({ word: 'note' }), cold)).not.toContain(id)
  })

  it('forbids carrying a full hot pot, and adding to liquor at the boil', () => {
    expect(ids(someStep({ word: 'transfer' }), { ...cold, bathTempC: 80 })).toContain('carry')
    expect(ids(acid('salt'), { ...cold, bathTempC: 98, kind: 'other' })).toContain('superheated')
    expect(ids(acid('salt'), { ...cold, bathTempC: 90, kind: 'other' })).not.toContain('superheated')
  })

  it('adds the cautions of the protocol in its own words', () => {
    const [own] = cautionsFor(someStep({ cautions: ['Mind the cord.'] }), cold)
    expect(own).toMatchObject({ say: 'Mind the cord.', source: 'the protocol' })
  })
})

describe('the table', () => {
  it('has one of each, each with a source, a title, a text and a shorter line', () => {
    const all = [...rules, ...general]
    expect(new Set(all.map((r) => r.id)).size).toBe(all.length)
    for (const rule of all) {
      expect(rule.source, rule.id).not.toBe('')
      expect(rule.short.length, rule.id).toBeLessThan(rule.say.length)
      expect(rule.short.length, rule.id).toBeLessThanOrEqual(90)
      expect(rule.say + rule.title + rule.short, rule.id).not.toMatch(/!/)
    }
  })

  it('names every temperature in °F too, for a caution knows no dyer', () => {
    // 60 · 1.8 + 32 = 140, and 39 · 1.8 + 32 = 102.2.
    const texts = [...rules, ...general].flatMap(({ say, short }) => [say, short])
    const told = texts.flatMap((text) => text.match(/\d+ °C(?: \(\d+ °F\))?/g) ?? [])
    expect([...new Set(told)].sort()).toEqual(['39 °C (102 °F)', '60 °C (140 °F)'])
  })

  it('shows a caution in full once a day, then as one line', () => {
    const turn = someStep({ word: 'turn' })
    const hot = { ...cold, bathTempC: 80 }
    const [full] = cautionsFor(turn, hot)
    const [again] = cautionsFor(turn, { ...hot, firstOfDay: false })
    expect(again?.say).toBe(full?.short)
    expect(inFull(full as NonNullable<typeof full>, [])).toBe(true)
    expect(inFull(full as NonNullable<typeof full>, ['steam', 'hot-liquor'])).toBe(false)
  })
})
