// The fields that every step may have.
import * as z from 'zod/mini'
import { flag, id, line, name, oneOf, quantity, some } from './fields.ts'
import { recordItems } from './record-items.ts'

export const lateRules = ['shift', 'absorb', 'off-protocol'] as const

export const sharedFields = {
  id: z.optional(id('Names the step, and the moment at which it is done. For example: A1')),
  marks: z.optional(
    some(name('A moment. For example: all in'), 8, 'More names for the moment at which the step is done.')
  ),
  late: z.optional(
    oneOf(lateRules, 'What lateness means: what follows shifts, the next wait absorbs it, or the batch is marked.')
  ),
  hands: z.optional(quantity('30 s', 'How long hands are needed.')),
  call: z.optional(line(60, 'The act as it is called out, in place of the usual words. For example: Dye in')),
  done: z.optional(line(40, 'The words on the pad that confirms it. For example: dye is in')),
  knot: z.optional(line(24, 'The label on the strand. For example: Dye')),
  detail: z.optional(line(160, 'One more line under the act. For example: to the fifth tie mark')),
  forbid: z.optional(some(line(40, 'An act. For example: stir'), 8, 'What is forbidden meanwhile.')),
  record: z.optional(
    some(oneOf(recordItems, 'A record.'), 8, 'What must be written down before the step can be closed.')
  ),
  caution: z.optional(
    some(line(200, 'A caution. For example: Keep the fan on'), 8, 'Cautions beyond those that come by themselves.')
  ),
  soft: z.optional(flag('A small act that is never called late.'))
} as const

export type SharedFields = z.output<ReturnType<typeof sharedObject>>

function sharedObject(): z.ZodMiniObject<typeof sharedFields> {
  return z.object(sharedFields)
}
