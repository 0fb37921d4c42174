// A picture as it came from a camera, made into the one that is kept: upright, at most so many pixels, a JPEG anew. Drawing
// it again leaves behind what the camera wrote beside it, the place where it was taken too.
import type { MediaBytes } from '../../core/pot/media.ts'
import { sha256Of } from './sha256.ts'

export type ReadyPhoto = MediaBytes & { widthPx: number; heightPx: number }
export type PhotoRead = { ok: true; photo: ReadyPhoto } | { ok: false; say: string }

const FILE_MOST_BYTES = 40_000_000
/** No canvas of a supported browser is refused up to this side. */
const SIDE_MOST_PX = 8_192
const JPEG_QUALITY = 0.85

type Bitmap = { width: number; height: number; close(): void }

/** What the browser does; tests bring their own. */
export type PictureTools<B extends Bitmap = Bitmap> = {
  decode(file: Blob): Promise<B>
  encode(bitmap: B, widthPx: number, heightPx: number): Promise<Blob>
}

export async function readPhoto<B extends Bitmap>(
  file: Blob & { name?: string },
  pixelsMost: number,
  tools: PictureTools<B>
): Promise<PhotoRead> {
  const name = file.name || 'This file'
  if (file.size === 0) return { ok: false, say: `${name} is empty. Take the picture again.` }
  if (file.size > FILE_MOST_BYTES) {
    return { ok: false, say: `${name} has ${Math.ceil(file.size / 1e6)} MB. A picture may have at most 40 MB.` }
  }
  let bitmap: B
  try {
    bitmap = await tools.decode(file)
  } catch {
    const what = file.type.startsWith('image/') ? 'This browser can’t read it' : 'It is not a picture'
    return { ok: false, say: `${name} is not kept. ${what}. Choose a JPEG or PNG picture.` }
  }
  try {
    const { widthPx, heightPx } = fitted(bitmap.width, bitmap.height, pixelsMost)
    const blob = await tools.encode(bitmap, widthPx, heightPx)
    const bytes = await blob.arrayBuffer()
    if (bytes.byteLength === 0) throw new Error('nothing was drawn')
    return { ok: true, photo: { sha256: await sha256Of(bytes), mime: blob.type, bytes, widthPx, heightPx } }
  } catch {
    return { ok: false, say: `${name} can’t be made smaller on this device, so it is not kept. Take a smaller one.` }
  } finally {
    bitmap.close()
  }
}

/** The largest size of the same shape with at most so many pixels; never larger than it was. */
export function fitted(width: number, height: number, pixelsMost: number): { widthPx: number; heightPx: number } {
  const scale = Math.min(1, Math.sqrt(pixelsMost / (width * height)), SIDE_MOST_PX / Math.max(width, height))
  // Rounded down: two sides rounded up would be a row of pixels too many.
  const side = (px: number): number => Math.max(1, Math.floor(px * scale))
  return { widthPx: side(width), heightPx: side(height) }
}

export const browserTools: PictureTools<ImageBitmap> = {
  // Asked for although it is the default: older browsers left a phone's upright picture lying on its side.
  decode: (file) => createImageBitmap(file, { imageOrientation: 'from-image' }),
  encode: async (bitmap, widthPx, heightPx) => {
    const canvas = document.createElement('canvas')
    canvas.width = widthPx
    canvas.height = heightPx
    const pen = canvas.getContext('2d')
    if (pen === null) throw new Error('no canvas')
    // A JPEG has no holes: what is see-through becomes paper and not black.
    pen.fillStyle = 'white'
    pen.fillRect(0, 0, widthPx, heightPx)
    pen.imageSmoothingQuality = 'high'
    pen.drawImage(bitmap, 0, 0, widthPx, heightPx)
    return new Promise((resolve, reject) => {
      const drawn = (blob: Blob | null): void => (blob ? resolve(blob) : reject(new Error('no picture came')))
      canvas.toBlob(drawn, 'image/jpeg', JPEG_QUALITY)
    })
  }
}
