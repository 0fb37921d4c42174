// The Start form by touch and by keyboard: its numbers, what is short on the shelf, and each way out of it.
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Stock } from '../../src/core/shelf/thing.ts'
import { vinegar } from '../core/shelf/bottles.ts'
import { violations } from './stage/axe.ts'
import { start } from './stage/dyer.ts'
import { REAL, storedIn } from './stage/journal.ts'
import { press, pressUntilGone, pressUntilThere } from './stage/press.ts'
import { putOnShelf } from './stage/shelf.ts'
import { openStage, type Stage, type Visit } from './stage/stage.ts'

const small = { viewport: { width: 390, height: 844 } }

const stock = (lot: string): Stock => ({
  kind: 'stock',
  name: 'stock P',
  dye: 'an acid dye, milling',
  percentWV: 1,
  lot,
  madeOn: '2026-06-01',
  parts: [],
  note: ''
})

let stage: Stage
beforeAll(async () => {
  stage = await openStage()
})
afterAll(() => stage?.close())

const plain = (text: string | null): string => (text ?? '').replaceAll('\u00a0', ' ')
const said = async (page: Page, selector: string): Promise<string> =>
  plain(await page.locator(selector).first().textContent())
const pad = (page: Page, name: string | RegExp) => page.getByRole('button', { name })
const shortOf = (page: Page) => page.locator('[data-code="short"]')

/** The form of one protocol with two lots of a stock on the shelf: 30 mL in the one and 100 in the other. */
async function opened(visit: Visit): Promise<Page> {
  const { page } = visit
  await page.goto(`${stage.host.address}#/start`)
  await page.getByRole('button', { name: /^Lab dip to the boil/ }).waitFor()
  await putOnShelf(page, REAL, [
    { itemId: 'p12', thing: stock('12'), level: 30 },
    { itemId: 'p13', thing: stock('13'), level: 100 }
  ])
  await pressUntilThere(page.getByRole('button', { name: /^Lab dip to the boil/ }), page.getByLabel('Colourway'))
  await page.getByLabel('dye from the shelf').waitFor()
  return page
}

/** 1 % owf on 38 g is 38 mL of a 1 % stock. */
async function short(page: Page): Promise<void> {
  await page.getByLabel('Colourway').fill('Plum')
  await page.getByLabel('Dry weight').fill('38')
  await page.getByLabel('dye from the shelf').selectOption('p12')
  await shortOf(page).waitFor()
}

describe('the numbers, at the size of a phone', () => {
  it('follow what is typed, lead to the field that settles a flag, and outlive a reload', async () => {
    const visit = await stage.visit({ ...small, bypassCSP: true })
    const page = await opened(visit)
    await page.getByLabel('Dry weight').fill('50')
    const numbers = page.getByRole('region', { name: 'The numbers' })
    await numbers.getByText(/where water boils here is not said/).waitFor()
    await pad(page, 'To the boil here').tap()
    await page.getByLabel('Water boils here at').fill('1500 m')
    await numbers.getByText(/98.°C or the boil, whichever is lower/).waitFor()
    await numbers.getByText(/Hold it 12.min longer/).waitFor()
    await page.getByLabel('Which acid it is').selectOption('acetic')
    await numbers.getByText(/After acid: \d\.\d to \d\.\d on a cooled spoon/).waitFor()
    await page.getByLabel('The pot holds').fill('1.8')
    await numbers.getByText(/fills more than two thirds of the pot/).waitFor()
    expect(await violations(page)).toEqual([])
    await page.reload()
    await numbers.getByText(/fills more than two thirds of the pot/).waitFor()
    expect(await page.getByLabel('Water boils here at').inputValue()).toBe('1500 m')
    await pressUntilThere(pad(page, /^Keep it to/), numbers.getByText(/The pot changes the liquor ratio/))
    expect(visit.complaints).toEqual([])
    await visit.context.close()
  })

  it('are reached and mended with the keyboard alone', async () => {
    const { page, context } = await stage.visit({ ...small, hasTouch: false, isMobile: false })
    await page.goto(`${stage.host.address}#/start`)
    await page.getByRole('button', { name: /^Lab dip to the boil/ }).press('Enter')
    await page.getByLabel('Dry weight').focus()
    await page.keyboard.type('50')
    await pad(page, 'To the boil here').press('Enter')
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('start-boil')
    await page.keyboard.type('1500 m')
    await pad(page, 'Count it in').press('Enter')
    await page
      .getByText(/12.min longer, counted in\./)
      .first()
      .waitFor()
    await context.close()
  })
})

