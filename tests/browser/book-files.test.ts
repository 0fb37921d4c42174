import { readFileSync } from 'node:fs'
import Ajv2020 from 'ajv/dist/2020.js'
import Papa from 'papaparse'
import type { Download, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { violations } from './stage/axe.ts'
import { choose, formula, go, idOf, long, openBook, type PrintStage, recordFrom, short } from './stage/printing.ts'

let page: Page
let book: PrintStage

beforeAll(async () => {
  book = await openBook()
  page = book.page
})
afterAll(() => book?.stage.close())

async function saved(press: () => Promise<void>): Promise<{ name: string; text: string }> {
  const [download] = await Promise.all<Download | undefined>([
    page.waitForEvent('download'),
    press().then(() => undefined)
  ])
  if (!download) throw new Error('nothing was saved')
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') }
}

const pressed = (name: string) => (): Promise<void> => page.getByRole('button', { name, exact: true }).tap()

describe('files of the Dye book', () => {
  it('are the record as JSON that the shipped schema takes, its entries as CSV, and the protocol as it ran', async () => {
    await go(page, `#/dye-book/${formula.potId}`)
    await page.getByRole('heading', { level: 1, name: 'Rust' }).waitFor()
    const schema = await (await page.request.get(`${book.stage.host.address}batch-record.schema.json`)).json()
    const valid = new Ajv2020({ strict: true, strictRequired: false, allowUnionTypes: true }).compile(schema)
    const json = await saved(pressed('Record as JSON'))
    expect(json.name).toBe('2026-06-14 Rust.json')
    expect(valid(JSON.parse(json.text)), JSON.stringify(valid.errors?.slice(0, 3))).toBe(true)
    const csv = await saved(pressed('Entries as CSV'))
    const rows = Papa.parse<Record<string, string>>(csv.text, { header: true, skipEmptyLines: true })
    expect(rows.errors).toEqual([])
    expect(rows.data).toHaveLength(formula.entries.length)
    expect(rows.data.map((row) => row.words)).toContain('Note: =HYPERLINK("x")')
    const protocol = await saved(pressed('Protocol as run'))
    expect(protocol.text).toBe(recordFrom(formula).protocol.text)
  })

  it('are all batches as one CSV, where nothing runs as a formula', async () => {
    await go(page, '#/dye-book')
    const { text } = await saved(pressed('All batches as CSV'))
    const { data, errors } = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true })
    expect(errors).toEqual([])
    expect(data.map((row) => row.batch_id).sort()).toEqual([1, 2, 3, 4].map(idOf))
    expect(data.find((row) => row.batch_id === idOf(4))).toMatchObject({ notes: '\'=HYPERLINK("x")', goods_g: '100' })
  })
})

describe('finding a batch', () => {
  it('goes by the code of its tag, as soon as it is there', async () => {
    await go(page, '#/dye-book')
    await page.getByLabel('Find a batch').fill(`strandline:batch/${long.potId}`)
    await page.getByRole('heading', { level: 1, name: 'Autumn plum over forest' }).waitFor()
  })

  it('says so where no batch has it, and finds by name as well', async () => {
    await go(page, '#/dye-book')
    const field = page.getByLabel('Find a batch')
    await field.fill(`strandline:batch/${idOf(9)}`)
    await field.press('Enter')
    await page.getByText('No batch with this code is on this device.').waitFor()
    await field.fill('plum')
    await field.press('Enter')
    await expect.poll(() => page.locator('.book-line').count()).toBe(1)
    await page.getByRole('button', { name: 'Show all' }).tap()
    await expect.poll(() => page.locator('.book-line').count()).toBe(4)
  })
})

describe('the print screens', () => {
  it.each(['light', 'dark'] as const)('are accessible, %s', async (colorScheme) => {
    await page.emulateMedia({ colorScheme })
    for (const kind of ['Record', 'Tag', 'Sheet of tags', 'Skein card', 'Day sheet'] as const) {
      await choose(page, short, kind)
      expect(await violations(page), kind).toEqual([])
    }
    await go(page, '#/dye-book')
    await page.getByRole('link', { name: /^Day sheet, Sunday 14 June 2026/ }).tap()
    await page.getByRole('heading', { level: 1, name: 'Print a day sheet' }).waitFor()
    await page.locator('.print-sheet').waitFor()
    expect(await violations(page), 'the day').toEqual([])
  })

  it('hand what they show to the browser’s printer', async () => {
    await choose(page, short, 'Record')
    await page.evaluate(() => {
      const counted = globalThis as unknown as { printedTimes: number }
      counted.printedTimes = 0
      window.print = () => {
        counted.printedTimes++
      }
    })
    await page.getByRole('button', { name: 'Print', exact: true }).tap()
    await expect
      .poll(() => page.evaluate(() => (globalThis as unknown as { printedTimes: number }).printedTimes))
      .toBe(1)
  })

  it('fit a phone: nothing sticks out to the side', async () => {
    for (const kind of ['Record', 'Tag', 'Sheet of tags', 'Skein card', 'Day sheet'] as const) {
      await choose(page, short, kind)
      const [scrolls, window] = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth])
      expect(scrolls, kind).toBeLessThanOrEqual(window as number)
    }
  })

  it('ask nothing of any other place, and the browser complains of nothing', () => {
    expect(book.visit.elsewhere()).toEqual([])
    expect(book.visit.complaints).toEqual([])
  })
})
