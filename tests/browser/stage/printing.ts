// The print screens with a few batches in the book: what is chosen, what comes out, and whether it keeps to its pages.
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import type { PotEvent } from '../../../src/core/pot/events.ts'
import type { BatchRecord } from '../../../src/core/record/record.ts'
import { recordOf } from '../../../src/core/record/record-of.ts'
import { dyed, type KeptBatch, keep } from './kept-batches.ts'
import { type Printed, printed } from './pdf.ts'
import { openStage, type Stage, type Visit } from './stage.ts'

const startMs = Date.UTC(2026, 5, 14, 7)
const MIN = 60_000
export const idOf = (no: number): string => `${no}b5c1d2e-8f00-4a11-9c3d-5e6f70819203`
const pot = (colourway: string, letter: string) => ({
  colourway,
  letter,
  batchName: `2026-06-14 ${colourway}`,
  burner: 'front left',
  fibre: 'merino',
  by: 'dyer A',
  skeins: [
    { tag: `${letter}1`, massG: 60 },
    { tag: `${letter}2`, massG: 40 }
  ]
})

const readings = Array.from(
  { length: 300 },
  (_, i): PotEvent => ({ type: 'TemperatureRead', path: null, tempC: 41 + i / 10, inRange: null })
)
const notes = Array.from(
  { length: 30 },
  (_, i): PotEvent => ({
    type: 'NoteWritten',
    path: null,
    text: `Remark ${i}: ${'cloudy at the wall '.repeat(1 + (i % 6))}`
  })
)
const endless = Array.from(
  { length: 400 },
  (_, i): PotEvent => ({
    type: 'NoteWritten',
    path: null,
    text: `${i} ${i % 2 ? 'WWWWWWWWW'.repeat(300) : 'wide words '.repeat(300)}`
  })
)

export const short = dyed({ potId: idOf(1), startMs, pot: pot('Moss', 'A') })
export const long = dyed({
  potId: idOf(2),
  startMs: startMs + 20 * MIN,
  pot: pot('Autumn plum over forest', 'B'),
  more: [...readings, ...notes]
})
export const huge = dyed({
  potId: idOf(3),
  startMs: startMs - 86_400_000,
  pot: { ...pot('Slate', 'C'), colourway: 'Endless '.repeat(200), fibre: 'wool '.repeat(500) },
  more: [...readings, ...endless]
})
export const formula = dyed({
  potId: idOf(4),
  startMs: startMs + 60 * MIN,
  protocol: 'level-immersion',
  pot: pot('Rust', 'D'),
  more: [{ type: 'NoteWritten', path: null, text: '=HYPERLINK("x")' }]
})

export const recordFrom = ({ entries }: KeptBatch): BatchRecord => recordOf(entries) as BatchRecord

export type PrintStage = { stage: Stage; visit: Visit; page: Page }

export async function openBook(): Promise<PrintStage> {
  const stage = await openStage()
  // The device's clock is the one that the days are told by. axe is a script of the test's own.
  const visit = await stage.visit({ timezoneId: 'UTC', bypassCSP: true, acceptDownloads: true })
  const { page } = visit
  await page.goto(stage.host.address)
  await page.locator('.stove').waitFor()
  await keep(page, [short, long, huge, formula])
  await page.locator('.stove').waitFor()
  return { stage, visit, page }
}

export async function go(page: Page, route: string): Promise<void> {
  await page.evaluate((to) => {
    location.hash = to
  }, route)
}

export type Kind = 'Record' | 'Tag' | 'Sheet of tags' | 'Skein card' | 'Day sheet'

/** The print screen of a batch, with the kind and the paper chosen, drawn to its end. */
export async function choose(page: Page, batch: KeptBatch, kind: Kind, paper?: 'A4' | 'US Letter'): Promise<void> {
  await go(page, `#/dye-book/${batch.potId}/print`)
  await page.getByRole('heading', { level: 1, name: /^Print / }).waitFor()
  for (const name of paper ? [kind, paper] : [kind]) {
    const choice = page.getByRole('button', { name, exact: true })
    await choice.tap()
    await page.locator(`button[aria-pressed=true]:text-is("${name}")`).waitFor()
  }
  await page.locator('.print-sheet').first().waitFor()
  await settled(page)
}

/** Two frames without a change: what is fitted has found its size. */
export async function settled(page: Page): Promise<void> {
  let before = ''
  await expect
    .poll(async () => {
      const now = await page.evaluate(
        () =>
          new Promise<string>((done) =>
            requestAnimationFrame(() =>
              requestAnimationFrame(() =>
                done([...document.querySelectorAll('.print-body')].map((body) => body.innerHTML).join('|'))
              )
            )
          )
      )
      const same = now === before
      before = now
      return same
    })
    .toBe(true)
}

export async function print<T>(page: Page, read: (paper: Printed) => T): Promise<T> {
  const paper = await printed(page)
  try {
    return read(paper)
  } finally {
    paper.done()
  }
}

export const sizes = { A4: [210, 297], 'US Letter': [215.9, 279.4] } as const
/** Chromium writes the size of a page in whole CSS px and whole points. */
const ROUNDING_MM = 0.3

/** A font's own box is a little taller than its line. */
const FONT_MM = 1

export function expectPages({ pages }: Printed, [width, height]: readonly [number, number], marginMm: number): void {
  for (const { widthMm, heightMm, placed } of pages) {
    expect(Math.abs(widthMm - width)).toBeLessThan(ROUNDING_MM)
    expect(Math.abs(heightMm - height)).toBeLessThan(ROUNDING_MM)
    const cut = placed.filter(
      (word) =>
        word.left < marginMm - ROUNDING_MM ||
        word.right > width - marginMm + ROUNDING_MM ||
        word.top < marginMm - FONT_MM ||
        word.bottom > height - 1
    )
    expect(cut).toEqual([])
    expect(placed.length).toBeGreaterThan(3)
  }
}

export const allWords = ({ pages }: Printed): string => pages.map(({ words }) => words).join(' ')
