import { createHash } from 'node:crypto'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FRAME_ABOUT } from '../../../src/core/backup/format.ts'
import type { BackupPart } from '../../../src/core/backup/read.ts'
import { note } from '../../shell/entries.ts'
import { mediaOf, readBytes, type Store, written } from './codec.ts'

const small: Store = {
  entries: [
    note('1', 1),
    note('1', 2),
    note('2', 1, { event: { type: 'NoteWritten', text: '82 °C, 水', path: null } })
  ],
  aside: [{ why: 'conflict', entry: note('1', 2, { commandId: 'other' }) }],
  kept: [
    { key: 'settings', value: { theme: 'dark' } },
    { key: 'draft/a', value: { id: 'a', text: 'strandline: 1\n' } }
  ],
  media: [mediaOf('a picture\nwith a line end'), mediaOf('')]
}

const last = (parts: BackupPart[]): BackupPart | undefined => parts.at(-1)

/** What a reader took out of a file, as what was put in. */
function storeOf(parts: BackupPart[]): Required<Omit<Store, 'summaryOf'>> {
  return {
    entries: parts.flatMap((part) => (part.kind === 'entries' ? part.entries : [])),
    aside: parts.flatMap((part) => (part.kind === 'aside' ? [part.aside] : [])),
    kept: parts.flatMap((part) => (part.kind === 'kept' ? [part.kept] : [])),
    media: parts.flatMap((part) => (part.kind === 'media' ? [part.media] : []))
  }
}

describe('a backup file', () => {
  it('gives back what went in, whatever pieces it comes in', async () => {
    const file = await written(small)
    for (const piece of [1, 7, 64, file.length]) {
      const parts = await readBytes(file, piece)
      expect(storeOf(parts), `pieces of ${piece}`).toEqual(small)
      expect(last(parts)).toMatchObject({
        kind: 'end',
        totals: { streams: 2, entries: 3, aside: 1, kept: 2, media: 2 }
      })
    }
  })

  it('gives back any entries, also with lone surrogates, line ends and odd keys', async () => {
    const json = fc.jsonValue({ maxDepth: 3, stringUnit: 'binary' })
    const entry = fc.record({ writerId: fc.string({ unit: 'binary' }), seq: fc.nat(), event: json })
    await fc.assert(
      fc.asyncProperty(fc.array(entry, { maxLength: 20 }), fc.string({ unit: 'binary' }), async (all, streamId) => {
        // What went through JSON once is what a store of JSON-native values holds: no minus zero.
        const entries = JSON.parse(JSON.stringify(all.map((one) => ({ ...one, streamId }))))
        const parts = await readBytes(await written({ entries }))
        expect(storeOf(parts).entries).toEqual(entries)
        expect(last(parts)?.kind).toBe('end')
      }),
      { numRuns: 60 }
    )
  })

  it('cuts a long journal into several frames, and holds it for one stream', async () => {
    const text = 'x'.repeat(FRAME_ABOUT / 3)
    const entries = [1, 2, 3, 4, 5, 6].map((seq) =>
      note('1', seq, { event: { type: 'NoteWritten', text, path: null } })
    )
    const parts = await readBytes(await written({ entries }), 65_536)
    expect(parts.filter(({ kind }) => kind === 'entries')).toHaveLength(2)
    expect(storeOf(parts).entries).toEqual(entries)
    expect(last(parts)).toMatchObject({ kind: 'end', totals: { streams: 1, entries: 6 } })
  })

  it('is what README.md says: every checksum can be had with other tools', async () => {
    const file = Buffer.from(await written(small))
    let at = file.indexOf('\n') + 1
    let chain = createHash('sha256').update(file.subarray(0, at)).digest('hex')
    const kinds: string[] = []
    while (at < file.length) {
      const end = file.indexOf('\n', at)
      const [kind = '', length = '', sum, told] = file.subarray(at, end).toString().split(' ')
      const payload = file.subarray(end + 1, end + 1 + Number(length))
      expect(sum).toBe(createHash('sha256').update(payload).digest('hex'))
      chain = createHash('sha256').update(`${chain} ${kind} ${length} ${sum}\n`).digest('hex')
      expect(told).toBe(chain)
      kinds.push(kind)
      at = end + 1 + Number(length) + 1
    }
    expect(kinds).toEqual(['head', 'entries', 'entries', 'aside', 'kept', 'kept', 'media', 'media', 'end'])
  })
})

