import * as z from 'zod/mini'
import { act, type Draft } from '../../draft.ts'
import { capital } from '../../words.ts'
import { type AsWritten, line, oneOf, quantity } from '../fields.ts'
import { readDose } from '../materials-in-step.ts'
import { stepKind } from '../step-kind.ts'

/** How long goods may rest on the rod for an addition, where the writer sets no limit. Common practice, no source. */
const onRodMostMs = 3 * 60_000
const whole = { fraction: 1, label: 'whole skein' }

const amounts = z
  .record(
    z.string().check(z.regex(/^[\p{L}\p{N}][\p{L}\p{N} _-]{0,39}$/u)),
    quantity('2 % owf', 'The amount for one item.')
  )
  .register(z.globalRegistry, {
    description: 'One amount for each item of the loop. For example: {J1: 2 % owf, J2: 1 % owf}'
  })

export const add = stepKind({
  word: 'add',
  behaviour: 'dose',
  about: 'Adds a measured amount of a stock, an acid, a powder or water.',
  short: 'amount',
  fields: {
    amount: z.optional(quantity('1/2 of acid', 'How much, and of what.')),
    amounts: z.optional(amounts),
    of: z.optional(line(40, 'The material, where the amount does not say it. For example: acid')),
    to: z.optional(line(40, 'The vessel, if not the pot. For example: the sour vessel')),
    yarn: z.optional(oneOf(['lifted'], 'lifted: the goods are lifted first, and entered again after a stir.')),
    'out of bath': z.optional(quantity('at most 3 min', 'The longest the goods may rest on the rod.'))
  },
  draft: (fields, r): Draft[] => {
    const dose = readDose(fields, r)
    const name = dose?.material.label ?? 'it'
    const call = dose?.into ? `${capital(name)} into ${dose.into}` : `${capital(name)} in`
    const lifted = fields.yarn === 'lifted'
    const adding = act({ call, done: `${name} is in`, knot: capital(name) }, [15, 40, 120], {
      behaviour: 'dose',
      shape: 'drop',
      dose,
      detail: lifted || dose?.into ? null : 'at the wall, away from the yarn',
      yarn: lifted ? 'lifted' : null
    })
    return lifted
      ? oneActAtATime(adding, r.ms(fields['out of bath'] as AsWritten | undefined, ['out of bath']))
      : [adding]
  }
})

/** One pair of hands can't hold a hot skein and pour: lift, add, stir and enter are four acts. */
function oneActAtATime(adding: Draft, mostMs: number | null): Draft[] {
  return [
    act({ call: 'Lift to the rod', done: 'lifted', knot: 'Lift' }, [15, 30, 90], {
      suffix: '-lift',
      shape: 'bar',
      yarn: 'out',
      outOfBathMostMs: mostMs ?? onRodMostMs
    }),
    adding,
    act({ call: 'Stir the bath', done: 'stirred', knot: 'Stir' }, [10, 20, 40], { suffix: '-stir', soft: true }),
    act({ call: 'Skein back in', done: 'back in', knot: 'Enter' }, [15, 30, 90], {
      suffix: '-enter',
      shape: 'bar',
      yarn: 'in',
      depth: whole
    })
  ]
}
