import { createHash } from 'node:crypto'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { mediaLines } from '../../src/shell/media/media-lines.ts'
import { fitted, type PictureTools, readPhoto } from '../../src/shell/media/photo.ts'
import { sha256Of } from '../../src/shell/media/sha256.ts'

type Drawn = { width: number; height: number; closed: number; close(): void }

const drawn = (width: number, height: number): Drawn => ({
  width,
  height,
  closed: 0,
  close() {
    this.closed += 1
  }
})

/** A browser that sees this picture in every file; what it draws names the size. */
const tools = (bitmap: Drawn | null): PictureTools<Drawn> => ({
  decode: async () => {
    if (bitmap === null) throw new DOMException('no picture', 'InvalidStateError')
    return bitmap
  },
  encode: async (_, width, height) => new Blob([`${width}x${height}`], { type: 'image/jpeg' })
})

const file = (size = 10, type = 'image/jpeg', name = 'bath.jpg'): File => {
  const made = new File(['x'.repeat(Math.min(size, 10))], name, { type })
  if (size > 10) Object.defineProperty(made, 'size', { value: size })
  return made
}

describe('a picture that is kept', () => {
  it('has at most 2 megapixels and its own shape, whatever came from the camera', () => {
    const side = fc.integer({ min: 1, max: 60_000 })
    fc.assert(
      fc.property(side, side, (width, height) => {
        const { widthPx, heightPx } = fitted(width, height, 2_000_000)
        expect(widthPx * heightPx).toBeLessThanOrEqual(2_000_000)
        expect(widthPx).toBeLessThanOrEqual(width)
        expect(heightPx).toBeLessThanOrEqual(height)
        // Each side is rounded down by less than a pixel.
        const scale = Math.max((widthPx + 1) / width, (heightPx + 1) / height)
        expect(widthPx).toBeLessThanOrEqual(Math.max(1, width * scale))
        expect(Math.abs(widthPx * height - heightPx * width)).toBeLessThanOrEqual(Math.max(width, height))
      }),
      { seed: 20310614 }
    )
  })

  it.each([
    [4000, 3000, 1632, 1224],
    [3000, 4000, 1224, 1632],
    [800, 600, 800, 600],
    [2000, 1000, 2000, 1000]
  ])('of %i x %i becomes %i x %i', (width, height, widthPx, heightPx) => {
    expect(fitted(width, height, 2_000_000)).toEqual({ widthPx, heightPx })
  })

  it('is named by the SHA-256 of the bytes that are kept, not of those that came', async () => {
    const bitmap = drawn(4000, 3000)
    const read = await readPhoto(file(), 2_000_000, tools(bitmap))
    const sha256 = createHash('sha256').update('1632x1224').digest('hex')
    expect(read).toMatchObject({ ok: true, photo: { sha256, mime: 'image/jpeg', widthPx: 1632, heightPx: 1224 } })
    expect(bitmap.closed).toBe(1)
  })

  it.each([
    ['0 bytes', file(0), tools(drawn(4, 3)), /bath.jpg is empty/],
    ['more than 40 MB', file(40_000_001), tools(drawn(4, 3)), /41 MB.*at most 40 MB/],
    ['a text', file(9, 'text/plain', 'list.txt'), tools(null), /list.txt is not kept. It is not a picture/],
    ['a picture no browser reads', file(9, 'image/heic', 'b.heic'), tools(null), /can’t read it. Choose a JPEG or PNG/]
  ])('is not made of %s, and the person is told so', async (_, given, with_, say) => {
    expect(await readPhoto(given, 2_000_000, with_)).toEqual({ ok: false, say: expect.stringMatching(say) })
  })

  it('says so when the device can’t draw it, and gives the memory back', async () => {
    const bitmap = drawn(4000, 3000)
    const broken = { ...tools(bitmap), encode: async () => new Blob([]) }
    expect(await readPhoto(file(), 2_000_000, broken)).toMatchObject({ ok: false, say: /can’t be made smaller/ })
    expect(bitmap.closed).toBe(1)
  })
})

describe('the bytes of a picture', () => {
  // NIST, FIPS 180-4 example "abc" (CSRC example values, SHA-256, one-block message).
  it('are named as the standard says', async () => {
    const abc = new TextEncoder().encode('abc').buffer as ArrayBuffer
    expect(await sha256Of(abc)).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')
  })

  it('come back whole from the lines of a rescue file', () => {
    const bytes = Uint8Array.from({ length: 20_000 }, (_, at) => at % 251)
    const [line] = mediaLines([{ sha256: 'a'.repeat(64), mime: 'image/jpeg', bytes: bytes.buffer }])
    const read = JSON.parse(line ?? '')
    expect(new Uint8Array(Buffer.from(read.base64, 'base64'))).toEqual(bytes)
    expect(read.mime).toBe('image/jpeg')
  })
})
