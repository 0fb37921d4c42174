// The shelf in the built app: by touch on a phone, by keyboard alone, over a reload, and when a write fails.
import jsQR from 'jsqr'
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { violations } from './stage/axe.ts'
import { REHEARSAL, storedIn } from './stage/journal.ts'
import { press, pressUntilGone, pressUntilThere } from './stage/press.ts'
import { openStage, type Stage, type Visit } from './stage/stage.ts'

let stage: Stage
beforeAll(async () => {
  stage = await openStage()
})
afterAll(() => stage?.close())

const pad = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name, exact: true })
const heading = (page: Page, name: string): Locator => page.getByRole('heading', { name, level: 1 })
const said = (page: Page): Promise<string[]> => page.locator('.field-problem').allTextContents()

async function atShelf(more: Parameters<Stage['visit']>[0] = {}): Promise<Visit> {
  const visit = await stage.visit({ viewport: { width: 390, height: 844 }, ...more })
  await visit.page.goto(`${stage.host.address}?rehearse#/shelf`)
  await visit.page.getByRole('heading', { name: 'Nothing on the shelf yet' }).waitFor()
  return visit
}

async function fill(page: Page, fields: Record<string, string>): Promise<void> {
  for (const [label, value] of Object.entries(fields)) await page.getByLabel(label, { exact: true }).fill(value)
}

/** Puts a stock on the shelf by touch; ends on its own page. */
async function addStock(page: Page, name: string, level: string): Promise<void> {
  await page.evaluate(() => {
    location.hash = '#/shelf/add'
  })
  await heading(page, 'Put on the shelf').waitFor()
  await fill(page, {
    Name: name,
    Dye: 'C.I. Acid Yellow',
    'Strength, % w/v': '1',
    Lot: 'Y-3',
    'How much is there': level
  })
  await pressUntilThere(pad(page, 'Put it on the shelf'), heading(page, name))
}

/** Passes over the acts until the one of that name stands there. */
async function actsUntil(page: Page, name: string): Promise<void> {
  while (!(await heading(page, name).isVisible())) {
    const now = (await page.getByRole('heading', { level: 1 }).textContent()) ?? ''
    await pressUntilThere(pad(page, 'Done'), page.locator(`h1:not(:text-is("${now}"))`))
  }
}

/** The code on the screen, painted as a camera would see it and read by another reader. */
async function codeOn(page: Page): Promise<string | undefined> {
  const { dots, side } = await page.evaluate(async () => {
    const svg = document.querySelector('.shelf-label svg') as SVGElement
    const copy = svg.cloneNode(true) as SVGElement
    copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg')
    const size = 4 * Number(svg.getAttribute('viewBox')?.split(' ')[2])
    copy.setAttribute('width', `${size}`)
    copy.setAttribute('height', `${size}`)
    const picture = new Image()
    picture.src = `data:image/svg+xml,${encodeURIComponent(copy.outerHTML)}`
    await picture.decode()
    const canvas = Object.assign(document.createElement('canvas'), { width: size, height: size })
    const drawn = canvas.getContext('2d') as CanvasRenderingContext2D
    drawn.drawImage(picture, 0, 0)
    return { dots: [...drawn.getImageData(0, 0, size, size).data], side: size }
  })
  return jsQR(new Uint8ClampedArray(dots), side, side)?.data
}

