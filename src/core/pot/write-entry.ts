import { crc32 } from './crc.ts'
import type { Entry } from './entry.ts'
import { sorted } from './sorted.ts'

/** Closes an entry with its checksum: CRC-32 of the JSON of all other fields, keys sorted at every depth. What comes
 * back holds JSON-native fields only, its keys already in order, so that reading it needs no sorting. */
export function sealEntry<E>(open: Omit<Entry<E>, 'crc'>): Entry<E> {
  const rest = sorted(open)
  return { ...rest, crc: crc32(JSON.stringify(rest)) }
}
