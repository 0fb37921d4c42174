// What a step word is: its fields, and what it makes of them. A new word is one file with one of these.
import * as z from 'zod/mini'
import type { Draft } from '../draft.ts'
import type { Behaviour, StepWord } from '../model.ts'
import type { Reading } from '../reading.ts'
import { type SharedFields, sharedFields } from './shared.ts'

type Shape = Record<string, z.ZodMiniType>

export type StepKind = {
  word: StepWord
  behaviour: Behaviour
  /** One line for the writer. */
  about: string
  /** The field that a bare value stands for (`hold: 6 min`); null: fields must be named. */
  short: string | null
  fields: Shape
  schema: z.ZodMiniType<Record<string, unknown>>
  /** The acts that the step is made of, in order. Problems go to the reading; the drafts are then incomplete. */
  draft(fields: Record<string, unknown>, reading: Reading): Draft[]
}

type Written<S extends Shape> = z.output<z.ZodMiniObject<S>> & SharedFields

/** Ties a word's schema to the type of the fields it drafts from. */
export function stepKind<S extends Shape>(kind: {
  word: StepWord
  behaviour: Behaviour
  about: string
  short: Extract<keyof S, string> | null
  fields: S
  draft: (fields: Written<S>, reading: Reading) => Draft[]
}): StepKind {
  const schema = z.strictObject({ ...kind.fields, ...sharedFields })
  return {
    ...kind,
    schema: schema as unknown as StepKind['schema'],
    // The reader hands over only what this very schema has let through.
    draft: (fields, reading) => kind.draft(fields as Written<S>, reading)
  }
}
