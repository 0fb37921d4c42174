// Batches with photos in their journal, and the bytes of those.
import { createHash } from 'node:crypto'
import jpeg from 'jpeg-js'
import type { Page } from 'playwright-core'
import type { PotEvent } from '../../../src/core/pot/events.ts'
import type { PhotoMedia } from '../../../src/core/pot/media.ts'
import { REAL } from './journal.ts'
import { dyed, type KeptBatch } from './kept-batches.ts'
import { idOf, recordFrom, short } from './printing.ts'

export type Picture = { media: PhotoMedia; base64: string }

/** Pure red with a line that tells one from another: nothing else on a sheet is red. */
function picture(no: number): Picture {
  const [width, height] = [64, 48]
  const data = Buffer.alloc(width * height * 4, 255)
  for (let i = 0; i < width * height; i++) data.set(i % width === no % width ? [120, 0, 0] : [230, 0, 0], i * 4)
  const bytes = jpeg.encode({ data, width, height }, 90).data
  const sha256 = createHash('sha256').update(bytes).digest('hex')
  const media = { sha256, mime: 'image/jpeg', bytes: bytes.length, widthPx: width, heightPx: height }
  return { media, base64: Buffer.from(bytes).toString('base64') }
}

export const pictures = Array.from({ length: 60 }, (_, no) => picture(no))

const steps = recordFrom(short).steps.filter(({ path }, i, all) => all.findIndex((one) => one.path === path) === i)
const noted = (count: number): PotEvent[] =>
  pictures.slice(0, count).map(({ media }, no) => ({
    type: 'PhotoNoted',
    path: steps[no % steps.length]?.path ?? null,
    what: `sight ${no} end`,
    media
  }))

const pot = (colourway: string) => ({ colourway, batchName: `2026-06-15 ${colourway}`, by: 'dyer A' })
const startMs = Date.UTC(2026, 5, 15, 7)
const readings = Array.from(
  { length: 200 },
  (_, i): PotEvent => ({ type: 'TemperatureRead', path: null, tempC: 41 + i / 10, inRange: null })
)
const letGo: PotEvent = { type: 'MediaTrimmed', sha256: pictures[4]?.media.sha256 ?? '', why: 'to make room' }

/** Six photos, of which one was let go. */
export const pictured = dyed({ potId: idOf(5), startMs, pot: pot('Pictured'), more: [...noted(6), letGo] })
/** More photos, and more of everything, than three pages hold. */
export const album = dyed({
  potId: idOf(6),
  startMs: startMs + 60_000,
  pot: pot('Album'),
  more: [...readings, ...noted(60)]
})

/** Into the store of pictures, past the app, as named by these batches. */
export function keepPictures(page: Page, all: readonly Picture[], batches: readonly KeptBatch[]): Promise<void> {
  const streamIds = batches.map(({ potId }) => `pot/${potId}`)
  return page.evaluate(
    async ({ name, all, streamIds }) => {
      const database = await new Promise<IDBDatabase>((resolve, reject) => {
        const request = indexedDB.open(name)
        request.onsuccess = () => resolve(request.result)
        request.onerror = () => reject(request.error)
      })
      const write = database.transaction(['media'], 'readwrite')
      for (const { media, base64 } of all) {
        const bytes = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0)).buffer
        const { sha256, mime } = media
        write.objectStore('media').put({ sha256, mime, bytes, size: bytes.byteLength, storedAtMs: 1, streamIds })
      }
      await new Promise<void>((resolve, reject) => {
        write.oncomplete = () => resolve()
        write.onerror = () => reject(write.error)
      })
      database.close()
    },
    { name: REAL, all, streamIds }
  )
}
