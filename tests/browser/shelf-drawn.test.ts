// From the shelf into a pot and back to the shelf: what a pot was given is gone from the bottle, to the mL.
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Acid, Stock } from '../../src/core/shelf/thing.ts'
import { keepFile, start } from './stage/dyer.ts'
import { REAL } from './stage/journal.ts'
import { press, pressUntilGone, pressUntilThere } from './stage/press.ts'
import { putOnShelf } from './stage/shelf.ts'
import { openStage, type Stage } from './stage/stage.ts'

/** Invented for the test: the dye is asked for at once. */
const dyeFirst = `strandline: 1
title: Dye first
liquor: 20:1
materials:
  dye: {kind: stock, strength: 1 %, amount: 1 % owf}
steps:
  - add: {amount: all of dye}
  - wait: {for: 30 min}
`
const stock: Stock = {
  kind: 'stock',
  name: 'stock P',
  dye: 'an acid dye, milling',
  percentWV: 1,
  lot: '12',
  madeOn: '2026-06-01',
  parts: [],
  note: ''
}
const vinegar: Acid = {
  kind: 'acid',
  name: 'vinegar',
  acid: 'acetic acid',
  form: 'liquid',
  percent: 5,
  basis: 'w/v',
  densityGPerML: null,
  lot: '',
  note: ''
}

let stage: Stage
beforeAll(async () => {
  stage = await openStage()
})
afterAll(() => stage?.close())

const pad = (page: Page, name: string | RegExp) => page.getByRole('button', { name })
const to = (page: Page, hash: string): Promise<unknown> => page.evaluate((next) => (location.hash = next), hash)

/** What the shelf says of a bottle. */
async function levelOf(page: Page, name: string): Promise<string> {
  const line = page.locator('.shelf-line', { hasText: name }).first()
  return ((await line.locator('.shelf-level').textContent()) ?? '').replaceAll('\u00a0', ' ')
}

describe('a pot that is started from the shelf', () => {
  it('draws the level down by each dose, planned and not, and over a reload', async () => {
    const { page, complaints, context } = await stage.visit({ viewport: { width: 390, height: 844 } })
    await page.goto(`${stage.host.address}#/protocols`)
    await page.locator('input[type=file]').waitFor({ state: 'attached' })
    await keepFile(page, 'dye-first.yaml', dyeFirst)
    await putOnShelf(page, REAL, [
      { itemId: 'p12', thing: stock, level: 100 },
      { itemId: 'v', thing: vinegar, level: 500 }
    ])
    await pressUntilThere(pad(page, 'Start a pot'), page.getByLabel('Colourway'))
    await page.getByLabel('Colourway').fill('Plum')
    // 1 % of 38 g is 0.38 g, in 38 mL of a 1 % stock.
    await page.getByLabel('Dry weight').fill('38')
    await page.getByLabel('dye from the shelf').selectOption('p12')
    for (const cup of await page.locator('.start-cup input').all()) await cup.check()
    await start(page)
    await to(page, '#/shelf')
    await expect.poll(() => levelOf(page, 'stock P')).toContain('100 mL leftPots that are on may take 38 mL of it.')
    await to(page, '#/stove')
    await pressUntilGone(page.locator('.call-pad', { hasText: 'dye is in' }), page.locator('.call'))
    await to(page, '#/shelf')
    await expect.poll(() => levelOf(page, 'stock P')).toBe('62 mL left of 100 mL')
    // Out of a bottle that the protocol knows nothing of.
    await to(page, '#/stove')
    await pressUntilThere(pad(page, 'More'), pad(page, 'Added, not planned'))
    await pressUntilThere(pad(page, 'Added, not planned'), page.getByLabel('Out of which bottle'))
    await page.getByLabel('Out of which bottle').selectOption('v')
    expect(await page.getByLabel('What went in').inputValue()).toBe('vinegar')
    await press(pad(page, 'It is in'), async () => (await page.locator('dialog').count()) === 0)
    await to(page, '#/shelf')
    await expect.poll(() => levelOf(page, 'vinegar')).toBe('490 mL left of 500 mL')
    await page.reload()
    await expect.poll(() => levelOf(page, 'stock P')).toBe('62 mL left of 100 mL')
    expect(complaints).toEqual([])
    await context.close()
  })
})
