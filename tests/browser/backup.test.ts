import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { PotCommand } from '../../src/core/pot/commands.ts'
import type { Kitchen } from '../../src/ui/kitchen.ts'
import { violations } from './stage/axe.ts'
import { keepFile } from './stage/dyer.ts'
import { holdPad } from './stage/hold.ts'
import { REHEARSAL, storedIn } from './stage/journal.ts'
import { press, pressUntilGone, pressUntilThere } from './stage/press.ts'
import { openStage, type Stage, type Visit } from './stage/stage.ts'

const turns = `strandline: 1
title: Three turns
steps:
- do: {say: Turn once, done: turned}
- do: {say: Turn twice, done: turned}
- do: {say: Turn again, done: turned}
`

type Handle = { strandlineRehearsal: { kitchen: Kitchen } }

const folder = mkdtempSync(join(tmpdir(), 'strandline-backup-'))

/** From the page of the protocol that was kept: a method without cups has one pad to press, or two where a lamp is out. */
async function startPlum(page: Page): Promise<void> {
  await pressUntilThere(page.getByRole('button', { name: 'Start a pot' }), page.getByLabel('Colourway'))
  await page.getByLabel('Colourway').fill('Plum')
  await page.getByLabel('Dry weight').first().fill('100')
  const sheet = page.getByRole('dialog', { name: 'Before the heat' })
  await pressUntilThere(page.getByRole('button', { name: 'Start', exact: true }), sheet.or(page.locator('.stove')))
  if (await sheet.isVisible()) await pressUntilGone(sheet.getByRole('button', { name: /^Start/ }), sheet)
  await page.locator('.stove').waitFor()
}

async function send(page: Page, command: PotCommand): Promise<void> {
  const sent = await page.evaluate(async (told) => {
    const { kitchen } = (globalThis as unknown as Handle).strandlineRehearsal
    const [line] = await kitchen.book(0, Number.MAX_SAFE_INTEGER)
    return kitchen.send(line?.potId ?? '', told)
  }, command)
  expect(sent).toEqual({ ok: true })
}

/** A picture drawn here, noted with its bytes as the camera's are. */
async function notePicture(page: Page): Promise<void> {
  const sent = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(320, 240)
    const pen = canvas.getContext('2d')
    if (pen !== null) pen.fillStyle = 'rgb(90, 30, 120)'
    pen?.fillRect(0, 0, 320, 240)
    const file = new File([await canvas.convertToBlob({ type: 'image/jpeg' })], 'bath.jpg', { type: 'image/jpeg' })
    const { kitchen } = (globalThis as unknown as Handle).strandlineRehearsal
    const read = await kitchen.media?.readPhoto(file)
    if (!read?.ok) return read
    const { bytes, widthPx, heightPx, ...photo } = read.photo
    const media = { ...photo, bytes: bytes.byteLength, widthPx, heightPx }
    const potId = kitchen.pots.value[0]?.potId ?? ''
    return kitchen.send(potId, { type: 'NotePhoto', what: 'the bath', media }, { media: [{ ...photo, bytes }] })
  })
  expect(sent).toEqual({ ok: true })
}

/** Afresh: what the last visit said must not be taken for an answer of this one. */
async function openBackup(page: Page): Promise<void> {
  await page.evaluate(() => (location.hash = '#/settings'))
  await page.getByRole('heading', { name: 'Settings' }).waitFor()
  await page.evaluate(() => (location.hash = '#/settings/backup'))
  await page.getByRole('button', { name: 'Back up now' }).waitFor()
}

async function backUp(page: Page, name: string): Promise<string> {
  await openBackup(page)
  const download = page.waitForEvent('download', { timeout: 60_000 })
  await pressUntilThere(page.getByRole('button', { name: 'Back up now' }), page.getByText(/^Backed up: /))
  const path = join(folder, name)
  await (await download).saveAs(path)
  return path
}

