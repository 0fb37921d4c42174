import { readFileSync } from 'node:fs'
import Ajv2020 from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { ENTRY_VERSION } from '../../../src/core/pot/entry.ts'
import type { PotEvent } from '../../../src/core/pot/events.ts'
import { fold } from '../../../src/core/pot/fold.ts'
import { readEntries } from '../../../src/core/pot/read-entry.ts'
import { sealEntry } from '../../../src/core/pot/write-entry.ts'
import { exportRecord } from '../../../src/core/record/export-record.ts'
import type { MediaRecord } from '../../../src/core/record/record.ts'
import { recordOf } from '../../../src/core/record/record-of.ts'
import type { Bench } from '../pot/given.ts'
import { mossRun } from './moss.ts'

const sha256 = 'a'.repeat(64)
const other = 'b'.repeat(64)
const picture = { sha256, mime: 'image/jpeg', bytes: 600_000, widthPx: 1632, heightPx: 1224 }
const speech = { sha256: other, mime: 'audio/webm', bytes: 90_000, lengthMs: 12_400 }

function withMedia(): Bench {
  const bench = mossRun()
  bench.do({ type: 'NotePhoto', what: 'the bath', media: picture })
  bench.do({ type: 'NoteVoice', media: speech })
  return bench
}

function mediaIn(bench: Bench): MediaRecord[] {
  return recordOf(bench.entries)?.media ?? []
}

const schema = JSON.parse(readFileSync(new URL('../../../public/batch-record.schema.json', import.meta.url), 'utf8'))
const valid = new Ajv2020({ allErrors: true, strict: true, strictRequired: false, allowUnionTypes: true }).compile(
  schema
)

// biome-ignore lint/suspicious/noExplicitAny: a document to be broken in any place
function exported(bench: Bench): any {
  const record = recordOf(bench.entries)
  if (!record) throw new Error('no record')
  return JSON.parse(exportRecord(record, bench.entries, null, 0))
}

describe('a record with pictures and sound', () => {
  it('shows each with its step, its time and what names its bytes', () => {
    const bench = withMedia()
    expect(mediaIn(bench)).toMatchObject([
      { kind: 'photo', what: 'the bath', path: 'off', label: 'Heat off', ...picture, lengthMs: null, trimmed: null },
      { kind: 'voice', what: 'Voice note', path: 'off', label: 'Heat off', ...speech, widthPx: null, withdrawn: false }
    ])
    expect(mediaIn(bench)[0]?.said).toMatchObject({ atMs: bench.nowMs, by: 'person' })
    const lines = recordOf(bench.entries)?.journal.map(({ words }) => words)
    expect(lines).toContain('Voice note (Heat off), 12\u00a0s.')
  })

  it('says that a picture was there when it was let go, and that one noted anew afterwards stands', () => {
    const bench = withMedia()
    bench.do({ type: 'TrimMedia', sha256, why: 'to make room' })
    bench.do({ type: 'NotePhoto', what: 'the same again', media: picture })
    const [first, voice, again] = mediaIn(bench)
    expect(first).toMatchObject({ what: 'the bath', trimmed: { why: 'to make room', said: { atMs: bench.nowMs } } })
    expect([voice?.trimmed, again?.trimmed]).toEqual([null, null])
  })

  it('names an undone picture as undone: its bytes are still there', () => {
    const bench = withMedia()
    bench.do({ type: 'Undo' })
    expect(mediaIn(bench).map(({ kind, withdrawn }) => [kind, withdrawn])).toEqual([
      ['photo', false],
      ['voice', true]
    ])
  })

  it('says what a photo shows as it was corrected', () => {
    const bench = withMedia()
    const entry = bench.entries.find(({ event }) => event.type === 'PhotoNoted')
    if (!entry) throw new Error('no photo')
    const { writerId, seq } = entry
    const said = { field: 'what', was: 'the bath', now: 'the rinse', why: 'wrong word' }
    bench.do({ type: 'Correct', entry: { writerId, seq }, ...said })
    expect(mediaIn(bench)[0]?.what).toBe('the rinse')
  })

  it('reads a photo from before pictures were kept as one without a picture', () => {
    const bench = mossRun()
    bench.do({ type: 'NotePhoto', what: 'the bath' })
    const raw = bench.entries.map(({ crc: _, ...entry }) => {
      const { media: __, ...event } = entry.event as Extract<PotEvent, { type: 'PhotoNoted' }>
      return sealEntry<PotEvent>({ ...entry, v: ENTRY_VERSION, event: event as PotEvent })
    })
    expect(JSON.stringify(raw)).not.toContain('"media"')
    const { entries, damaged, unknown } = readEntries(raw)
    expect({ damaged, unknown }).toEqual({ damaged: [], unknown: false })
    expect(fold(entries)).toMatchObject({ recorded: { photo: bench.nowMs } })
    const record = recordOf(entries)
    expect(record?.media).toEqual([])
    expect(record?.readings.at(-1)).toMatchObject({ what: 'photo', words: 'the bath' })
  })
})

describe('its export', () => {
  it('names the media by hash and is what the schema says, judged by ajv', () => {
    const bench = withMedia()
    bench.do({ type: 'TrimMedia', sha256, why: 'to make room' })
    const document = exported(bench)
    expect(valid(document), JSON.stringify(valid.errors?.slice(0, 3))).toBe(true)
    expect(document.record.media.map((media: MediaRecord) => media.sha256)).toEqual([sha256, other])
    expect(document.version).toBe(4)
  })

  it('goes on being valid where it was written as version 2, which knew no results and no shelf, or 1, which knew no media', () => {
    const document = exported(mossRun())
    delete document.swatches
    document.version = 2
    expect(valid(document)).toBe(false)
    delete document.record.results
    expect(valid(document)).toBe(false)
    delete document.record.shelf
    expect(valid(document), JSON.stringify(valid.errors?.slice(0, 3))).toBe(true)
    document.version = 1
    expect(valid(document)).toBe(false)
    delete document.record.media
    expect(valid(document), JSON.stringify(valid.errors?.slice(0, 3))).toBe(true)
    document.version = 2
    expect(valid(document)).toBe(false)
  })

  // biome-ignore lint/suspicious/noExplicitAny: as above
  it.each<[string, (media: any) => void]>([
    ['a name that is no hash', (media) => (media[0].sha256 = 'photo.jpg')],
    ['a note of a minute', (media) => (media[1].lengthMs = 60_000)],
    ['a film', (media) => (media[0].mime = 'video/mp4')],
    ['letting go without a reason', (media) => (media[0].trimmed = {})],
    ['a field nobody knows', (media) => (media[0].place = 'kitchen')]
  ])('with %s is not', (_, breakIt) => {
    const document = exported(withMedia())
    breakIt(document.record.media)
    expect(valid(document)).toBe(false)
  })
})
