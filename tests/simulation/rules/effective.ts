import type { PotEntry } from '../../../src/session/ports.ts'

/** The entries of a stream that still hold: without those that an undo withdrew. */
export function effective(entries: readonly PotEntry[]): PotEntry[] {
  const withdrawn = new Set<string>()
  for (const { event } of entries) {
    if (event.type === 'Withdrawn') for (const { writerId, seq } of event.entries) withdrawn.add(`${writerId} ${seq}`)
  }
  return withdrawn.size === 0
    ? [...entries]
    : entries.filter(({ writerId, seq }) => !withdrawn.has(`${writerId} ${seq}`))
}
