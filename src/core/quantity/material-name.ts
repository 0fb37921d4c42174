import { good, type Read, refuse } from './read.ts'

/** Reads the name after "of": letters, digits, spaces and . _ ' - only, at least one letter; a leading "the" is taken off. */
export function readMaterialName(text: string): Read<string> {
  const name = text.trim().replace(/^the /i, '')
  if (name === '') return refuse('of-missing', text.trim(), 'Say of what, for example 1/2 of acid.')
  if (/^(?=.*\p{L})[\p{L}\p{N}][\p{L}\p{N} ._'’-]*$/u.test(name)) return good(name)
  return refuse('name-unclear', name, 'A name has letters, digits and spaces, for example 30 mL of vinegar.')
}
