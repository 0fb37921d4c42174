import type { PotEvent } from '../../src/core/pot/events.ts'
import type { MediaBytes } from '../../src/core/pot/media.ts'
import { sealEntry } from '../../src/core/pot/write-entry.ts'
import type { PotEntry, PotSummary } from '../../src/session/ports.ts'

/** The seq-th note of a pot, sealed. */
export function note(potId: string, seq: number, change: Partial<PotEntry> = {}): PotEntry {
  const writerId = change.writerId ?? 'w1'
  return sealEntry<PotEvent>({
    v: 2,
    streamId: `pot/${potId}`,
    writerId,
    seq,
    after: seq === 1 ? null : { writerId, seq: seq - 1 },
    commandId: `c${seq}`,
    atMs: 1000 + seq,
    recordedAtMs: 1000 + seq,
    bootId: 'b1',
    monoMs: seq,
    tzOffsetMin: 0,
    by: { kind: 'person', name: null, via: 'tap' },
    event: { type: 'NoteWritten', text: `note ${seq}`, path: null },
    ...change
  })
}

/** The summary of a pot, running unless said otherwise. */
export function summary(potId: string, change: Partial<PotSummary> = {}): PotSummary {
  return {
    streamId: `pot/${potId}`,
    potId,
    batchName: `demo ${potId}`,
    colourway: 'Moss',
    colour: '#556b2f',
    protocolTitle: 'Demo',
    startedAtMs: 1000,
    endedAtMs: null,
    status: 'running',
    goodsMassG: 100,
    offProtocol: false,
    entries: 1,
    ...change
  }
}

/** Bytes under a name of their own; the name is none that anybody worked out. */
export function jpeg(...bytes: number[]): MediaBytes {
  const sha256 = bytes
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('')
    .padEnd(64, '0')
  return { sha256, mime: 'image/jpeg', bytes: new Uint8Array(bytes).buffer }
}

/** The seq-th entry of a pot: it names the bytes. */
export function photo(potId: string, seq: number, { sha256, mime, bytes }: MediaBytes): PotEntry {
  const media = { sha256, mime, bytes: bytes.byteLength, widthPx: 4, heightPx: 3 }
  return note(potId, seq, { event: { type: 'PhotoNoted', what: 'the bath', path: null, media } })
}

export function letGo(potId: string, seq: number, { sha256 }: MediaBytes): PotEntry {
  return note(potId, seq, { event: { type: 'MediaTrimmed', sha256, why: 'to make room' } })
}
