import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { keep } from './stage/kept-batches.ts'
import { flat, type Printed } from './stage/pdf.ts'
import { album, keepPictures, pictured, pictures } from './stage/photo-batches.ts'
import {
  allWords,
  choose,
  expectPages,
  huge,
  long,
  openBook,
  type PrintStage,
  print,
  recordFrom,
  short,
  sizes
} from './stage/printing.ts'

let page: Page
let book: PrintStage

beforeAll(async () => {
  book = await openBook()
  page = book.page
  await keepPictures(page, pictures, [pictured, album])
  await keep(page, [pictured, album])
  await page.locator('.stove').waitFor()
})
afterAll(() => book?.stage.close())

/** Nothing of the app around it. */
const chrome = /Settings|Protocols|Back to the record|US Letter/

describe('a printed record', () => {
  it.each(['A4', 'US Letter'] as const)(
    'of a short batch has all of it, on three pages at most, nothing cut: %s',
    async (paper) => {
      const record = recordFrom(short)
      await choose(page, short, 'Record', paper)
      await print(page, (out) => {
        expectPages(out, sizes[paper], 14)
        expect(out.pages.length).toBeGreaterThanOrEqual(1)
        expect(out.pages.length).toBeLessThanOrEqual(3)
        const words = allWords(out)
        expect(words).not.toMatch(chrome)
        const wanted = [
          record.identity.colourway,
          `Batch ${record.identity.batchName}`,
          record.protocol.title,
          'by dyer A',
          'A1 60 g, A2 40 g',
          ...record.steps.map((step) => step.sentence),
          ...record.amounts.map((amount) => amount.label),
          ...record.readings.map((reading) => reading.words),
          ...record.judgements.map((judged) => `${judged.of}: ${judged.grade}`),
          ...record.programme.setOut.map((item) => item.label),
          `strandline:batch/${short.potId}`,
          'Kept in the manner of a batch record. It certifies nothing.'
        ]
        expect(wanted.length).toBeGreaterThan(60)
        for (const text of wanted) expect(words).toContain(flat(text))
        expect(words).not.toContain('see the file)')
        expect(words).not.toMatch(/and \d+ more/)
        out.pages.forEach(({ words: foot }, i) => {
          expect(foot).toContain(`Moss · batch 2026-06-14 Moss ${i + 1} of ${out.pages.length}`)
        })
      })
    }
  )

  it.each(['A4', 'US Letter'] as const)(
    'of a long one says what it leaves out, and keeps to three pages: %s',
    async (paper) => {
      const record = recordFrom(long)
      await choose(page, long, 'Record', paper)
      await print(page, (out) => {
        expectPages(out, sizes[paper], 14)
        expect(out.pages.length).toBe(3)
        const words = allWords(out)
        for (const [what, all] of [
          ['readings', record.readings.map((reading) => reading.words)],
          ['notes', record.notes.map((note) => note.text.slice(0, note.text.indexOf(':') + 1))],
          ['steps', record.steps.map((step) => step.sentence)]
        ] as const) {
          const left = Number(new RegExp(`and (\\d+) more ${what}: see the file`).exec(words)?.[1])
          expect(left, what).toBeGreaterThan(1)
          const rows = what === 'steps' ? stepRows(words) : all.filter((text) => words.includes(flat(text))).length
          expect(rows + left, what).toBe(all.length)
        }
        // The first and the last are there: how it began and how it ended.
        for (const text of [
          'Remark 0:',
          'Remark 29:',
          record.steps[0]?.sentence ?? '?',
          record.steps.at(-1)?.sentence ?? '?'
        ])
          expect(words).toContain(flat(text))
      })
    }
  )

  it('repeats the head of a table on the next page, and cuts no row in two', async () => {
    await choose(page, long, 'Record', 'A4')
    await print(page, ({ pages }) => {
      const [, second, third] = pages
      for (const next of [second, third]) expect(next?.words).toMatch(/^(When What|Planned Done Step) /)
      const notesShown = recordFrom(long).notes.filter((note) =>
        pages.some(({ words }) => words.includes(note.text.slice(0, 10)))
      )
      for (const { text } of notesShown) {
        const told = flat(text).slice(0, 90)
        expect(
          pages.filter(({ words }) => words.includes(told)),
          told
        ).toHaveLength(1)
      }
    })
  })

  it('is never longer than three pages, whatever was written', async () => {
    for (const paper of ['A4', 'US Letter'] as const) {
      await choose(page, huge, 'Record', paper)
      await print(page, (out) => {
        expect(out.pages.length).toBeLessThanOrEqual(3)
        expectPages(out, sizes[paper], 14)
        expect(allWords(out)).toMatch(/and \d+ more notes: see the file/)
        // Of what was given at the start, too.
        expect(allWords(out)).toMatch(/and \d+ more: see the file/)
        expect(allWords(out)).toContain('(cut: see the file)')
      })
    }
  })

  it('is black on white from edge to edge where the screen is dark', async () => {
    await page.emulateMedia({ colorScheme: 'dark' })
    await choose(page, short, 'Record', 'A4')
    await print(page, ({ picture }) => {
      const seen = picture(1, 40)
      expect(seen.rgba[0], 'the corner').toBe(255)
      expect(seen.rgba.some((value) => value < 60)).toBe(true)
      const white = seen.rgba.filter((value) => value === 255).length / seen.rgba.length
      expect(white).toBeGreaterThan(0.8)
    })
    await page.emulateMedia({ colorScheme: 'light' })
  })
})

