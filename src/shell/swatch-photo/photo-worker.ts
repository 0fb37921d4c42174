// Reads pictures of swatches beside the page: decodes them at full size, makes the smaller one that is kept, and reads the
// marked places. A picture of 12 megapixels takes 48 MB as pixels, so only the last one stays open; and of its pixels only
// those under marks are fetched, for fetching all takes longer than the decoding.
import { type Marks, type Patch, type Photo, readPhoto } from '../../core/colour/index.ts'
import { PHOTO_PIXELS_MOST } from '../../core/pot/media.ts'
import { fitted } from '../media/photo.ts'
import { sha256Of } from '../media/sha256.ts'
import type { Asked, Told } from './photo-desk.ts'

const JPEG_QUALITY = 0.85

const files = new Map<string, Blob>()
let last: { id: string; bitmap: ImageBitmap; photo: Photo } | null = null

/** One picture is decoded at a time; what was asked for meanwhile waits for it. */
let decoding: Promise<unknown> = Promise.resolve()
function inTurn<T>(work: () => Promise<T>): Promise<T> {
  const done = decoding.then(work)
  decoding = done.catch(() => {})
  return done
}

addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  const answer = 'file' in data ? open(data.id, data.file) : inTurn(() => read(data.id, data.marks))
  answer.then(
    (told) => postMessage({ no: data.no, told } satisfies Told),
    (error: unknown) => postMessage({ no: data.no, failed: String(error) } satisfies Told)
  )
})

async function open(id: string, file: Blob) {
  files.set(id, file)
  const bitmap = await inTurn(() => decoded(id, file))
  const [widthPx, heightPx] = [bitmap.width, bitmap.height]
  const small = await inTurn(() => smaller(id, file))
  const { sha256, mime, bytes } = small
  return { widthPx, heightPx, media: { ...small, bytes: bytes.byteLength }, bytes: { sha256, mime, bytes } }
}

/** The one that is shown and kept. */
async function smaller(id: string, file: Blob) {
  const bitmap = await decoded(id, file)
  const { widthPx, heightPx } = fitted(bitmap.width, bitmap.height, PHOTO_PIXELS_MOST)
  const small = new OffscreenCanvas(widthPx, heightPx)
  const pen = small.getContext('2d')
  if (pen === null) throw new Error('no canvas')
  // A JPEG has no holes: what is see-through becomes paper and not black.
  pen.fillStyle = 'white'
  pen.fillRect(0, 0, widthPx, heightPx)
  pen.imageSmoothingQuality = 'high'
  pen.drawImage(bitmap, 0, 0, widthPx, heightPx)
  const blob = await small.convertToBlob({ type: 'image/jpeg', quality: JPEG_QUALITY })
  const bytes = await blob.arrayBuffer()
  return { sha256: await sha256Of(bytes), mime: blob.type, bytes, widthPx, heightPx }
}

async function read(id: string, marks: Marks) {
  const file = files.get(id)
  if (!file) throw new Error('the picture is no longer open')
  await decoded(id, file)
  if (last === null) throw new Error('the picture is no longer open')
  const { bitmap, photo } = last
  const patches = [marks.grey, ...marks.undyed, ...marks.series, ...marks.skein.map(({ patch }) => patch)]
  const most = Math.ceil(Math.max(...patches.map(reachOf))) * 2 + 2
  // Kept by the processor: pixels that come back from the graphics card take longer than the decoding.
  const pen = new OffscreenCanvas(Math.min(most, photo.width), Math.min(most, photo.height)).getContext('2d', {
    willReadFrequently: true
  })
  if (pen === null) throw new Error('no canvas')
  for (const patch of patches) fetchPixels(pen, bitmap, photo, patch)
  return readPhoto(photo, marks)
}

/** Upright. Decoded anew where another picture was looked at since. */
async function decoded(id: string, file: Blob): Promise<ImageBitmap> {
  if (last?.id === id) return last.bitmap
  const bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' })
  last?.bitmap.close()
  const { width, height } = bitmap
  last = { id, bitmap, photo: { data: new Uint8ClampedArray(width * height * 4), width, height } }
  return bitmap
}

/** Of its corners, with a pixel to spare. */
const reachOf = ({ halfLong, halfWide }: Patch): number => Math.hypot(halfLong, halfWide) + 1

/** The upright rectangle about a patch, into its place in the picture. */
function fetchPixels(
  pen: OffscreenCanvasRenderingContext2D,
  bitmap: ImageBitmap,
  { data, width, height }: Photo,
  patch: Patch
): void {
  const { x, y } = patch
  const reach = reachOf(patch)
  const [left, top] = [Math.max(0, Math.floor(x - reach)), Math.max(0, Math.floor(y - reach))]
  const wide = Math.min(width, Math.ceil(x + reach)) - left
  const high = Math.min(height, Math.ceil(y + reach)) - top
  if (!(wide > 0 && high > 0)) return
  // A see-through place must not show what was drawn before.
  pen.clearRect(0, 0, wide, high)
  pen.drawImage(bitmap, left, top, wide, high, 0, 0, wide, high)
  const pixels = pen.getImageData(0, 0, wide, high).data
  for (let row = 0; row < high; row++) {
    data.set(pixels.subarray(row * wide * 4, (row + 1) * wide * 4), ((top + row) * width + left) * 4)
  }
}
