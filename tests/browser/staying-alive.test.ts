import { readFileSync } from 'node:fs'
import type { Download, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { startPot } from './stage/dyer.ts'
import { REHEARSAL, storedIn } from './stage/journal.ts'
import { press, pressUntilGone, pressUntilThere } from './stage/press.ts'
import { openStage, type Stage } from './stage/stage.ts'

let stage: Stage
beforeAll(async () => {
  stage = await openStage()
})
afterAll(() => stage?.close())

const pot = { title: 'Level immersion', colourway: 'Plum', massG: 100 }

describe('a page that goes and comes again', () => {
  it('a reload in the middle goes straight to the Stove, and first says what was missed and by how much', async () => {
    const { page, context } = await stage.visit()
    // Ten minutes a second: the half hour of soaking ends while the page is away, and an hour and a half more passes.
    await page.goto(`${stage.host.address}?rehearse=600`)
    await startPot(page, pot)
    await pressUntilGone(page.locator('.call').getByRole('button', { name: /in soak/ }), page.locator('.call'))
    await page.goto('about:blank')
    // The rehearsal's clock is read again on opening: wait on a page of our own until the soak is over on it.
    await page.waitForFunction((sinceMs) => Date.now() - sinceMs > 12_000, Date.now())
    await page.goto(`${stage.host.address}?rehearse=600`)
    await page.getByRole('heading', { name: 'While you were away' }).waitFor()
    expect(await page.locator('.missed li').first().textContent()).toMatch(/^Plum: .+ late/)
    await page.getByRole('button', { name: 'To the pots' }).tap()
    await page.locator('.call, .bath').first().waitFor()
    await context.close()
  })

  it('a second tab follows, and "Work here" takes the pots over', async () => {
    const { page, another, context } = await stage.visit()
    await page.goto(`${stage.host.address}?rehearse`)
    await startPot(page, pot)
    const second = await another()
    await second.goto(`${stage.host.address}?rehearse`)
    await second.getByText('This one follows it').waitFor()
    await second.getByRole('button', { name: 'Work here' }).tap()
    await second.getByText('This one follows it').waitFor({ state: 'detached' })
    await page.getByText('This one follows it').waitFor()
    await pressUntilGone(second.locator('.call').getByRole('button', { name: /in soak/ }), second.locator('.call'))
    const { entries } = await storedIn(second, REHEARSAL)
    expect(entries.filter(({ event }) => event.type === 'StepClosed')).toHaveLength(1)
    // The first tab shows what the second one did.
    await page.locator('.call').waitFor({ state: 'detached' })
    await context.close()
  })
})

/** What is stored, entry by entry. */
async function kinds(page: Page): Promise<string[]> {
  return (await storedIn(page, REHEARSAL)).entries.map(({ event }) => event.type)
}

async function savedCopy(page: Page): Promise<string> {
  let download: Download | null = null
  page.once('download', (started) => {
    download = started
  })
  await press(page.getByRole('button', { name: 'Save a copy' }), async () => download !== null)
  return readFileSync(await (download as unknown as Download).path(), 'utf8')
}

describe('a browser that refuses', () => {
  it('the screen lock: the lamp says in words that the screen may sleep', async () => {
    const { page, context } = await stage.visit()
    await context.addInitScript(() => {
      navigator.wakeLock.request = () => Promise.reject(new DOMException('refused', 'NotAllowedError'))
    })
    await page.goto(`${stage.host.address}?rehearse`)
    await startPot(page, pot)
    await pressUntilGone(page.locator('.call').getByRole('button', { name: 'See pots' }), page.locator('.call'))
    await page.getByText('The screen may sleep').first().waitFor()
    await context.close()
  })

  it('a write: a red strip stands, nothing is shown as done, a copy can be saved, and trying again stores it', async () => {
    const { page, context } = await stage.visit({ acceptDownloads: true })
    await context.addInitScript(() => {
      const add = IDBObjectStore.prototype.add
      IDBObjectStore.prototype.add = function (...given): IDBRequest<IDBValidKey> {
        if ('full' in globalThis) throw new DOMException('no room', 'QuotaExceededError')
        return add.apply(this, given)
      }
    })
    await page.goto(`${stage.host.address}?rehearse`)
    await startPot(page, pot)
    // What the clock has to write is written first, so that the strip can come of nothing but the knuckle.
    await expect.poll(() => kinds(page), { timeout: 20_000 }).toContain('AlertRaised')
    await page.evaluate(() => Object.assign(globalThis, { full: true }))
    const strip = page.getByText(/^Not saved\./)
    const pad = page.locator('.call').getByRole('button', { name: /in soak/ })
    await pressUntilThere(pad, strip)
    expect(await kinds(page)).not.toContain('StepClosed')
    expect(await savedCopy(page)).toContain('StepClosed')
    await page.evaluate(() => Reflect.deleteProperty(globalThis, 'full'))
    await pressUntilGone(page.getByRole('button', { name: 'Try again' }), strip)
    expect((await kinds(page)).filter((kind) => kind === 'StepClosed')).toHaveLength(1)
    await context.close()
  })
})
