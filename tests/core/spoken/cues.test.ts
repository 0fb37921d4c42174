import { describe, expect, it } from 'vitest'
import { metricUnits } from '../../../src/core/quantity/index.ts'
import { cuesOf } from '../../../src/core/spoken/cues.ts'
import { Bench, T0 } from '../pot/given.ts'
import { act, alongside, dose, MIN, programme, wait } from '../pot/programmes.ts'
import { cuesSaid, rehearsed } from './built-ins.ts'

const cues = (bench: Bench, nowMs = bench.nowMs) => cuesOf(bench.state, nowMs, metricUnits)
const says = (bench: Bench, nowMs?: number): string[] => cues(bench, nowMs).map(({ say }) => say)
const lift = act('lift', { word: 'lift', call: 'Lift to the rod' })

describe('the count down to an act', () => {
  it('is a notice ten seconds ahead and a count whose last word falls on the moment', () => {
    const bench = Bench.start(programme([wait('hold', 6 * MIN), lift]))
    bench.pass(5.2)
    expect(cues(bench)).toMatchObject([
      { say: 'Moss. Lift in ten.', atMs: T0 + 6 * MIN - 10_000, urgency: 'soon', calls: null },
      { say: 'Three. Two. One. Lift.', atMs: T0 + 6 * MIN - 2_400, urgency: 'now', pot: 'Moss', calls: 'lift' }
    ])
  })

  it('is looked for within a minute of the moment, and its keys stay the same', () => {
    const bench = Bench.start(programme([wait('hold', 6 * MIN), lift]))
    expect(cues(bench)).toEqual([])
    const keys = (nowMs: number): string[] => cues(bench, T0 + nowMs).map(({ key }) => key)
    expect(new Set([5.1 * MIN, 5.9 * MIN, 6 * MIN + 500].map((at) => keys(at).join())).size).toBe(1)
    expect(new Set(keys(5.5 * MIN)).size).toBe(2)
  })

  it('names a band by its number and how many there are', () => {
    const all = cuesSaid(rehearsed('dip-gradient.yaml', { bands: '6' }), metricUnits)
    expect(all.map(({ say }) => say)).toEqual([
      ...['Plum. Acid one in ten. Eight millilitres.', 'Three. Two. One. Acid one.'],
      ...['two', 'three', 'four', 'five', 'six'].flatMap((band) => [
        `Plum. Band ${band} of six. Lower in ten.`,
        'Three. Two. One. Lower.'
      ]),
      ...['Plum. Lift in ten.', 'Three. Two. One. Lift.'],
      ...['Plum. Lift in ten.', 'Three. Two. One. Lift.']
    ])
  })

  it('says an amount ahead, and leaves it to the call to say it again at the act', () => {
    const bench = Bench.start(
      programme([wait('hold', MIN), dose('a', 8, 'vinegar', { call: 'Acid 2 in', knot: 'Acid 2' })])
    )
    expect(cues(bench)).toMatchObject([
      { say: 'Moss. Acid two in ten. Eight millilitres of vinegar.', calls: null },
      { say: 'Three. Two. One. Acid two.', calls: null }
    ])
  })

  it('ends in "now" where the act is a sentence, and then the call is still to be said', () => {
    const bench = Bench.start(programme([wait('hold', MIN), act('a', { call: 'Press it in and wrap it' })]))
    expect(cues(bench)).toMatchObject([
      { say: 'Moss. Press it in and wrap it in ten.' },
      { say: 'Three. Two. One. Now.', calls: null }
    ])
  })

  it('has no notice in a wait that has only just begun', () => {
    expect(says(Bench.start(programme([wait('hold', 14_000), lift])))).toEqual(['Three. Two. One. Lift.'])
    expect(says(Bench.start(programme([wait('hold', 2_000), lift])))).toEqual([])
  })

  it('is not for a stir, not for a held pot, not for a question, and not where another branch is still to come', () => {
    expect(says(Bench.start(programme([wait('hold', MIN), act('stir', { soft: true })])))).toEqual([])
    const question = act('look', { behaviour: 'ask', question: { kind: 'text', ask: 'How is it?' } })
    expect(says(Bench.start(programme([wait('hold', MIN), question])))).toEqual([])
    const held = Bench.start(programme([wait('hold', MIN), lift]))
    held.do({ type: 'Hold', reason: null })
    expect(says(held)).toEqual([])
    const forked = Bench.start(
      programme([alongside('both', { yarn: [wait('soak', MIN)], bath: [wait('boil', 30 * MIN)] }), lift])
    )
    expect(says(forked)).toEqual([])
  })
})