describe('a stock that is short', () => {
  it('is joined by another lot, both set out, started, and both in the journal with the numbers', async () => {
    const visit = await stage.visit(small)
    const page = await opened(visit)
    await short(page)
    expect(await said(page, '[data-code="short"]')).toContain(
      'Plum is 8 mL of dye (stock P) short: 38 mL wanted, 30 mL free.'
    )
    await pressUntilGone(pad(page, 'The rest from stock P, lot 13'), shortOf(page))
    expect(await said(page, '.start-bench')).toContain('30 mL from lot 128 mL from lot 13')
    for (const cup of await page.locator('.start-cup input').all()) await cup.check()
    await start(page)
    const { entries } = await storedIn(page, REAL)
    const event = entries.map((entry) => entry.event).find((one) => one.type === 'PotStarted')
    if (event?.type !== 'PotStarted') throw new Error('no pot was started')
    const shelf = event.programme.given?.materials.dye?.shelf
    expect(shelf?.map(({ lot, upTo }) => [lot, upTo])).toEqual([
      ['12', 30],
      ['13', null]
    ])
    expect(event.numbers?.flags.map(({ code }) => code)).toContain('boil-presumed')
    // What the first pot will still draw is no longer free for the next.
    await page.evaluate(() => (location.hash = '#/start'))
    await pressUntilThere(page.getByRole('button', { name: /^Lab dip to the boil/ }), page.getByLabel('Colourway'))
    await expect
      .poll(() => said(page, '[id="start-bottle-dye-shelf-0"]'))
      .toContain('lot 13: 92 mL free, 1 % w/v, made 2026-06-01')
    expect(await said(page, '[id="start-bottle-dye-shelf-0"]')).toContain('0 mL free')
    expect(visit.complaints).toEqual([])
    await visit.context.close()
  })

  it('does for less yarn, and for a paler shade', async () => {
    const { page, context } = await stage.visit(small)
    await opened({ page } as Visit)
    await short(page)
    await pressUntilGone(pad(page, /^Dye 30 g/), shortOf(page))
    await page.getByLabel('Dry weight').fill('38')
    await shortOf(page).waitFor()
    await pressUntilGone(pad(page, /^Dye to 0\.7\d+ %/), shortOf(page))
    expect(await said(page, '.start-bench')).toContain('30 mL of stock P')
    await context.close()
  })

  it('is left for a different one, and for a new stock, which is made and comes back chosen with what was typed', async () => {
    const { page, context } = await stage.visit(small)
    await opened({ page } as Visit)
    await short(page)
    await pad(page, 'A different one').tap()
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('start-bottle-dye-shelf-0')
    await page.getByLabel('dye from the shelf').selectOption('p13')
    await shortOf(page).waitFor({ state: 'detached' })
    await page.getByLabel('dye from the shelf').selectOption('p12')
    await pressUntilThere(pad(page, 'New stock'), page.getByText('For Plum: 8 mL are short.'))
    // What is known of it stands there, over a reload too.
    await page.reload()
    await page.getByText('For Plum: 8 mL are short.').waitFor()
    const made = ['Name', 'Dye', 'Strength, % w/v', 'How much of it']
    expect(await Promise.all(made.map((label) => page.getByLabel(label, { exact: true }).inputValue()))).toEqual([
      'stock P',
      'an acid dye, milling',
      '1',
      '50 mL'
    ])
    await page.getByLabel('Lot', { exact: true }).fill('14')
    await press(pad(page, 'Work it out'), async () => (await page.locator('.shelf-foot').count()) > 0)
    const label = page.getByRole('heading', { name: 'Label', level: 1 })
    while ((await label.count()) === 0) {
      const now = (await page.getByRole('heading', { level: 1 }).textContent()) ?? ''
      await pressUntilThere(page.locator('.shelf-foot button'), page.locator(`h1:not(:text-is("${now}"))`))
    }
    await pressUntilThere(pad(page, 'Back to starting Plum'), page.getByLabel('Colourway'))
    expect(await page.getByLabel('Colourway').inputValue()).toBe('Plum')
    expect(await page.getByLabel('Dry weight').inputValue()).toBe('38')
    await expect.poll(() => said(page, '.start-bench')).toContain('30 mL from lot 128 mL from lot 14')
    expect(await shortOf(page).count()).toBe(0)
    await context.close()
  })
})

describe('an acid that is short', () => {
  it('is refilled at its bottle, which leads back to the pot and what was typed for it', async () => {
    const { page, context } = await stage.visit(small)
    await page.goto(`${stage.host.address}#/start`)
    await page.getByRole('button', { name: /^Lab dip to the boil/ }).waitFor()
    await putOnShelf(page, REAL, [{ itemId: 'v3', thing: vinegar, level: 10 }])
    await pressUntilThere(page.getByRole('button', { name: /^Lab dip to the boil/ }), page.getByLabel('Colourway'))
    await page.getByLabel('Colourway').fill('Plum')
    await page.getByLabel('Dry weight').fill('38')
    await page.getByLabel('acid from the shelf').selectOption('v3')
    // 2 % owf on 38 g out of 5 %.
    await expect.poll(() => said(page, '[data-code="short"]')).toContain('15 mL wanted, 10 mL free')
    await pressUntilThere(pad(page, 'Refill the bottle'), page.getByRole('heading', { name: 'vinegar', level: 1 }))
    // The way back outlives a reload.
    await page.reload()
    await pad(page, 'Back to Plum').waitFor()
    const sheet = page.getByRole('dialog')
    await pressUntilThere(pad(page, 'More put in'), sheet)
    await sheet.getByRole('textbox').first().fill('500')
    await pressUntilGone(sheet.getByRole('button', { name: 'Put it in' }), sheet)
    await pressUntilThere(pad(page, 'Back to Plum'), page.getByLabel('Colourway'))
    expect(await page.getByLabel('Dry weight').inputValue()).toBe('38')
    await expect.poll(() => said(page, '.start-bench')).toContain('15 mL of')
    expect(await shortOf(page).count()).toBe(0)
    await context.close()
  })
})
