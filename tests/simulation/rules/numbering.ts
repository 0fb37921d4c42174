// Sequence numbers have no gap, the journal has no branch, and one tap stands in it once.
import type { PotEntry } from '../../../src/session/ports.ts'

export function numberingBroken(entries: readonly PotEntry[]): string[] {
  const broken: string[] = []
  const lastSeq = new Map<string, number>()
  const taps = new Set<string>()
  let before: PotEntry | null = null
  for (const entry of entries) {
    const { writerId, seq, after, commandId, by, streamId } = entry
    const expected = (lastSeq.get(writerId) ?? 0) + 1
    if (seq !== expected) broken.push(`${streamId}: ${writerId} wrote ${seq} where ${expected} comes next`)
    lastSeq.set(writerId, seq)
    const follows = before === null ? after === null : after?.writerId === before.writerId && after.seq === before.seq
    if (!follows) broken.push(`${streamId}: entry ${writerId} ${seq} follows another than the one before it`)
    if (by.kind !== 'clock' && before?.commandId !== commandId) {
      if (taps.has(commandId)) broken.push(`${streamId}: the tap ${commandId} stands in the journal twice`)
      taps.add(commandId)
    }
    before = entry
  }
  return broken
}