describe('the shelf by touch on a phone', () => {
  it('takes a stock, says what is wrong where it is wrong, keeps what was typed, and finds all of it after a reload', async () => {
    const { page, complaints } = await atShelf()
    await pressUntilThere(pad(page, 'Add what is there'), heading(page, 'Put on the shelf'))
    await fill(page, { Name: 'stock Y', 'Strength, % w/v': '1,5,5', 'How much is there': '250 g' })
    await press(pad(page, 'Put it on the shelf'), async () => (await said(page)).length === 3)
    expect((await said(page)).join(' ')).toMatch(
      /Say what dye it is of\..*“1,5,5” can’t be read\..*“250 g” can’t be read/
    )
    await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-invalid'))).toBe('true')
    expect(await page.getByLabel('Strength, % w/v').inputValue()).toBe('1,5,5')
    expect(await page.getByLabel('Name').inputValue()).toBe('stock Y')
    // A comma is a point where only that can be meant.
    await fill(page, { Dye: 'C.I. Acid Yellow', 'Strength, % w/v': '1,5', 'How much is there': '0.25 L' })
    await pressUntilThere(pad(page, 'Put it on the shelf'), heading(page, 'stock Y'))
    await page.getByText('1.5 % w/v', { exact: true }).waitFor()
    await page.getByText('250 mL left', { exact: true }).waitFor()
    await page.reload()
    await heading(page, 'stock Y').waitFor()
    await page.getByText('age not known').waitFor()
    const { entries } = await storedIn(page, REHEARSAL)
    expect(entries.map(({ streamId, seq }) => `${streamId.slice(0, 6)} ${seq}`)).toEqual(['stock/ 1'])
    expect(complaints).toEqual([])
  })

  it('corrects a level with its reason, keeps the old one, puts away and brings back', async () => {
    const { page } = await atShelf()
    await addStock(page, 'stock Y', '250')
    const sheet = page.getByRole('dialog')
    await pressUntilThere(pad(page, 'Correct the level'), sheet)
    await press(pad(page, 'Correct it'), async () => (await said(page)).length === 2)
    await fill(page, { 'How much is there now': '180', Why: 'spilled' })
    await pressUntilGone(pad(page, 'Correct it'), sheet)
    await page.getByText('180 mL left', { exact: true }).waitFor()
    await page.getByText('Level corrected to 180 mL, was 250 mL: spilled').waitFor()
    await pressUntilThere(pad(page, 'Put away'), pad(page, 'Put it away'))
    await pressUntilThere(pad(page, 'Put it away'), pad(page, 'Bring back'))
    await pressUntilThere(pad(page, 'Shelf'), page.getByText('Put away, 1'))
    await page.getByText('Put away, 1').tap()
    await page.getByRole('link', { name: /stock Y/ }).tap()
    await pressUntilThere(pad(page, 'Bring back'), pad(page, 'Bring it back'))
    await pressUntilThere(pad(page, 'Bring it back'), pad(page, 'Put away'))
    await page.reload()
    await page.getByText('180 mL left', { exact: true }).waitFor()
  })

  it('makes a stock step by step with the mask at the powder, and gives it a label whose code is read back', async () => {
    const { page } = await atShelf({ bypassCSP: true })
    await pressUntilThere(pad(page, 'Make a stock'), heading(page, 'Make a stock'))
    await press(pad(page, 'Work it out'), async () => (await said(page)).length === 3)
    expect(await violations(page), 'the form with problems').toEqual([])
    await fill(page, {
      Name: 'stock G',
      Dye: 'C.I. Acid Green',
      'Strength, % w/v': '1',
      'How much of it': '250',
      Lot: 'G-1'
    })
    await pressUntilGone(pad(page, 'Work it out'), heading(page, 'Make a stock'))
    await actsUntil(page, 'Weigh the powder')
    await page.getByText('2.5 g', { exact: true }).waitFor()
    await page.getByText(/Particle mask that fits/).waitFor()
    expect(await violations(page), 'an act').toEqual([])
    await actsUntil(page, 'Make up to the mark')
    await page.getByText('250 mL', { exact: true }).waitFor()
    expect((await storedIn(page, REHEARSAL)).entries, 'nothing is made yet').toEqual([])
    await actsUntil(page, 'Into its bottle')
    await pressUntilThere(pad(page, 'It is made'), heading(page, 'Label'))
    const [added, made] = (await storedIn(page, REHEARSAL)).entries
    expect([added?.event, made?.event]).toMatchObject([
      {
        type: 'ShelfItemAdded',
        thing: { lot: 'G-1', percentWV: 1, madeOn: expect.stringMatching(/^\d{4}-\d\d-\d\d$/) }
      },
      { type: 'StockMade', making: { how: 'powder', powderG: 2.5, volumeML: 250 } }
    ])
    expect(await codeOn(page)).toBe(added?.streamId.slice('stock/'.length))
    await page.getByText('Dye: not for food. Keep from children.').waitFor()
    expect(await violations(page), 'the label').toEqual([])
    const pdf = await page.pdf({ preferCSSPageSize: true })
    // 62 x 29 mm in points, to the half point that the printer rounds to.
    const [width = 0, height = 0] = (/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf.toString('latin1')) ?? [])
      .slice(1)
      .map(Number)
    expect(Math.abs(width - (62 / 25.4) * 72)).toBeLessThan(0.5)
    expect(Math.abs(height - (29 / 25.4) * 72)).toBeLessThan(0.5)
    await pressUntilThere(pad(page, 'Back'), page.getByText('made today'))
  })

  it('thins a stronger stock, which has so much less then', async () => {
    const { page } = await atShelf()
    await addStock(page, 'stock Y', '20')
    await page.evaluate(() => {
      location.hash = '#/shelf/make'
    })
    await pressUntilThere(pad(page, 'A stronger stock'), page.getByLabel('From which bottle'))
    const option = await page.getByRole('option', { name: /stock Y/ }).getAttribute('value')
    await page.getByLabel('From which bottle').selectOption(option)
    await fill(page, { Name: 'stock Y pale', 'Strength, % w/v': '0.1', 'How much of it': '250' })
    await pressUntilGone(pad(page, 'Work it out'), heading(page, 'Make a stock'))
    await actsUntil(page, 'Measure stock Y')
    await page.getByText('25 mL', { exact: true }).waitFor()
    await page.getByText('By its level only 20 mL are left in it.').waitFor()
    await actsUntil(page, 'Into its bottle')
    await pressUntilThere(pad(page, 'It is made'), heading(page, 'Label'))
    await page.evaluate(() => {
      location.hash = '#/shelf'
    })
    await page.getByText('5 mL more was drawn than was there: correct the level.').waitFor()
    await page.getByText('250 mL left', { exact: true }).waitFor()
  })
})

