// Frames whose checksums hold, made by something that was no Strandline, or too long for any.
import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { contentsOf } from '../../../src/core/backup/contents.ts'
import { chained, FRAME_MOST, type FrameKind, firstLine } from '../../../src/core/backup/format.ts'
import { newAside } from '../../../src/core/backup/merge.ts'
import { readBackup } from '../../../src/core/backup/read.ts'
import { writeBackup } from '../../../src/core/backup/write.ts'
import { note } from '../../shell/entries.ts'
import { each, nodeCodec, readBytes, sourceOf, written } from './codec.ts'

const told = (kind: FrameKind, text: string): unknown => contentsOf(kind, nodeCodec.encode(text), nodeCodec)
const sha256 = (data: Uint8Array | string): string => createHash('sha256').update(data).digest('hex')

describe('what a frame holds', () => {
  const media = { sha256: 'a', mime: 'image/jpeg', size: 3, storedAtMs: 1, streamIds: ['pot/1'] }
  const entry = note('1', 1)

  it('is taken where it has the fields it should', () => {
    expect(told('media', `${JSON.stringify(media)}\nabc`)).toMatchObject({ kind: 'media', media })
    expect(told('entries', `{"streamId":"pot/1"}\n${JSON.stringify(entry)}`)).toMatchObject({ entries: [entry] })
    expect(told('aside', JSON.stringify({ why: 'conflict', entry }))).toMatchObject({ kind: 'aside' })
    expect(told('kept', '{"key":"a","value":null}')).toMatchObject({ kind: 'kept' })
  })

  it.each<[string, FrameKind, string]>([
    ['a picture of other length than it says', 'media', `${JSON.stringify(media)}\nabcd`],
    ['a picture without its stream', 'media', `${JSON.stringify({ ...media, streamIds: [7] })}\nabc`],
    ['a picture without a line end', 'media', JSON.stringify(media)],
    ['an entry of another stream', 'entries', `{"streamId":"pot/2"}\n${JSON.stringify(entry)}`],
    ['an entry without a number', 'entries', `{"streamId":"pot/1"}\n{"streamId":"pot/1","writerId":"w"}`],
    ['set aside for no reason', 'aside', JSON.stringify({ why: 'mood', entry })],
    ['a kept thing without its value', 'kept', '{"key":"a"}'],
    ['a head without its counts', 'head', '{"madeAtMs":1,"writerId":"w"}'],
    ['totals that are texts', 'end', '{"streams":"1"}']
  ])('is told to be wrong: %s', (_, kind, text) => {
    expect(told(kind, text)).toBe(`a record of kind ${kind} has not the fields it should`)
  })

  it('is told to be no JSON, or no UTF-8', () => {
    expect(told('kept', 'key')).toBe('a record of kind kept is no JSON in UTF-8')
    expect(contentsOf('kept', new Uint8Array([0xff]), nodeCodec)).toBe('a record of kind kept is no JSON in UTF-8')
  })
})

describe('a record that is too long for any backup', () => {
  it('is not written: it would be found only when the backup is needed', async () => {
    const huge = (text: string) => (text.includes('huge') ? new Uint8Array(FRAME_MOST + 1) : nodeCodec.encode(text))
    const source = sourceOf({ entries: [], kept: [{ key: 'huge', value: 1 }] })
    const writing = async (): Promise<void> => {
      for await (const _ of writeBackup(source, { ...nodeCodec, encode: huge }));
    }
    await expect(writing()).rejects.toThrow('is too long for a backup')
  })

  it('is refused by its head, and its bytes are not waited for', async () => {
    const first = firstLine(1)
    const sum = sha256('x')
    const chain = sha256(chained(sha256(first), 'kept', FRAME_MOST + 1, sum))
    const parts = await readBytes(nodeCodec.encode(`${first}kept ${FRAME_MOST + 1} ${sum} ${chain}\n`))
    expect(parts).toMatchObject([{ kind: 'refused', refusal: { why: 'changed', say: /longer than any may be/ } }])
  })
})

describe('the order of frames, each with checksums that hold', () => {
  function sealed(frames: [FrameKind, string][]): Uint8Array {
    let file = firstLine(1)
    let chain = sha256(file)
    for (const [kind, payload] of frames) {
      const sum = sha256(payload)
      chain = sha256(chained(chain, kind, Buffer.byteLength(payload), sum))
      file += `${kind} ${Buffer.byteLength(payload)} ${sum} ${chain}\n${payload}\n`
    }
    return nodeCodec.encode(file)
  }
  const head: [FrameKind, string] = ['head', '{"madeAtMs":1,"writerId":"w","streams":0,"media":0,"mediaBytes":0}']
  const kept: [FrameKind, string] = ['kept', '{"key":"a","value":1}']
  const end = (kept: number): [FrameKind, string] => [
    'end',
    `{"streams":0,"entries":0,"aside":0,"kept":${kept},"media":0,"mediaBytes":0}`
  ]
  const last = async (frames: [FrameKind, string][]) => (await readBytes(sealed(frames))).at(-1)

  it('is one head first, and totals that fit', async () => {
    expect(await last([head, kept, end(1)])).toMatchObject({ kind: 'end' })
    const refused = (say: RegExp) => ({ kind: 'refused', refusal: { why: 'changed', say: expect.stringMatching(say) } })
    expect(await last([head, head, end(0)])).toMatchObject(refused(/it begins a second time/))
    expect(await last([kept, head, end(1)])).toMatchObject(refused(/it does not begin with its head/))
    expect(await last([head, kept, end(2)])).toMatchObject(refused(/it holds 1 kept, not 2/))
  })
})

it('how far a reading is is told by bytes, up to the end of the file', async () => {
  const file = await written({ entries: [note('1', 1), note('2', 1)] })
  const told: number[] = []
  for await (const _ of readBackup(each([file]), nodeCodec, (at) => told.push(at)));
  expect(told).toHaveLength(4)
  expect(told).toEqual([...told].sort((a, b) => a - b))
  expect(told.at(-1)).toBe(file.length)
})

it('an entry that was set aside twice elsewhere is set aside once', () => {
  const aside = { why: 'conflict' as const, entry: note('1', 1) }
  expect(newAside([], [aside, aside], [])).toEqual([aside])
  expect(newAside([aside], [aside], [])).toEqual([])
  expect(newAside([], [aside], [aside.entry])).toEqual([])
})
