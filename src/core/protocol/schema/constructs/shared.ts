import * as z from 'zod/mini'
import { type AsWritten, id, line, name, some } from '../fields.ts'

export const constructFields = {
  id: z.optional(id('Names it, and the moment at which it is over. For example: dip')),
  label: z.optional(line(40, 'What it is called on the screen. For example: Dip and air')),
  marks: z.optional(some(name('A moment. For example: all in'), 8, 'More names for the moment at which it is over.'))
} as const

/** A number, or the name of an input that gives it. */
export function countOrInput(most: number, description: string): z.ZodMiniType<AsWritten> {
  const error = `write a whole number from 1 to ${most}, or the name of an input`
  const named = z
    .string()
    .check(z.regex(/^[A-Za-z][A-Za-z0-9_-]{0,39}$/))
    .register(z.globalRegistry, { description: 'The name of an input that gives it. For example: bands' })
  const union = z.union([z.int().check(z.gte(1), z.lte(most)), named], { error })
  z.globalRegistry.add(union, { description })
  return union
}