describe('the shelf when things go wrong', () => {
  it('says that a write failed, keeps what was typed, and stores it once when it is sent again', async () => {
    const { page } = await atShelf()
    await page.evaluate(() => {
      const add = IDBObjectStore.prototype.add
      IDBObjectStore.prototype.add = function (...given) {
        if ('full' in globalThis) throw new DOMException('no room', 'QuotaExceededError')
        return add.apply(this, given)
      }
      Object.assign(globalThis, { full: true })
    })
    await pressUntilThere(pad(page, 'Add what is there'), heading(page, 'Put on the shelf'))
    await fill(page, { Name: 'stock Y', Dye: 'C.I. Acid Yellow', 'Strength, % w/v': '1', 'How much is there': '250' })
    await pressUntilThere(pad(page, 'Put it on the shelf'), page.getByRole('alert').filter({ hasText: 'Not saved.' }))
    expect(await page.getByLabel('Name').inputValue()).toBe('stock Y')
    await page.evaluate(() => Reflect.deleteProperty(globalThis, 'full'))
    await pressUntilThere(pad(page, 'Put it on the shelf'), heading(page, 'stock Y'))
    expect((await storedIn(page, REHEARSAL)).entries).toHaveLength(1)
  })

  it('shows in one tab what another one put on it', async () => {
    const { page, another } = await atShelf()
    const second = await another()
    await second.goto(`${stage.host.address}?rehearse#/shelf`)
    await second.getByRole('heading', { name: 'Nothing on the shelf yet' }).waitFor()
    await addStock(second, 'stock Y', '250')
    await page.getByRole('link', { name: /stock Y/ }).waitFor()
  })

  it('leads a label of another device to words, and not to an empty page', async () => {
    const { page } = await atShelf()
    await page.evaluate(() => {
      location.hash = '#/shelf/item/%E0%A4%A'
    })
    await heading(page, 'Not on the shelf').waitFor()
  })
})

describe('the shelf by keyboard alone', () => {
  /** Tab until the focus is on what is looked for; a whole round without it is a failure. */
  async function tabTo(page: Page, name: RegExp): Promise<void> {
    for (let i = 0; i < 60; i++) {
      await page.keyboard.press('Tab')
      const focused = await page.evaluate(() => {
        const at = document.activeElement as HTMLInputElement | null
        return at?.labels?.[0]?.textContent ?? at?.textContent ?? ''
      })
      if (name.test(focused)) return
    }
    throw new Error(`the keyboard does not come to ${name}`)
  }

  it('takes an acid, and corrects its level', async () => {
    const { page } = await atShelf({ hasTouch: false, isMobile: false, viewport: { width: 1180, height: 820 } })
    await tabTo(page, /^Add what is there$/)
    await page.keyboard.press('Enter')
    await heading(page, 'Put on the shelf').waitFor()
    await tabTo(page, /^Acid$/)
    await page.keyboard.press('Space')
    for (const [label, text] of [
      [/^Name$/, 'vinegar'],
      [/^Acid$/, 'acetic'],
      [/^Strength, %$/, '5'],
      [/^How much is there$/, '500']
    ] as const) {
      await tabTo(page, label)
      await page.keyboard.type(text)
    }
    await tabTo(page, /^Put it on the shelf$/)
    await page.keyboard.press('Enter')
    await heading(page, 'vinegar').waitFor()
    await tabTo(page, /^Correct the level$/)
    await page.keyboard.press('Enter')
    await page.getByRole('dialog').waitFor()
    await tabTo(page, /^How much is there now$/)
    await page.keyboard.type('400')
    await tabTo(page, /^Why$/)
    await page.keyboard.type('measured anew')
    await tabTo(page, /^Correct it$/)
    await page.keyboard.press('Enter')
    await page.getByText('400 mL left', { exact: true }).waitFor()
  })
})

describe.each(['light', 'dark'] as const)('the shelf with things on it, %s', (colorScheme) => {
  it('is accessible: the list, a thing, its sheet', async () => {
    const { page, elsewhere } = await atShelf({ colorScheme, bypassCSP: true })
    expect(await violations(page), 'empty').toEqual([])
    await addStock(page, 'stock Y', '250')
    expect(await violations(page), 'a thing').toEqual([])
    await pressUntilThere(pad(page, 'Throw out'), page.getByRole('dialog'))
    expect(await violations(page), 'a sheet').toEqual([])
    await page.keyboard.press('Escape')
    await pressUntilThere(pad(page, 'Shelf'), page.getByRole('link', { name: /stock Y/ }))
    expect(await violations(page), 'the list').toEqual([])
    expect(elsewhere()).toEqual([])
  })
})
