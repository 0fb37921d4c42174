import * as z from 'zod/mini'
import { act, type Draft, type RangeDraft } from '../../draft.ts'
import type { Reading } from '../../reading.ts'
import { capital, rangeWords } from '../../words.ts'
import { line, quantity } from '../fields.ts'
import { stepKind } from '../step-kind.ts'

/** A low ring under a few litres, where the writer gives no rate. Common practice, no source. */
const usualCPerMin = 2

export const heat = stepKind({
  word: 'heat',
  behaviour: 'ramp',
  about: 'Heats the bath to a temperature, or turns the heat off.',
  short: 'to',
  fields: {
    to: quantity('80..85 °C', 'The temperature to reach, the boil, or off.'),
    rate: z.optional(quantity('1 °C/min', `How fast it rises. Without it, ${usualCPerMin} °C/min is expected.`)),
    with: z.optional(line(24, 'What heats, if not the ring under the pot. For example: the oven'))
  },
  draft: (fields, r) => {
    const source = fields.with === undefined ? null : r.text(fields.with, ['with'])
    if (String(fields.to).trim().toLowerCase() === 'off') {
      const off = source === null ? 'heat' : source
      const words = { call: `${capital(off)} off`, done: `${off} is off`, knot: 'Heat off' }
      return [act(words, [3, 8, 20], { shape: 'wave', heat: 'off' })]
    }
    const range = r.range(fields.to, ['to'])
    const rate = fields.rate === undefined ? usualCPerMin : (r.rate(fields.rate, ['rate'])?.cPerMin ?? usualCPerMin)
    return range ? heatUp(range, rate, fields.rate !== undefined, source, r) : []
  }
})

/** Turning the ring up is an act of its own: a hold before it ends by the clock, with nobody at the stove. */
function heatUp(range: RangeDraft, cPerMin: number, said: boolean, source: string | null, r: Reading): Draft[] {
  const to = targetWords(range, r)
  const up =
    source === null
      ? { call: `Heat up to ${to}`, done: 'ring is up' }
      : { call: `${capital(source)} on, to ${to}`, done: `${source} is on` }
  return [
    act({ ...up, knot: 'Heat up' }, [3, 8, 20], {
      suffix: '-up',
      shape: 'wave',
      detail: said ? `at ${Math.round(cPerMin * 100) / 100} °C/min` : null
    }),
    {
      ...act({ call: 'Read the temperature', done: 'reached', knot: to }, [8, 15, 40], { shape: 'wave', heat: 'on' }),
      behaviour: 'ramp',
      doing: source === null ? `Heating to ${to}` : `Heating to ${to}, ${source} on`,
      ramp: { range, cPerMin }
    }
  ]
}

function targetWords({ lowC, highC, boil }: RangeDraft, r: Reading): string {
  const low = lowC ?? highC
  if (boil || low === null || low >= r.scope.boilC) return 'the boil'
  const high = highC === null || highC === low ? null : Math.min(highC, r.scope.boilC)
  return rangeWords({ lowC: low, highC: high ?? low, boil: false })
}
