// The small kept things: settings, drafts, protocols and their versions, and whatever comes later.
import { crc32 } from '../pot/crc.ts'
import { sorted } from '../pot/sorted.ts'
import type { KeptThing } from './format.ts'

/** What is of one device alone: a store that took another's name would count on where that one counts on. */
const OF_THE_DEVICE = /^(writer$|device-check$|backup\/)/
/** Texts somebody wrote. Where both devices have one of the same name, both are kept. */
const TEXTS = /^(draft|protocol|version)\//

export function isBackedUp({ key }: KeptThing): boolean {
  return !OF_THE_DEVICE.test(key)
}

/** What becomes of a thing that comes in where `here` stands (undefined: nothing does). `as-here`: what is here stays and
 * what came is let go, which is said. */
export type KeptMerge = { kind: 'same' } | { kind: 'as-here' } | { kind: 'put'; key: string; value: unknown }

/** A text that differs from the one of its name comes in under a name made of its own words: coming again it is the same. */
export function mergeKept(here: unknown, coming: KeptThing): KeptMerge {
  if (!isBackedUp(coming)) return { kind: 'as-here' }
  if (here === undefined) return { kind: 'put', ...coming }
  if (wordsOf(here) === wordsOf(coming.value)) return { kind: 'same' }
  const beside = TEXTS.test(coming.key) ? besideOf(coming) : null
  return beside === null ? { kind: 'as-here' } : { kind: 'put', ...beside }
}

/** Under what name a text is put where its own is taken; null: it is none. */
export function besideOf({ key, value }: KeptThing): KeptThing | null {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return null
  const mark = `-${crc32(wordsOf(value))}`
  // Of a version the id says which protocol it is one of: that stays, and its key tells it from the others.
  if (key.startsWith('version/')) return { key: key + mark, value }
  return { key: key + mark, value: { ...value, id: key.slice(key.indexOf('/') + 1) + mark } }
}

function wordsOf(value: unknown): string {
  return JSON.stringify(sorted(value)) ?? ''
}
