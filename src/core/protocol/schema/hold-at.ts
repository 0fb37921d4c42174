// A temperature to keep to: its tolerance, and what a reading outside it means.
import * as z from 'zod/mini'
import type { Draft } from '../draft.ts'
import type { OutsideRule } from '../model.ts'
import type { Reading } from '../reading.ts'
import { type AsWritten, oneOf, quantity } from './fields.ts'

const outsideRules = ['note', 'again', 'stop-count', 'off-protocol'] as const satisfies readonly OutsideRule[]

/** How far from a bare temperature is still at it: a kitchen thermometer's error. Common practice, no source. */
export const toleranceC = 3

export const holdAtFields = {
  at: z.optional(quantity('85..90 °C', `The temperature to keep to. A bare one has a tolerance of ${toleranceC} °C.`)),
  outside: z.optional(
    oneOf(
      outsideRules,
      'What a reading outside means: it is noted, asked again, the count stops, or the batch is marked.'
    )
  )
} as const

type HoldAt = { at?: AsWritten | undefined; outside?: OutsideRule | undefined }

export function setPointOf(fields: HoldAt, r: Reading): Draft['setPoint'] {
  if (fields.at === undefined) return null
  const range = r.range(fields.at, ['at'])
  if (!range) return null
  const bare = range.lowC !== null && range.lowC === range.highC
  const wide = bare ? { ...range, lowC: (range.lowC ?? 0) - toleranceC, highC: (range.highC ?? 0) + toleranceC } : range
  return { range: wide, outside: fields.outside ?? 'note', aimC: bare ? range.lowC : null }
}
