import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { dayActs } from '../../src/core/record/day-acts.ts'
import { codeIn, flat, type Picture } from './stage/pdf.ts'
import {
  allWords,
  choose,
  expectPages,
  formula,
  long,
  openBook,
  type PrintStage,
  print,
  recordFrom,
  settled,
  short,
  sizes
} from './stage/printing.ts'

let page: Page
let book: PrintStage

beforeAll(async () => {
  book = await openBook()
  page = book.page
})
afterAll(() => book?.stage.close())

describe('tags', () => {
  it('are pages of 62 x 29 mm, one for each skein, with all that a tag must say, and a code that is read back', async () => {
    for (const batch of [short, long]) {
      await choose(page, batch, 'Tag')
      await print(page, (out) => {
        expect(out.pages).toHaveLength(2)
        expectPages(out, [62, 29], 0.5)
        const { identity } = recordFrom(batch)
        out.pages.forEach(({ words }, i) => {
          const skein = `${identity.letter}${i + 1} ${i === 0 ? 60 : 40} g, ${i + 1} of 2`
          for (const text of [identity.colourway, skein, identity.batchName, 'Dip gradient', 'Begun 2026-06-14 07:'])
            expect(words).toContain(text)
          expect(codeIn(out.picture(i + 1, 203))).toBe(`strandline:batch/${batch.potId}`)
        })
      })
    }
  })

  it('fill a sheet from the place that is chosen, 27 to each, with a code on every one', async () => {
    await choose(page, short, 'Sheet of tags', 'US Letter')
    await page.getByLabel('How many tags').fill('30')
    await page.getByLabel('First place on the sheet').fill('5')
    await expect.poll(() => page.locator('.print-sheet').count()).toBe(2)
    await settled(page)
    await print(page, (out) => {
      expect(out.pages).toHaveLength(2)
      expectPages(out, sizes['US Letter'], 5)
      const begun = out.pages.map(({ placed }) => placed.filter(({ word }) => word === 'Begun'))
      expect(begun.map(({ length }) => length)).toEqual([23, 7])
      // 3 by 9 of 62 x 29 mm in the middle: the fifth place is the second of the second row.
      const left = (215.9 - 3 * 62) / 2 + 62
      const top = (279.4 - 9 * 29) / 2 + 29
      const [first] = begun[0] ?? []
      expect(first?.left).toBeGreaterThan(left)
      expect(first?.right).toBeLessThan(left + 62)
      expect(first?.top).toBeGreaterThan(top)
      expect(first?.bottom).toBeLessThan(top + 29)
      const sheet = out.picture(1, 203)
      expect(codeIn(part(sheet, 203, left, top, 62, 29))).toBe(`strandline:batch/${short.potId}`)
      expect(codeIn(part(sheet, 203, left - 62, top, 62, 29))).toBeNull()
    })
  })

  it('are asked for in numbers that make sense', async () => {
    await choose(page, long, 'Sheet of tags')
    await page.getByLabel('First place on the sheet').fill('28')
    await page.getByText('Write a whole number from 1 to 27.').waitFor()
    expect(await page.locator('.print-sheet').count()).toBe(1)
  })
})

/** A piece of a picture, given in mm. */
function part({ width, rgba }: Picture, dpi: number, left: number, top: number, wide: number, high: number): Picture {
  const px = (mm: number): number => Math.round((mm / 25.4) * dpi)
  const [w, h] = [px(wide), px(high)]
  const cut = new Uint8ClampedArray(w * h * 4)
  for (let y = 0; y < h; y++) {
    const from = ((px(top) + y) * width + px(left)) * 4
    cut.set(rgba.subarray(from, from + w * 4), y * w * 4)
  }
  return { width: w, height: h, rgba: cut }
}

describe('a skein card', () => {
  const written = {
    'Fibre, with shares': '75 % merino',
    'Length of a skein': '400 m',
    Care: 'Wash cool',
    'Bleed, indicative': 'faint'
  }

  it('has what the record knows and what is written, one for each skein, and nothing of the recipe', async () => {
    await choose(page, short, 'Skein card', 'A4')
    for (const [label, text] of Object.entries(written)) await page.getByLabel(label, { exact: true }).fill(text)
    await settled(page)
    await print(page, (out) => {
      expect(out.pages).toHaveLength(1)
      expectPages(out, sizes.A4, 5)
      const words = allWords(out)
      expect(out.pages[0]?.placed.filter(({ word }) => word === 'Fibre')).toHaveLength(2)
      for (const text of [
        '75 % merino',
        '60 g',
        '40 g',
        '400 m',
        '2026-06-14 Moss',
        'Wash cool',
        'faint (indicative)',
        'Dyed 14 June 2026 by dyer A'
      ])
        expect(words).toContain(text)
      const { amounts, protocol, steps, programme } = recordFrom(short)
      const secrets = [
        protocol.title,
        ...amounts.map((amount) => amount.of),
        ...steps.flatMap((step) => [step.call, step.sentence]),
        ...programme.setOut.flatMap(({ label, amount }) => [label, `${amount.value} ${amount.unit}`]),
        ...programme.inputs.map((input) => input.label)
      ]
      expect(secrets.length).toBeGreaterThan(40)
      for (const secret of secrets) expect(words, secret).not.toContain(flat(secret))
    })
  })

  it('keeps what was written with its batch over a reload, and no other batch has it', async () => {
    await page.reload()
    await choose(page, short, 'Skein card')
    for (const [label, text] of Object.entries(written))
      expect(await page.getByLabel(label, { exact: true }).inputValue()).toBe(text)
    await choose(page, long, 'Skein card')
    expect(await page.getByLabel('Fibre, with shares').inputValue()).toBe('merino')
    expect(await page.getByLabel('Care', { exact: true }).inputValue()).toBe('')
  })
})

describe('a day sheet', () => {
  it.each(['A4', 'US Letter'] as const)('has every pot of the day on one page: %s', async (paper) => {
    await choose(page, short, 'Day sheet', paper)
    await print(page, (out) => {
      expect(out.pages).toHaveLength(1)
      expectPages(out, sizes[paper], 14)
      const words = allWords(out)
      expect(words).toContain('14 June 2026')
      for (const text of [
        'A Moss',
        'B Autumn plum over forest',
        'D Rust',
        'Dip gradient',
        'Level immersion',
        '7:00',
        '7:20',
        '8:00'
      ])
        expect(words).toContain(text)
      // A whole day of three pots goes in: each act with when it was done, none left out.
      const acts = [short, long, formula].flatMap((batch) => dayActs(recordFrom(batch)))
      expect(acts.length).toBeGreaterThan(60)
      expect(words).not.toMatch(/and \d+ more acts|done already/)
      // A long call goes on in the next line, behind its tick: its beginning stands together.
      for (const { call } of acts.filter((act) => !/\d$/.test(act.label)))
        expect(words).toContain(call.split(' ').slice(0, 2).join(' '))
      expect(words).toContain('2 L water')
      expect(words).toContain('Day sheet, 2026-06-14 1 of 1')
    })
  })
})
