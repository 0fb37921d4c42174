// The kinds of value that fields hold. Shape only: what a quantity's words mean is read by reading.ts.
import * as z from 'zod/mini'
import { onOneLine, onSeveralLines } from '../source/characters.ts'

/** The error text of a field is its "instead": what would be right there. */
function about<T extends z.ZodMiniType>(schema: T, description: string): T {
  z.globalRegistry.add(schema, { description })
  return schema
}

export type AsWritten = string | number

/** A quantity in words and figures; a bare number is let through, so that reading it can ask for its unit. */
export function quantity(example: string, description: string): z.ZodMiniUnion<[z.ZodMiniString, z.ZodMiniNumber]> {
  const instead = `write ${example}`
  const written = z.string().check(z.minLength(1), z.maxLength(64), z.regex(onOneLine))
  return about(z.union([written, z.number()], { error: instead }), `${description} For example: ${example}`)
}

export function line(most: number, description: string): z.ZodMiniString {
  const error = `write a text of at most ${most} letters`
  const text = z.string({ error }).check(z.minLength(1), z.maxLength(most), z.regex(onOneLine))
  return about(text, description)
}

export function paragraph(most: number, description: string): z.ZodMiniString {
  const error = `write a text of at most ${most} letters`
  const text = z.string({ error }).check(z.minLength(1), z.maxLength(most), z.regex(onSeveralLines))
  return about(text, description)
}

export const idPattern = /^[A-Za-z][A-Za-z0-9_-]{0,39}$/
// "10 min after all in and until 40 °C" is cut at these words, so no name may hold them.
export const namePattern = /^(?!.*(?:^| )(?:and|after|until)(?: |$))[\p{L}\p{N}][\p{L}\p{N} _-]{0,39}$/u

export function id(description: string): z.ZodMiniString {
  return about(z.string({ error: 'write an id such as A1' }).check(z.regex(idPattern)), description)
}

export function name(description: string): z.ZodMiniString {
  return about(z.string({ error: 'write a name such as all in' }).check(z.regex(namePattern)), description)
}

export function flag(description: string): z.ZodMiniBoolean {
  return about(z.boolean({ error: 'write true or false' }), description)
}

export function count(least: number, most: number, description: string): z.ZodMiniNumber {
  const error = `write a whole number from ${least} to ${most}`
  return about(z.int({ error }).check(z.gte(least), z.lte(most)), description)
}

export function oneOf<const T extends readonly [string, ...string[]]>(
  words: T,
  description: string
): z.ZodMiniEnum<{ [K in T[number]]: K }> {
  return about(z.enum(words, { error: `write ${words.join(', ')}` }), description)
}

/** One thing, or a list of them. */
export function some<T extends z.ZodMiniType>(
  item: T,
  most: number,
  description: string
): z.ZodMiniUnion<[T, z.ZodMiniArray<T>]> {
  const error = `write one, or a list of at most ${most}`
  return about(z.union([item, z.array(item).check(z.minLength(1), z.maxLength(most))], { error }), description)
}

/** A list of steps: read one by one, each after its own word. */
export const sequences = z.registry<{ sequence: true }>()

export function sequence(description: string, least: 0 | 1 = 1): z.ZodMiniArray<z.ZodMiniUnknown> {
  const list = z.array(z.unknown(), { error: 'write a list of steps, each with - before it' }).check(z.minLength(least))
  sequences.add(list, { sequence: true })
  return about(list, description)
}

export function listOf<T>(value: T | T[] | undefined): T[] {
  return value === undefined ? [] : Array.isArray(value) ? value : [value]
}