const photosOf = (batch: typeof pictured) => recordFrom(batch).media.filter(({ kind }) => kind === 'photo')

/** How many photos lie on a page: each is as wide as a column, and red, as nothing else on a sheet is. */
function redShare({ picture, pages }: Printed): number {
  const red = pages.map((_, i) => {
    const { rgba } = picture(i + 1, 40)
    let count = 0
    for (let at = 0; at < rgba.length; at += 4) {
      if ((rgba[at] ?? 0) > 150 && (rgba[at + 1] ?? 255) < 90 && (rgba[at + 2] ?? 255) < 90) count++
    }
    return count / (rgba.length / 4)
  })
  return red.reduce((sum, share) => sum + share, 0)
}

async function chosenWithPhotos(batch: typeof pictured, paper: 'A4' | 'US Letter'): Promise<void> {
  await choose(page, batch, 'Record', paper)
  // The pad waits for the last photo to be opened.
  await page.locator('.print-choices button:enabled', { hasText: /^Print$/ }).waitFor()
}

describe('photos in a printed record', () => {
  it.each(['A4', 'US Letter'] as const)('stand small in rows with step and time under each: %s', async (paper) => {
    await chosenWithPhotos(pictured, paper)
    await print(page, (out) => {
      expectPages(out, sizes[paper], 14)
      expect(out.pages.length).toBeLessThanOrEqual(3)
      const words = allWords(out)
      const photos = photosOf(pictured)
      expect(photos).toHaveLength(6)
      for (const { label, what, said } of photos) {
        expect(label).not.toBe('')
        expect(words).toContain(flat(`${label}, ${said.at.slice(11, 16)}: ${what}`))
      }
      expect(words).toContain('Let go: to make room')
      expect(words).not.toMatch(/more photos?:/)
      // Five of them, 32 mm high and 4 : 3, on what pages there are.
      const sheetMm2 = sizes[paper][0] * sizes[paper][1]
      const inMm2 = redShare(out) * sheetMm2
      expect(inMm2 / (5 * 32 * ((32 * 4) / 3))).toBeGreaterThan(0.85)
      expect(inMm2 / (5 * 32 * ((32 * 4) / 3))).toBeLessThan(1.1)
    })
  })

  it.each(['A4', 'US Letter'] as const)(
    'that are too many are said to be left out, and the record keeps to three pages: %s',
    async (paper) => {
      await chosenWithPhotos(album, paper)
      await print(page, (out) => {
        expectPages(out, sizes[paper], 14)
        expect(out.pages.length).toBe(3)
        const words = allWords(out)
        const shown = photosOf(album).filter(({ what }) => words.includes(what))
        const left = Number(/and (\d+) more photos: see the record on the device/.exec(words)?.[1])
        expect(shown.length).toBeGreaterThanOrEqual(4)
        expect(shown.length + left).toBe(60)
        // None is cut in two, and its words stay with it.
        for (const { what } of shown) expect(out.pages.filter((one) => one.words.includes(what))).toHaveLength(1)
        expect(words).toContain('sight 0 end')
        expect(words).toContain('sight 59 end')
      })
    }
  )
})

/** Rows of the last table: two times, or none planned, and a sentence. */
function stepRows(words: string): number {
  const table = words.slice(words.indexOf('Every step'))
  return [...table.matchAll(/(\d\d:\d\d|not planned) (\d\d:\d\d|open) \S/g)].length
}
