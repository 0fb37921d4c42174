import * as z from 'zod/mini'
import { waiting } from '../../draft.ts'
import { quantity } from '../fields.ts'
import { stepKind } from '../step-kind.ts'
import { readWait, waitFields } from '../wait-fields.ts'

export const cool = stepKind({
  word: 'cool',
  behaviour: 'wait',
  about: 'Lets the bath cool with the heat off.',
  short: 'until',
  fields: {
    ...waitFields,
    rate: z.optional(quantity('2 °C/min', 'How fast cold water cools it. Without it, the bath cools by itself.')),
    'look every': z.optional(quantity('30 min', 'How often to look at it.'))
  },
  draft: (fields, r) => {
    const rate = fields.rate === undefined ? null : r.rate(fields.rate, ['rate'])
    const wait = { ...readWait(fields, r, true), ...(rate && { coolCPerMin: rate.cPerMin }) }
    const target = wait.until.find((until) => until.kind === 'temperature')
    const to = target?.kind === 'temperature' ? `${Math.round((target.highC ?? target.lowC ?? 0) * 10) / 10} °C` : null
    const call = to === null ? 'Cooled?' : 'Read the temperature'
    const words = { call, doing: to === null ? 'Cooling' : `Cooling to ${to}`, done: 'cool', knot: to ?? 'Cool' }
    const detail = rate ? `at ${Math.round(rate.cPerMin * 100) / 100} °C/min, cold water at the wall` : null
    const look = r.ms(fields['look every'], ['look every'])
    const away = fields.away === true
    // An overnight cooling lies on the bench: it must not keep a screen awake. Running cold water in wants hands.
    return [waiting(words, wait, { shape: 'wave', bench: rate === null, away, lookEveryMs: look, detail })]
  }
})
