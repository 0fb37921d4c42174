import type { CommandHeader } from '../core/pot/commands.ts'
import { ENTRY_VERSION, type Entry } from '../core/pot/entry.ts'
import { sealEntry } from '../core/pot/write-entry.ts'
import type { ClockPort, IdPort } from './ports.ts'

export type Writing = { clock: ClockPort; ids: IdPort; recordedAtMs: number }

/** The decided events of one stream as sealed entries that go after those it has. `last`: the one they follow. */
export function sealAll<E>(
  streamId: string,
  before: readonly Entry<unknown>[],
  events: readonly E[],
  header: CommandHeader,
  { clock, ids: { writerId }, recordedAtMs }: Writing,
  last: Entry<unknown> | undefined = before.at(-1)
): Entry<E>[] {
  let seq = lastSeqOf(before, writerId)
  let after = last === undefined ? null : { writerId: last.writerId, seq: last.seq }
  return events.map((event) => {
    seq += 1
    const entry = sealEntry<E>({
      v: ENTRY_VERSION,
      streamId,
      writerId,
      seq,
      after,
      commandId: header.commandId,
      atMs: header.atMs,
      recordedAtMs,
      bootId: clock.bootId,
      monoMs: clock.monoMs(),
      // Of the moment it happened: what is told of last month may lie on the other side of a change of the clocks.
      tzOffsetMin: clock.tzOffsetMin(header.atMs),
      by: header.by,
      event
    })
    after = { writerId, seq }
    return entry
  })
}

function lastSeqOf(entries: readonly Entry<unknown>[], writerId: string): number {
  return entries.findLast((entry) => entry.writerId === writerId)?.seq ?? 0
}