async function look(page: Page, path: string): Promise<void> {
  await openBackup(page)
  await page.getByLabel('Choose a backup to look at').setInputFiles(path)
}

async function bringIn(page: Page): Promise<void> {
  const pad = page.getByRole('button', { name: /Bring it in/ })
  await pad.waitFor()
  const done = page.getByText(/^In: /)
  const until = Date.now() + 40_000
  while ((await done.count()) === 0 && Date.now() < until) {
    await holdPad(pad)
    await done.waitFor({ timeout: 1_500 }).catch(() => {})
  }
  await done.waitFor()
}

async function openRecord(page: Page): Promise<void> {
  await page.evaluate(() => (location.hash = '#/dye-book'))
  await page.locator('.book-line a').first().click()
  await page.locator('.book-head').waitFor()
}

/** Everything of the journal that a backup brings: entries and lines. */
const journal = async (page: Page): Promise<unknown> => {
  const { summaries } = await storedIn(page, REHEARSAL)
  return { entries: await entriesOf(page), summaries }
}

/** As words: a file knows no minus zero, which is what Greenwich's offset comes as. */
const entriesOf = async (page: Page): Promise<string[]> =>
  (await storedIn(page, REHEARSAL)).entries.map((entry) => JSON.stringify(entry))

describe('a backup from one device to another', () => {
  let stage: Stage
  let phone: Visit
  let tablet: Visit
  let first = ''
  beforeAll(async () => {
    stage = await openStage()
    // The picker can't be worked by a driver: without it a browser hands the file to its downloads.
    const open = async (): Promise<Visit> => {
      const visit = await stage.visit({ bypassCSP: true, acceptDownloads: true })
      await visit.page.addInitScript(() => {
        delete (globalThis as { showSaveFilePicker?: unknown }).showSaveFilePicker
      })
      await visit.page.goto(`${stage.host.address}?rehearse#/protocols`)
      return visit
    }
    phone = await open()
    tablet = await open()
  })
  afterAll(async () => {
    await stage?.close()
    rmSync(folder, { recursive: true, force: true })
  })

  it('brings a running batch with its photo, calls nothing there, and says where the batch was', async () => {
    await keepFile(phone.page, 'turns.yaml', turns)
    await startPlum(phone.page)
    await notePicture(phone.page)
    first = await backUp(phone.page, 'first.strandline-backup')
    expect(await violations(phone.page)).toEqual([])
    expect(readFileSync(first, 'latin1').split('\n', 1)[0]).toBe('strandline-backup 1')

    const { page } = tablet
    await page.evaluate(() => (location.hash = '#/dye-book'))
    await pressUntilThere(page.getByRole('button', { name: 'Restore a backup' }), page.getByText('Choose a backup'))
    await look(page, first)
    await page.getByText('New here: 1 batch: Plum (Today).').waitFor()
    await page.getByText('1 photo or voice note').waitFor()
    await page.getByText(/On the stove of another device when this was saved: Plum/).waitFor()
    expect(await violations(page)).toEqual([])
    await bringIn(page)
    expect(await entriesOf(page)).toEqual(await entriesOf(phone.page))
    await openRecord(page)
    await page.getByText(/Nothing of it calls here/).waitFor()
    await page.locator('.book-thumb img').waitFor()
    const seen = await page.locator('.book-thumb img').evaluate((image: HTMLImageElement) => image.naturalWidth)
    expect(seen).toBe(320)
    expect(await violations(page)).toEqual([])
    // A reload later nothing of it is on the Stove.
    await page.goto(`${stage.host.address}?rehearse#/stove`)
    await page
      .getByText('No pots on')
      .or(page.getByRole('button', { name: 'Start a pot' }))
      .first()
      .waitFor()
    expect(await page.locator('.call').count()).toBe(0)
  })

  it('carried on on both and merged both ways shows both branches on both', async () => {
    const { page } = tablet
    await openRecord(page)
    await pressUntilThere(page.getByRole('button', { name: 'Carry on here' }), page.locator('.call'))
    await send(page, { type: 'Abort', reason: 'the tablet ran dry' })
    await send(phone.page, { type: 'Abort', reason: 'the phone ran dry' })
    const fromTablet = await backUp(page, 'tablet.strandline-backup')
    const fromPhone = await backUp(phone.page, 'phone.strandline-backup')
    for (const [on, file] of [
      [phone.page, fromTablet],
      [page, fromPhone]
    ] as const) {
      await look(on, file)
      await on.getByText(/Continued on two devices: Plum/).waitFor()
      await bringIn(on)
    }
    expect(await journal(page)).toEqual(await journal(phone.page))
    for (const on of [page, phone.page]) {
      await openRecord(on)
      await on.getByText(/This batch was continued on 2 devices/).waitFor()
      const way = async (): Promise<string> => (await on.locator('.book-head').textContent()) ?? ''
      const one = await way()
      await press(on.getByRole('button', { name: 'Branch 2' }), async () => (await way()) !== one)
      const both = [one, await way()].map((text) => /Ended early: the (\w+) ran dry/.exec(text)?.[1])
      expect(both.sort()).toEqual(['phone', 'tablet'])
      expect(await violations(on)).toEqual([])
    }
    // Once more brings nothing.
    await look(page, fromPhone)
    await page.getByText('Everything in it is here already.').waitFor()
    expect([...phone.complaints, ...tablet.complaints]).toEqual([])
  })

  it('cut short, changed by one bit, or of a newer version is refused with what is safe to do, and changes nothing', async () => {
    const { page } = tablet
    const before = await journal(page)
    const whole = readFileSync(first)
    const flipped = Buffer.from(whole)
    const at = whole.length >> 1
    flipped[at] = (flipped[at] ?? 0) ^ 4
    const wrong: [Buffer, RegExp][] = [
      [whole.subarray(0, whole.length - 200), /cut short.*Nothing on this device was changed.*earlier backup/],
      [flipped, /changed or damaged near byte.*Nothing on this device was changed.*earlier backup/],
      [Buffer.concat([Buffer.from('strandline-backup 2'), whole.subarray(19)]), /version 2.*Keep the file/]
    ]
    for (const [no, [bytes, says]] of wrong.entries()) {
      const path = join(folder, `wrong-${no}`)
      writeFileSync(path, bytes)
      await look(page, path)
      await page.getByRole('alert').filter({ hasText: says }).waitFor()
    }
    expect(await violations(page)).toEqual([])
    expect(await journal(page)).toEqual(before)
  })

  it('goes straight into a chosen file where the browser has a picker, and is read back from there', async () => {
    const { page } = phone
    await page.evaluate(() => {
      const chosen = async () => (await navigator.storage.getDirectory()).getFileHandle('chosen', { create: true })
      Object.assign(globalThis, { showSaveFilePicker: chosen })
    })
    await openBackup(page)
    await pressUntilThere(
      page.getByRole('button', { name: 'Back up now' }),
      page.getByText(/read back and whole.*It is in/)
    )
    const size = await page.evaluate(async () => {
      const handle = await (await navigator.storage.getDirectory()).getFileHandle('chosen')
      return (await handle.getFile()).size
    })
    expect(size).toBeGreaterThan(1_000)
    await page.getByText(/Last backup: Today/).waitFor()
  })

  it('offers photos first to make room, and lets them go with the entry kept', async () => {
    const { page } = phone
    await openBackup(page)
    const pad = page.getByRole('button', { name: /^Let go: Plum/ })
    await pad.waitFor()
    const until = Date.now() + 40_000
    while ((await pad.count()) > 0 && Date.now() < until) await holdPad(pad)
    await page.getByText('No photos or voice notes of ended batches are kept.').waitFor()
    const { entries } = await storedIn(page, REHEARSAL)
    const types = entries.map(({ event }) => event.type)
    expect(types).toContain('PhotoNoted')
    expect(types).toContain('MediaTrimmed')
  })
})
