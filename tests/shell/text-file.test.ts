import { describe, expect, it } from 'vitest'
import { bytesMost } from '../../src/core/protocol/source/limits.ts'
import { type FileRead, readTextFile } from '../../src/shell/files/text-file.ts'

const protocol = 'strandline: 1\ntitle: Rinse\nsteps:\n- hold: {at: 82 °C, for: 6 min}\n'

const read = (content: BlobPart, name = 'mine.yaml'): Promise<FileRead> =>
  readTextFile(Object.assign(new Blob([content]), { name }))

async function refusal(content: BlobPart, name?: string): Promise<Extract<FileRead, { ok: false }>> {
  const found = await read(content, name)
  if (found.ok) throw new Error('it was read')
  return found
}

/** Each letter as two bytes, the low one first or last. */
function utf16(
  text: string,
  { mark, bigEndian = false }: { mark: boolean; bigEndian?: boolean }
): Uint8Array<ArrayBuffer> {
  const units = [...(mark ? '\uFEFF' : ''), ...text].map((sign) => sign.charCodeAt(0))
  return Uint8Array.from(units.flatMap((unit) => (bigEndian ? [unit >> 8, unit & 255] : [unit & 255, unit >> 8])))
}

/** Each letter as one byte, as older editors write it. */
const latin1 = (text: string): Uint8Array<ArrayBuffer> => Uint8Array.from([...text].map((sign) => sign.charCodeAt(0)))

describe('a text file', () => {
  it('is read as it is', async () => {
    expect(await read(protocol)).toEqual({ ok: true, text: protocol })
  })

  it('with a byte order mark, or lines that end as on another system, is the same text', async () => {
    const texts = [`\uFEFF${protocol}`, protocol.replaceAll('\n', '\r\n'), protocol.replaceAll('\n', '\r')]
    for (const text of texts) expect(await read(text)).toEqual({ ok: true, text: protocol })
  })

  it('is read whatever its name ends in', async () => {
    for (const name of ['mine', 'mine.doc', 'mine.yaml.txt'])
      expect(await read(protocol, name)).toMatchObject({ ok: true })
  })

  it('as large as it may be is read, one byte larger is refused with the limit named', async () => {
    expect(await read('x'.repeat(bytesMost))).toMatchObject({ ok: true })
    expect(await refusal('x'.repeat(bytesMost + 1), 'big.yaml')).toMatchObject({
      why: 'too-large',
      say: 'big.yaml has 257 kB. A protocol has at most 256 kB.',
      instead: expect.stringContaining('two protocols')
    })
  })

  it('that is too large is refused before a byte of it is read', async () => {
    let touched = 0
    const touch = (): never => {
      touched++
      throw new Error('read')
    }
    const huge = { name: 'huge.yaml', size: 8e9, slice: touch, arrayBuffer: touch, text: touch, stream: touch }
    expect(await readTextFile(huge as unknown as File)).toMatchObject({ ok: false, why: 'too-large' })
    expect(touched).toBe(0)
  })

  it('in UTF-16 is told so, with its mark and without, and how to save it', async () => {
    const ways = [
      utf16(protocol, { mark: true }),
      utf16(protocol, { mark: true, bigEndian: true }),
      utf16(protocol, { mark: false }),
      utf16(protocol, { mark: false, bigEndian: true })
    ]
    for (const bytes of ways) {
      const { why, say, instead } = await refusal(bytes)
      expect([why, say]).toEqual(['utf-16', 'mine.yaml is written in UTF-16.'])
      expect(instead).toContain('UTF-8')
    }
  })

  it('in an older encoding is told the line of the first letter that is wrong', async () => {
    expect(await refusal(latin1(protocol))).toMatchObject({
      why: 'not-utf-8',
      line: 4,
      say: expect.stringContaining('line 4'),
      instead: expect.stringContaining('UTF-8')
    })
    expect((await refusal(latin1(protocol.replaceAll('\n', '\r\n')))).line).toBe(4)
  })

  it('that is no text is told so, and what its name ends in', async () => {
    const picture = new Uint8Array([
      0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 0x0d, 0x49, 0x48, 0x44, 0x52
    ])
    expect(await refusal(picture, 'skein.png')).toMatchObject({
      why: 'not-text',
      say: expect.stringMatching(/skein\.png is no text.*\.png/)
    })
    expect((await refusal(picture, 'skein.yaml')).say).not.toContain('ends in')
  })

  it('that can’t be got any more, as a folder can’t, is told so', async () => {
    const gone = { name: 'dyes', size: 4096, slice: () => ({ arrayBuffer: () => Promise.reject(new Error('gone')) }) }
    expect(await readTextFile(gone as unknown as File)).toMatchObject({ why: 'unreadable', say: 'dyes can’t be read.' })
  })

  it('with a name that turns the direction of writing, or has no end, is called by what can be shown', async () => {
    const { say } = await refusal('x'.repeat(bytesMost + 1), `a\u202Elmay.exe\n${'z'.repeat(500)}`)
    expect(say).not.toMatch(/\u202E|\n/)
    expect(say.length).toBeLessThan(200)
  })
})
