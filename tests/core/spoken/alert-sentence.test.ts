import { describe, expect, it } from 'vitest'
import { alertsDue } from '../../../src/core/pot/alerts-due.ts'
import type { PotState } from '../../../src/core/pot/state.ts'
import { metricUnits } from '../../../src/core/quantity/index.ts'
import { alertSentence } from '../../../src/core/spoken/alert-sentence.ts'
import { slowSeconds } from '../../../src/core/spoken/phrase.ts'
import { Bench, T0 } from '../pot/given.ts'
import { act, dose, MIN, programme, wait } from '../pot/programmes.ts'
import { alertsSaid, builtIns, cuesSaid, rehearsed, usUnits } from './built-ins.ts'
import { onlyWords } from './only-words.ts'

/** What the first alert says `afterMs` after the start. */
function said(bench: Bench, afterMs: number, manner: { guide?: boolean; again?: boolean } = {}): string {
  const [alert] = alertsDue(bench.state, T0 + afterMs)
  if (alert === undefined || bench.state.status !== 'running') throw new Error('nothing calls')
  return alertSentence(bench.state, alert, { units: metricUnits, guide: false, again: false, ...manner })
}

const named = (colourway: string): Bench => {
  const bench = Bench.start(programme([dose('a', 8, 'vinegar', { call: 'Acid 2 in', knot: 'Acid 2' })]))
  const { state } = bench
  if (state.status === 'idle') throw new Error('a pot of a test has a start')
  bench.state = { ...state, pot: { ...state.pot, colourway } } as PotState
  return bench
}

describe('an alert as it is said', () => {
  it('is pot, act, amount', () => {
    expect(said(named('Plum'), 0)).toBe('Plum. Acid two. Eight millilitres of vinegar.')
  })

  it('says how late it is, and once said in full it is short', () => {
    const late = 3 * MIN + 4_000
    expect(said(named('Plum'), late)).toBe('Plum. Late by three minutes. Acid two. Eight millilitres of vinegar.')
    expect(said(named('Plum'), late, { again: true })).toBe('Plum. Late by three minutes. Acid two.')
  })

  it('calls a pot by its colourway, and by its letter where that is no short word', () => {
    expect(said(named('Moss 2'), 0)).toMatch(/^Moss two\. /)
    expect(said(named('a very long name of a colour for a pot'), 0)).toMatch(/^Pot A\. /)
    expect(said(named('#'), 0)).toMatch(/^Number\. /)
    expect(said(named('…'), 0)).toMatch(/^Pot A\. /)
  })

  it('says a dyer’s own words as they were typed', () => {
    const bench = Bench.start(programme([act('a', { call: 'Tickle the heel, twice' })]))
    expect(said(bench, 0)).toBe('Moss. Tickle the heel, twice.')
  })

  it('never cuts an amount: what is too long to be heard out is on the screen', () => {
    const call = 'a b c d e f g h i j k l m n o p q r s t'
    expect(said(Bench.start(programme([dose('a', 8, 'white vinegar', { call })])), 0)).toBe(
      'Moss. A b c d e f g h i j k l m n o p q r s t. See the screen.'
    )
    const longer = `${call} u v w x y z`
    expect(said(Bench.start(programme([dose('a', 8, 'vinegar', { call: longer })])), 0)).toBe('Moss. See the screen.')
  })

  it('counts a skein out of the bath from its limit, not from the call before it', () => {
    const bench = Bench.start(
      programme([
        act('enter', { yarn: 'in' }),
        act('lift', { yarn: 'out', outOfBathMostMs: 3 * MIN }),
        wait('drip', 60 * MIN),
        act('in', { yarn: 'in' })
      ])
    )
    bench.do({ type: 'MarkDone', path: 'enter' })
    bench.do({ type: 'MarkDone', path: 'lift' })
    expect(said(bench, 2.9 * MIN)).toBe('Moss. Back into the bath.')
    expect(said(bench, 5 * MIN)).toBe('Moss. Late by two minutes. Back into the bath.')
  })
})

describe.each(builtIns)('the sentences of %s', (file) => {
  const moments = rehearsed(file)

  it('hold no figure and no sign, end within ten seconds of a slow voice, and begin with the pot', () => {
    let count = 0
    for (const units of [metricUnits, usUnits]) {
      const alerts = [true, false].flatMap((guide) => alertsSaid(moments, units, guide))
      for (const sentence of alerts) expect(sentence).toMatch(/^Plum\. [A-Z]/)
      for (const sentence of [...alerts, ...cuesSaid(moments, units).map(({ say }) => say)]) {
        expect(sentence).toMatch(onlyWords)
        expect(slowSeconds(sentence), sentence).toBeLessThan(10)
        expect(sentence.endsWith('.') || sentence.endsWith('?'), sentence).toBe(true)
        count++
      }
      expect(alerts.filter((sentence) => sentence.includes('See the screen'))).toEqual([])
    }
    expect(count).toBeGreaterThan(60)
  })
})

it('a dip gradient is said like this', () => {
  const moments = rehearsed('dip-gradient.yaml', { bands: '6' })
  const alerts = alertsSaid(moments, metricUnits, true)
  const calls = alertsSaid(moments, metricUnits, false)
  expect(alerts).toContain('Plum. Band three of six. Lower.')
  expect(calls).toContain('Plum. Lower band three.')
  expect(calls).toContain('Plum. Acid two. Eight millilitres.')
  expect(calls).toContain('Plum. Dye. Forty millilitres of mixed dye.')
  expect(calls).toContain('Plum. Fill the bath. Eight hundred millilitres of water.')
  expect(calls).toContain('Plum. Soon. Lower band two.')
  expect(calls).toContain('Plum. Heat up to eighty to eighty-five degrees.')
  expect(alertsSaid(moments, usUnits, false)).toContain('Plum. Heat up to eighty to eighty-five degrees Celsius.')
})
