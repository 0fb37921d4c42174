import * as z from 'zod/mini'
import { act, type DoseDraft, type Draft } from '../../draft.ts'
import { type Reading, water } from '../../reading.ts'
import { type AsWritten, line, quantity } from '../fields.ts'
import { stepKind } from '../step-kind.ts'

export const fill = stepKind({
  word: 'fill',
  behaviour: 'dose',
  about: 'Fills a vessel with water: the bath, a jar, a rinse.',
  short: 'liquor',
  fields: {
    liquor: z.optional(quantity('20:1', 'A liquor ratio or a volume; without it, that of the header.')),
    to: z.optional(line(40, 'The vessel, if not the pot. For example: the sour vessel')),
    at: z.optional(quantity('40 °C', 'How warm the water is.'))
  },
  draft: (fields, r): Draft[] => {
    const into = fields.to === undefined ? null : r.text(fields.to, ['to'])
    const dose = waterFor(fields.liquor, into, r)
    if (fields.at !== undefined && dose) dose.atC = r.tempC(fields.at, ['at'])
    const what = into ?? 'the bath'
    return [act({ call: `Fill ${what}`, done: 'filled', knot: 'Fill' }, [60, 180, 480], { behaviour: 'dose', dose })]
  }
})

/** Without an amount of its own a fill takes the header's liquor ratio, which the programme knows. */
function waterFor(liquor: AsWritten | undefined, into: string | null, r: Reading): DoseDraft | null {
  const rest = { material: water, into, fills: true, atC: null }
  if (liquor === undefined) {
    if (r.scope.liquorRatio !== null) {
      const ratio = r.scope.liquorRatio
      return { amount: { kind: 'liquor', ratio, asEntered: `${ratio}:1`, approx: false }, ...rest }
    }
    r.say([], 'liquor-missing', 'How much liquor?', 'write fill: 20:1, fill: 2 L, or liquor: 20:1 in the header')
    return null
  }
  const instead = 'write 20:1 or 2 L'
  const amount = r.amount(liquor, ['liquor'], instead)
  if (!amount) return null
  if (amount.kind !== 'liquor' && amount.kind !== 'volume') {
    r.say(['liquor'], 'not-a-volume', `"${amount.asEntered}" is no amount of liquor.`, instead)
    return null
  }
  return { amount, ...rest }
}
