// A batch's record as a protocol of its own: the reader and the maker, in one piece that is loaded when it is asked for.
import type { Entry } from '../core/pot/entry.ts'
import type { PotEvent } from '../core/pot/events.ts'
import { protocolOfRecord } from '../core/record/protocol-of-record.ts'
import { recordOf } from '../core/record/record-of.ts'
import type { StoredProtocol } from '../ui/kitchen.ts'
import { protocolOf } from './protocol-of.ts'

type Read = { entries: Entry<PotEvent>[]; damaged: { index: number; why: string }[] }

export function madeProtocol({
  entries,
  damaged
}: Read): { ok: true; stored: StoredProtocol } | { ok: false; say: string } {
  const record = recordOf(entries, { damaged })
  if (record === null)
    return { ok: false, say: 'The start of this pot can’t be read, so no protocol can be made of it.' }
  const { title, text } = protocolOfRecord(record, entries)
  const read = protocolOf(`${title}.yaml`, text)
  if (read.ok) return { ok: true, stored: read.stored }
  const first = read.problems[0]
  return { ok: false, say: `No protocol could be made of it: ${first?.what ?? 'it can’t be read'}` }
}
