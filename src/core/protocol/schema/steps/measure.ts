import * as z from 'zod/mini'
import { asking } from '../../draft.ts'
import { capital } from '../../words.ts'
import { line } from '../fields.ts'
import { stepKind } from '../step-kind.ts'

export const measure = stepKind({
  word: 'measure',
  behaviour: 'ask',
  about: 'Asks for a number: a weight, a level, a pH, a temperature.',
  short: 'what',
  fields: {
    what: line(40, 'What is measured: temperature, pH, wet mass, level. For example: wet mass'),
    unit: z.optional(line(10, 'Its unit. For example: g')),
    least: z.optional(
      z
        .number({ error: 'write a number' })
        .register(z.globalRegistry, { description: 'The lowest that is likely. For example: 1' })
    ),
    most: z.optional(
      z
        .number({ error: 'write a number' })
        .register(z.globalRegistry, { description: 'The highest that is likely. For example: 50' })
    )
  },
  draft: (fields, r) => {
    const what = r.text(fields.what, ['what'])
    const low = fields.least ?? null
    const high = fields.most ?? null
    if (low !== null && high !== null && low > high) {
      r.say(['least'], 'least-over-most', 'least lies above most.', 'swap the two')
    }
    const kind = what.trim().toLowerCase()
    const words = { call: `Measure ${what}`, knot: kind === 'ph' ? 'pH' : capital(what), done: 'measured' }
    if (kind === 'temperature') return [asking(words, { kind, lowC: low, highC: high }, [10, 20, 60])]
    if (kind === 'ph') return [asking(words, { kind, low, high }, [30, 60, 120])]
    const unit = r.textOr(fields.unit, ['unit'], '')
    return [asking(words, { kind: 'number', ask: capital(what), unit, low, high }, [20, 60, 120])]
  }
})
