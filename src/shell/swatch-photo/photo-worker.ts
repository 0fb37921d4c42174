// Reads pictures of swatches beside the page: decodes them at full size, makes the smaller one that is kept, and reads the
// marked places. A picture of 12 megapixels takes 48 MB as pixels, so only the last one stays open.
import { type Marks, type Photo, readPhoto } from '../../core/colour/index.ts'
import { PHOTO_PIXELS_MOST } from '../../core/pot/media.ts'
import { fitted } from '../media/photo.ts'
import { sha256Of } from '../media/sha256.ts'
import type { Asked, Told } from './photo-desk.ts'

const JPEG_QUALITY = 0.85

const files = new Map<string, Blob>()
let last: { id: string; photo: Photo } | null = null

addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  const answer = 'file' in data ? open(data.id, data.file) : read(data.id, data.marks)
  answer.then(
    (told) => postMessage({ no: data.no, told } satisfies Told),
    (error: unknown) => postMessage({ no: data.no, failed: String(error) } satisfies Told)
  )
})

async function open(id: string, file: Blob) {
  const bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' })
  try {
    const { width, height } = bitmap
    const photo = pixelsOf(bitmap, width, height)
    const { widthPx, heightPx } = fitted(width, height, PHOTO_PIXELS_MOST)
    const small = new OffscreenCanvas(widthPx, heightPx)
    const pen = small.getContext('2d')
    if (pen === null) throw new Error('no canvas')
    pen.imageSmoothingQuality = 'high'
    pen.drawImage(bitmap, 0, 0, widthPx, heightPx)
    const blob = await small.convertToBlob({ type: 'image/jpeg', quality: JPEG_QUALITY })
    const bytes = await blob.arrayBuffer()
    const sha256 = await sha256Of(bytes)
    files.set(id, file)
    last = { id, photo }
    const media = { sha256, mime: blob.type, bytes: bytes.byteLength, widthPx, heightPx }
    return { widthPx: width, heightPx: height, media, bytes: { sha256, mime: blob.type, bytes } }
  } finally {
    bitmap.close()
  }
}

async function read(id: string, marks: Marks) {
  if (last?.id !== id) {
    const file = files.get(id)
    if (!file) throw new Error('the picture is no longer open')
    const bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' })
    last = { id, photo: pixelsOf(bitmap, bitmap.width, bitmap.height) }
    bitmap.close()
  }
  return readPhoto(last.photo, marks)
}

function pixelsOf(bitmap: ImageBitmap, width: number, height: number): Photo {
  // Kept by the processor: pixels that come back from the graphics card take longer than the decoding.
  const pen = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true })
  if (pen === null) throw new Error('no canvas')
  pen.drawImage(bitmap, 0, 0)
  return { data: pen.getImageData(0, 0, width, height).data as Uint8ClampedArray, width, height }
}
