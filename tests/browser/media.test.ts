import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, FileChooser, Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { MediaBytes, PhotoMedia, VoiceMedia } from '../../src/core/pot/media.ts'
import { launchChromium } from '../../src/desk/bench/chromium.ts'
import { type Host, hostOf } from '../../src/desk/bench/host.ts'
import type { Kitchen } from '../../src/ui/kitchen.ts'
import { violations } from './stage/axe.ts'
import { startPot } from './stage/dyer.ts'
import { REHEARSAL, storedIn } from './stage/journal.ts'
import { press, pressUntilGone, pressUntilThere } from './stage/press.ts'
import { type Visit, watch } from './stage/stage.ts'

/** The app's own policy is in force here, so axe comes in by the debugger's door. */
/** A camera's picture: 12 megapixels, red above and blue below, marked by the camera as lying on its side where
 * `turned`: seen upright it is 3000 wide and 4000 high, blue on its left. */
async function jpeg(page: Page, turned: boolean): Promise<Buffer> {
  const base64 = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(4000, 3000)
    const pen = canvas.getContext('2d')
    if (pen === null) throw new Error('no canvas')
    pen.fillStyle = 'rgb(200, 30, 30)'
    pen.fillRect(0, 0, 4000, 1500)
    pen.fillStyle = 'rgb(30, 30, 200)'
    pen.fillRect(0, 1500, 4000, 1500)
    const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.9 })
    const bytes = new Uint8Array(await blob.arrayBuffer())
    let text = ''
    for (let at = 0; at < bytes.length; at += 8_192) text += String.fromCharCode(...bytes.subarray(at, at + 8_192))
    return btoa(text)
  })
  const plain = Buffer.from(base64, 'base64')
  return turned ? Buffer.concat([plain.subarray(0, 2), exif(), plain.subarray(2)]) : plain
}

/** An APP1 segment as Exif 2.3 has it: orientation 6 (turn right by 90 degrees), and a text that must not be kept. */
function exif(): Buffer {
  const tiff = Buffer.alloc(8 + 2 + 2 * 12 + 4 + 16)
  tiff.write('MM', 0)
  tiff.writeUInt16BE(42, 2)
  tiff.writeUInt32BE(8, 4)
  tiff.writeUInt16BE(2, 8)
  const entry = (at: number, tag: number, type: number, count: number): void => {
    tiff.writeUInt16BE(tag, at)
    tiff.writeUInt16BE(type, at + 2)
    tiff.writeUInt32BE(count, at + 4)
  }
  entry(10, 0x0112, 3, 1)
  tiff.writeUInt16BE(6, 18)
  entry(22, 0x010e, 2, 16)
  tiff.writeUInt32BE(38, 30)
  tiff.write('somebodys place\0', 38)
  const body = Buffer.concat([Buffer.from('Exif\0\0'), tiff])
  const head = Buffer.from([0xff, 0xe1, 0, 0])
  head.writeUInt16BE(body.length + 2, 2)
  return Buffer.concat([head, body])
}

type Row = Omit<MediaBytes, 'bytes'> & { size: number; streamIds: string[]; text: string }

/** The media store as it lies on the disk. */
function mediaIn(page: Page): Promise<Row[]> {
  return page.evaluate(async (name) => {
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const request = indexedDB.open(name)
      request.onsuccess = () => resolve(request.result)
      request.onerror = () => reject(request.error)
    })
    const rows = await new Promise<(Row & { bytes: ArrayBuffer })[]>((resolve, reject) => {
      const request = database.transaction('media').objectStore('media').getAll()
      request.onsuccess = () => resolve(request.result)
      request.onerror = () => reject(request.error)
    })
    database.close()
    return rows.map(({ bytes, ...row }) => ({ ...row, text: new TextDecoder('latin1').decode(bytes) }))
  }, REHEARSAL)
}

/** Another pot of the same programme, whose first call comes at once. */
function startAnother(page: Page): Promise<unknown> {
  return page.evaluate(() => {
    const { kitchen } = (globalThis as unknown as { strandlineRehearsal: { kitchen: Kitchen } }).strandlineRehearsal
    const state = kitchen.pots.value[0]?.state
    if (!state || state.status === 'idle') throw new Error('no pot')
    const { protocol, programme } = state
    const pot = { ...state.pot, potId: kitchen.newId(), colourway: 'Plum', letter: 'P' }
    return kitchen.start({ pot, protocol, programme, checks: [], cautionsShown: [] })
  })
}

type Named = { type: string; what?: string; media?: Partial<PhotoMedia & VoiceMedia> }

/** What of the entries about media lies in the journal. */
async function namedIn(page: Page): Promise<Named[]> {
  const { entries } = await storedIn(page, REHEARSAL)
  const kinds = ['PhotoNoted', 'VoiceNoted', 'MediaTrimmed']
  return entries.map(({ event }) => event as Named).filter(({ type }) => kinds.includes(type))
}

