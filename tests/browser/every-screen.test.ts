import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { violations } from './stage/axe.ts'
import { startPot } from './stage/dyer.ts'
import { pressUntilGone, pressUntilThere } from './stage/press.ts'
import { openStage, type Stage, type Visit } from './stage/stage.ts'

const heading = (page: Page, name: string): Promise<void> => page.getByRole('heading', { name, level: 1 }).waitFor()

async function go(page: Page, route: string): Promise<void> {
  await page.evaluate((to) => {
    location.hash = to
  }, route)
}

describe.each(['light', 'dark'] as const)('every screen, %s', (colorScheme) => {
  let stage: Stage
  let visit: Visit
  let page: Page
  beforeAll(async () => {
    stage = await openStage()
    // axe is a script of the test's own: the app's policy would not let it in.
    visit = await stage.visit({ colorScheme, bypassCSP: true })
    page = visit.page
    await page.goto(`${stage.host.address}?rehearse`)
  })
  afterAll(() => stage?.close())

  it('the empty Stove, Start, Protocols, Dye book and Settings are accessible', async () => {
    await page.getByRole('heading', { name: 'No pot is on' }).waitFor()
    expect(await violations(page)).toEqual([])
    for (const [route, name] of [
      ['#/start', 'Start a pot'],
      ['#/protocols', 'Protocols'],
      ['#/protocols/dip-gradient', 'Dip gradient'],
      ['#/shelf', 'Shelf'],
      ['#/shelf/add', 'Put on the shelf'],
      ['#/shelf/make', 'Make a stock'],
      ['#/swatches', 'Swatches'],
      ['#/dye-book', 'Dye book'],
      ['#/settings', 'Settings'],
      ['#/device-check', 'Device check']
    ] as const) {
      await go(page, route)
      await heading(page, name)
      expect(await violations(page), route).toEqual([])
    }
  })

  it('the ways to share a protocol, to bring one in and to decide about it are accessible', async () => {
    await go(page, '#/protocols/dip-gradient')
    await heading(page, 'Dip gradient')
    await page.getByRole('button', { name: 'Share', exact: true }).tap()
    await page.getByRole('dialog').waitFor()
    expect(await violations(page), 'the sheet').toEqual([])
    await page.keyboard.press('Escape')
    await page.getByRole('dialog').waitFor({ state: 'detached' })
    await go(page, '#/protocols')
    await heading(page, 'Protocols')
    await page.getByText('Bring a protocol in', { exact: true }).tap()
    await page.getByLabel(/paste its text here/i).fill('strandline: 1\ntitle: Dip gradient\nsteps: [rinse]\n')
    expect(await violations(page), 'the ways in').toEqual([])
    await page.getByRole('button', { name: 'Read this text' }).tap()
    await page.getByText('Another Dip gradient is built in, and stays as it is.').waitFor()
    await page.getByText('What is different').tap()
    await page.locator('.protocols-compare').waitFor()
    expect(await violations(page), 'the choice').toEqual([])
  })

  it('the Start form, a call, its sheets, the Stove with a pot and a record are accessible', async () => {
    await go(page, '#/start/dip-gradient')
    await heading(page, 'Dip gradient')
    expect(await violations(page), 'the form').toEqual([])
    await startPot(page, { title: 'Dip gradient', colourway: 'Moss', massG: 100 })
    const call = page.locator('.call')
    await call.waitFor()
    expect(await violations(page), 'a call').toEqual([])
    for (const name of ['Not yet', 'Moss: more']) {
      await pressUntilThere(call.getByRole('button', { name, exact: true }), page.getByRole('dialog'))
      expect(await violations(page), name).toEqual([])
      await page.keyboard.press('Escape')
      await page.getByRole('dialog').waitFor({ state: 'detached' })
    }
    await pressUntilGone(call.getByRole('button', { name: 'See pots' }), call)
    expect(await violations(page), 'the Stove with a pot').toEqual([])
    await go(page, '#/dye-book')
    await page
      .getByRole('link', { name: /Moss/ })
      .or(page.getByRole('button', { name: /^Moss/ }))
      .first()
      .tap()
    await page.getByRole('heading', { name: /Moss/ }).first().waitFor()
    expect(await violations(page), 'a record').toEqual([])
  })

  it('nothing was asked of any other place, and the browser complained of nothing', () => {
    expect(visit.elsewhere()).toEqual([])
    expect(visit.complaints).toEqual([])
  })
})
