import * as z from 'zod/mini'
import { timesMost } from '../../source/limits.ts'
import { sequence } from '../fields.ts'
import { constructFields, countOrInput } from './shared.ts'

const itemName = z
  .string({ error: 'write a name such as J1' })
  .check(z.regex(/^[\p{L}\p{N}][\p{L}\p{N} _-]{0,39}$/u))
  .register(z.globalRegistry, { description: 'Its name. For example: J1' })

const items = z.union(
  [
    z.array(z.union([itemName, z.int().check(z.gte(0), z.lte(999))])).check(z.maxLength(timesMost)),
    z.strictObject({
      from: countOrInput(timesMost, 'The first. For example: 1'),
      to: countOrInput(timesMost, 'The last. For example: 5')
    })
  ],
  { error: 'write {from: 1, to: 5}, or a list such as [J1, J2, J3]' }
)
z.globalRegistry.add(items, { description: 'Which ones: counted, or named one by one. For example: {from: 1, to: 5}' })

export const forEach = z.strictObject({
  ...constructFields,
  band: z.optional(items),
  jar: z.optional(items),
  skein: z.optional(items),
  colour: z.optional(items),
  item: z.optional(items),
  steps: sequence('What is done for each of them. For example: [do: Stir the bath]')
})