/** What colour the left and the right half of a picture have. */
function coloursOf(picture: Locator): Promise<string[]> {
  return picture.evaluate((image: HTMLImageElement) => {
    const canvas = new OffscreenCanvas(image.naturalWidth, image.naturalHeight)
    const pen = canvas.getContext('2d')
    pen?.drawImage(image, 0, 0)
    return [0.25, 0.75].map((part) => {
      const [red = 0, , blue = 0] =
        pen?.getImageData(image.naturalWidth * part, image.naturalHeight / 2, 1, 1).data ?? []
      return red > blue ? 'red' : 'blue'
    })
  })
}

/** A finger that lies on the pad until the sheet is gone. */
async function holdUntil(page: Page, hold: Locator, gone: Locator): Promise<void> {
  await hold.scrollIntoViewIfNeeded()
  await hold.hover()
  await page.mouse.down()
  await gone.waitFor({ state: 'detached' })
  await page.mouse.up()
}

describe('pictures and voice notes', () => {
  let host: Host
  let browser: Browser
  let visit: Visit
  let page: Page
  const dialog = (): Locator => page.getByRole('dialog')
  const pad = (name: string | RegExp): Locator => dialog().getByRole('button', { name })

  beforeAll(async () => {
    host = await hostOf(process.env.STRANDLINE_DIST ?? '')
    // A microphone that hums by itself, and nobody asked whether it may.
    const fake = ['--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream']
    browser = await launchChromium(process.env.CHROME_PATH, [...fake, '--autoplay-policy=no-user-gesture-required'])
    const size = { viewport: { width: 412, height: 915 }, hasTouch: true, isMobile: true, locale: 'en-GB' } as const
    visit = await watch(await browser.newContext(size), host)
    page = visit.page
    await page.goto(`${host.address}?rehearse`)
    await startPot(page, { title: 'Dip gradient', colourway: 'Moss', massG: 100 })
    const call = page.locator('.call')
    await call.waitFor()
    await pressUntilGone(call.getByRole('button', { name: 'See pots' }), call)
  })
  afterAll(async () => {
    await browser?.close()
    await host?.stop()
  })

  const openSheet = async (name: string): Promise<void> => {
    const there = page.locator('.sheet h2', { hasText: name === 'Photo' ? 'Moss: photo' : 'Moss: voice note' })
    await pressUntilThere(page.getByRole('button', { name: 'Moss: more' }), dialog())
    await pressUntilThere(pad(new RegExp(`^${name}$`)), there)
  }
  const choose = async (from: Locator, file: Parameters<FileChooser['setFiles']>[0]): Promise<void> => {
    let chooser: FileChooser | null = null
    page.once('filechooser', (opened) => {
      chooser = opened
    })
    await press(from, async () => chooser !== null)
    await (chooser as FileChooser | null)?.setFiles(file)
  }

  it('a file that is no picture is refused in words, and nothing is kept', async () => {
    await openSheet('Photo')
    const text = { name: 'list.txt', mimeType: 'text/plain', buffer: Buffer.from('two skeins') }
    await choose(pad('From a file'), text)
    await dialog().getByText('list.txt is not kept. It is not a picture.').waitFor()
    const empty = { name: 'empty.jpg', mimeType: 'image/jpeg', buffer: Buffer.alloc(0) }
    await choose(pad('From a file'), empty)
    await dialog().getByText('empty.jpg is empty').waitFor()
    const folder = mkdtempSync(join(tmpdir(), 'strandline-photo-'))
    writeFileSync(join(folder, 'large.jpg'), Buffer.alloc(40_000_001, 1))
    await choose(pad('From a file'), join(folder, 'large.jpg'))
    await dialog().getByText('A picture may have at most 40 MB').waitFor()
    rmSync(folder, { recursive: true })
    expect(await namedIn(page)).toEqual([])
    expect(await mediaIn(page)).toEqual([])
    expect(await violations(page)).toEqual([])
  })

  it('a picture of 12 megapixels is kept upright with at most 2, without what the camera wrote beside it', async () => {
    const turned = await jpeg(page, true)
    expect(turned.includes('somebodys place')).toBe(true)
    await choose(pad('Camera'), { name: 'bath.jpg', mimeType: 'image/jpeg', buffer: turned })
    await dialog().locator('.photo-preview img').waitFor()
    expect(await violations(page)).toEqual([])
    await pressUntilGone(pad('Moss: keep the picture'), dialog())
    const [event] = await namedIn(page)
    expect(event).toMatchObject({ type: 'PhotoNoted', what: 'bath', media: { widthPx: 1224, heightPx: 1632 } })
    const [stored, ...more] = await mediaIn(page)
    expect(more).toEqual([])
    expect(stored).toMatchObject({ mime: 'image/jpeg', sha256: event?.media?.sha256 })
    expect(stored?.text).not.toContain('somebodys place')
    expect(stored?.text).not.toContain('Exif')
  })

  it('a short voice note is recorded with the same pad, and the microphone is shut afterwards', async () => {
    await openSheet('Voice note')
    expect(await violations(page)).toEqual([])
    const speak = pad('Moss: speak')
    const end = pad('Moss: end the note')
    await pressUntilThere(speak, end)
    await dialog().getByText('Microphone open').waitFor()
    expect(await violations(page)).toEqual([])
    // Two seconds of it: the countdown says when.
    await page.waitForFunction(() => /^2[0-8] s$/.test(document.querySelector('.voice-left')?.textContent ?? ''))
    await press(end, async () => (await end.count()) === 0)
    await dialog().getByText('Written down').waitFor()
    const voice = (await namedIn(page)).find(({ type }) => type === 'VoiceNoted')
    const { lengthMs = 0, bytes, sha256 } = voice?.media ?? {}
    expect(lengthMs).toBeGreaterThan(1_000)
    expect(lengthMs).toBeLessThan(30_000)
    expect((await mediaIn(page)).find((row) => row.sha256 === sha256)?.size).toBe(bytes)
    await pressUntilGone(pad('Done'), dialog())
  })

  it('both stand in the Dye book at their step and time, and the note plays', async () => {
    await page.evaluate(() => (location.hash = '#/dye-book'))
    await page.getByRole('link', { name: /Moss/ }).first().tap()
    const picture = page.getByRole('img', { name: /^Moss, .*\d\d:\d\d, bath$/ })
    await picture.waitFor()
    // Blue on the left, red on the right: it was turned as the camera said.
    expect(await coloursOf(picture)).toEqual(['blue', 'red'])
    const audio = page.locator('audio')
    await audio.evaluate((each: HTMLAudioElement) => each.play())
    await page.waitForFunction(() => (document.querySelector('audio')?.currentTime ?? 0) > 0.3)
    expect(await violations(page)).toEqual([])
    await pressUntilThere(page.locator('.book-thumb'), dialog().locator('.book-large'))
    expect(await violations(page)).toEqual([])
    await page.keyboard.press('Escape')
    await dialog().waitFor({ state: 'detached' })
  })

  it('a reload keeps them, and Settings tell what they take', async () => {
    await page.reload()
    await page.getByRole('img', { name: /^Moss, .*bath$/ }).waitFor()
    await page.locator('audio').waitFor()
    await page.evaluate(() => (location.hash = '#/settings'))
    await page.getByText(/1 photo, \d+\skB, and 1 voice note, \d+\skB/).waitFor()
    expect(await violations(page)).toEqual([])
  })

  it('a picture let go by a held pad is gone from the store, and the record says that it was there', async () => {
    await page.evaluate(() => history.back())
    await pressUntilThere(page.locator('.book-thumb'), dialog().locator('.book-large'))
    await dialog().getByText('Let it go', { exact: true }).tap()
    const hold = pad(/Let this picture go/)
    await hold.scrollIntoViewIfNeeded()
    await holdUntil(page, hold, dialog())
    await page.getByText('Let go: to make room').waitFor()
    expect((await mediaIn(page)).map(({ mime }) => mime.split('/')[0])).toEqual(['audio'])
    expect((await namedIn(page)).map(({ type }) => type)).toEqual(['PhotoNoted', 'VoiceNoted', 'MediaTrimmed'])
    expect(await violations(page)).toEqual([])
  })

  it('a call that comes while a note is spoken takes the screen; the note goes on and is kept', async () => {
    await page.evaluate(() => (location.hash = '#/stove'))
    const call = page.locator('.call')
    await call.waitFor()
    await pressUntilGone(call.getByRole('button', { name: 'See pots' }), call)
    await openSheet('Voice note')
    await pressUntilThere(pad('Moss: speak'), pad('Moss: end the note'))
    const before = (await namedIn(page)).length
    await startAnother(page)
    await call.waitFor()
    await dialog().waitFor({ state: 'detached' })
    expect(await page.locator('.call-pot').textContent()).toContain('Plum')
    const strip = page.locator('.strip', { hasText: 'Moss: microphone open' })
    await strip.waitFor()
    expect(await violations(page)).toEqual([])
    await pressUntilGone(strip.getByRole('button', { name: /End the voice note/ }), strip)
    await page.locator('.strip', { hasText: 'voice note written down' }).waitFor()
    const after = await namedIn(page)
    expect([after.length, after.at(-1)?.type]).toEqual([before + 1, 'VoiceNoted'])
    await pressUntilGone(call.getByRole('button', { name: 'See pots' }), call)
    await dialog().getByText('Written down').or(pad('Moss: speak')).first().waitFor()
  })

  it('nothing was asked of any other place, and the browser complained of nothing', () => {
    expect(visit.elsewhere()).toEqual([])
    expect(visit.complaints).toEqual([])
  })
})
