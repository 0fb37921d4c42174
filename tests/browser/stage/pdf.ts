// What the browser would print, as a PDF, and what an independent reader (poppler) finds in it.
import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import jsqr from 'jsqr'
import type { Page } from 'playwright-core'

/** A word and where it stands, mm from the top left. */
export type Placed = { word: string; left: number; top: number; right: number; bottom: number }
/** Sizes in mm. `words`: all of the page in reading order, lines and spaces drawn together. */
export type PrintedPage = { widthMm: number; heightMm: number; words: string; placed: Placed[] }
export type Picture = { width: number; height: number; rgba: Uint8ClampedArray }
export type Printed = { pages: PrintedPage[]; picture(page: number, dpi: number): Picture; done(): void }

const MM_A_POINT = 25.4 / 72

/** Call `done` when it has been read. */
export async function printed(page: Page): Promise<Printed> {
  const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true })
  const folder = mkdtempSync(join(tmpdir(), 'strandline-print-'))
  const file = join(folder, 'printed.pdf')
  writeFileSync(file, pdf)
  const count = Number(/^Pages: +(\d+)$/m.exec(text('pdfinfo', [file]))?.[1])
  return {
    pages: Array.from({ length: count }, (_, i) => pageOf(file, i + 1)),
    picture: (no, dpi) => pictureOf(file, no, dpi),
    done: () => rmSync(folder, { recursive: true })
  }
}

/** Spaces and line ends are the layout's, not the text's. */
export function flat(said: string): string {
  return said.replace(/\s+/gu, ' ').trim()
}

/** What a QR code in a picture says; jsqr finds one at a time. */
export function codeIn({ width, height, rgba }: Picture): string | null {
  return jsqr(rgba, width, height)?.data ?? null
}

function pageOf(file: string, no: number): PrintedPage {
  const only = ['-f', String(no), '-l', String(no)]
  const [, width, height] = /size: +([\d.]+) x ([\d.]+) pts/.exec(text('pdfinfo', [...only, file])) ?? []
  const words = [
    ...text('pdftotext', ['-bbox', ...only, file, '-']).matchAll(
      /<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">/g
    )
  ]
  const mm = (points: string | undefined): number => Number(points) * MM_A_POINT
  const names = [...text('pdftotext', ['-bbox', ...only, file, '-']).matchAll(/">([^<]*)<\/word>/g)]
  return {
    widthMm: mm(width),
    heightMm: mm(height),
    words: flat(text('pdftotext', ['-enc', 'UTF-8', ...only, file, '-'])),
    placed: words.map(([, left, top, right, bottom], i) => ({
      word: names[i]?.[1] ?? '',
      left: mm(left),
      top: mm(top),
      right: mm(right),
      bottom: mm(bottom)
    }))
  }
}

/** As a printer of so many dots to the inch would lay it down. */
function pictureOf(file: string, no: number, dpi: number): Picture {
  const page = String(no)
  const ppm = run('pdftoppm', ['-r', String(dpi), '-f', page, '-l', page, file])
  const head = /^P6\s+(\d+)\s+(\d+)\s+255\s/.exec(ppm.subarray(0, 40).toString('latin1'))
  if (!head) throw new Error('no picture of the page')
  const [width, height] = [Number(head[1]), Number(head[2])]
  const rgba = new Uint8ClampedArray(width * height * 4).fill(255)
  for (let i = 0; i < width * height; i++) {
    for (let channel = 0; channel < 3; channel++) rgba[i * 4 + channel] = ppm[head[0].length + i * 3 + channel] ?? 0
  }
  return { width, height, rgba }
}

const text = (program: string, args: string[]): string => run(program, args).toString('utf8')

function run(program: string, args: string[]): Buffer {
  try {
    return execFileSync(program, args, { maxBuffer: 1e9 })
  } catch (error) {
    throw new Error(`${program} is needed to read PDF back (Debian: poppler-utils): ${error}`)
  }
}