describe('a damaged backup', () => {
  it('is refused with any one of its bits flipped', async () => {
    const file = await written(small)
    const missed: string[] = []
    for (let bit = 0; bit < file.length * 8; bit++) {
      const flipped = file.slice()
      flipped[bit >> 3] = (flipped[bit >> 3] ?? 0) ^ (1 << (bit & 7))
      const end = last(await readBytes(flipped))
      if (end?.kind !== 'refused') missed.push(`bit ${bit & 7} of byte ${bit >> 3}`)
    }
    expect(missed).toEqual([])
    expect(file.length).toBeGreaterThan(2_000)
  })

  it('is refused cut at every byte, as cut short once its first line is there', async () => {
    const file = await written(small)
    const firstLine = file.indexOf(0x0a) + 1
    for (let length = 0; length < file.length; length++) {
      const end = last(await readBytes(file.slice(0, length)))
      const why = end?.kind === 'refused' ? end.refusal.why : end?.kind
      expect(`${length} ${why}`).toBe(`${length} ${length < firstLine ? 'not-a-backup' : 'cut-short'}`)
    }
  })

  it('is refused with frames left out, doubled, swapped, or bytes behind its end', async () => {
    const file = Buffer.from(await written(small))
    const frames: Buffer[] = []
    let at = file.indexOf('\n') + 1
    const first = file.subarray(0, at)
    while (at < file.length) {
      const head = file.indexOf('\n', at)
      const end = head + 1 + Number(file.subarray(at, head).toString().split(' ')[1]) + 1
      frames.push(file.subarray(at, end))
      at = end
    }
    const swapped = [...frames]
    swapped.splice(2, 2, frames[3] as Buffer, frames[2] as Buffer)
    const wrong = {
      'left out': frames.filter((_, no) => no !== 3),
      doubled: frames.flatMap((frame, no) => (no === 3 ? [frame, frame] : [frame])),
      swapped,
      'more behind': [...frames, Buffer.from('\n')],
      'two in one': [...frames, ...frames]
    }
    expect(last(await readBytes(Buffer.concat([first, ...frames])))?.kind).toBe('end')
    for (const [how, pieces] of Object.entries(wrong)) {
      const end = last(await readBytes(new Uint8Array(Buffer.concat([first, ...pieces]))))
      expect(end, how).toMatchObject({ kind: 'refused', refusal: { why: 'changed' } })
    }
  })

  it('of a newer version says which, that nothing was changed, and what to do', async () => {
    const file = Buffer.from(await written(small))
    const later = new Uint8Array(Buffer.concat([Buffer.from('strandline-backup 12\n'), file.subarray(20)]))
    const end = last(await readBytes(later))
    expect(end).toMatchObject({ kind: 'refused', refusal: { why: 'newer' } })
    const { say, instead } = end?.kind === 'refused' ? end.refusal : { say: '', instead: '' }
    expect(say).toContain('version 12')
    expect(instead).toMatch(/Nothing on this device was changed.*Keep the file/)
  })

  it('is told from what never was one', async () => {
    for (const text of ['', '\n', 'strandline: 1\ntitle: A protocol\n', 'PK\u0003\u0004', 'x'.repeat(5000)]) {
      expect(last(await readBytes(new TextEncoder().encode(text)))).toMatchObject({
        kind: 'refused',
        refusal: { why: 'not-a-backup' }
      })
    }
  })

  it('that the disk stops handing over is refused as one that can’t be read', async () => {
    const file = await written(small)
    const { readBackup } = await import('../../../src/core/backup/read.ts')
    const { nodeCodec } = await import('./codec.ts')
    async function* pulled(): AsyncGenerator<Uint8Array> {
      yield file.slice(0, 900)
      throw new Error('the stick was pulled')
    }
    const parts: BackupPart[] = []
    for await (const part of readBackup(pulled(), nodeCodec)) parts.push(part)
    expect(last(parts)).toMatchObject({ kind: 'refused', refusal: { why: 'unreadable' } })
  })
})
