import * as z from 'zod/mini'
import { act } from '../../draft.ts'
import { readDepthTo } from '../depth-in-step.ts'
import { line, quantity } from '../fields.ts'
import { stepKind } from '../step-kind.ts'

export const lift = stepKind({
  word: 'lift',
  behaviour: 'act',
  about: 'Lifts the goods out of the bath, or out by one band of a loop.',
  short: 'to',
  fields: {
    to: z.optional(line(40, 'Where to, or the loop around it: band. For example: rod over the pot')),
    'out of bath': z.optional(quantity('at most 3 min', 'The longest the goods may stay out.'))
  },
  draft: (fields, r) => {
    const to = fields.to === undefined ? 'the rod' : r.text(fields.to, ['to'])
    const loop = r.scope.loops.findLast(({ name }) => name === to.trim())
    const band = loop ? readDepthTo(to, ['to'], undefined, r) : null
    const hands = [15, 30, 90] as const
    if (loop && band) {
      const fraction = 1 - band.depth.fraction
      const label = `${loop.count - loop.index} of ${loop.count} left in`
      const words = { call: `Lift ${loop.name} ${loop.item}`, done: 'lifted', knot: `${loop.name} ${loop.item}` }
      return [act(words, hands, { shape: 'band', yarn: fraction > 0 ? 'in' : 'out', depth: { fraction, label } })]
    }
    const outOfBathMostMs = r.ms(fields['out of bath'], ['out of bath'])
    const words = { call: `Lift to ${to}`, done: 'lifted', knot: 'Lift' }
    return [act(words, hands, { shape: 'bar', yarn: 'out', outOfBathMostMs })]
  }
})
