// A skein judged in Chromium: photos of the corpus as files on a phone, marked by touch, and by the keyboard alone, to a
// verdict that is kept in the batch's record.
import jpeg from 'jpeg-js'
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Marks, Patch, Photo } from '../../src/core/colour/index.ts'
import { pictures } from '../photo-corpus/case.ts'
import { violations } from './stage/axe.ts'
import { givePhoto } from './stage/give-photo.ts'
import { dyed, keep } from './stage/kept-batches.ts'
import { press } from './stage/press.ts'
import { openStage, type Stage, type Visit } from './stage/stage.ts'
import { tabTo } from './stage/tab-to.ts'

let stage: Stage
beforeAll(async () => {
  stage = await openStage()
})
afterAll(() => stage?.close())

/** It split, and turned yellower; the seed is of the part that is judged. */
const { taken, skein } = pictures('split', 'judge', 50_002)
const [BANDS, SERIES] = [skein.bands.length, skein.series.length]
const POT = 'kept-moss'

const jpegOf = ({ data, width, height }: Photo): Buffer =>
  jpeg.encode({ data: Buffer.from(data.buffer), width, height }, 95).data

const button = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name })
const picture = (page: Page): Locator => page.getByRole('application')
const verdict = (page: Page): Locator => page.locator('.swatches-verdict')

async function opened(more: Parameters<Stage['visit']>[0], route = '#/swatches'): Promise<Visit> {
  const visit = await stage.visit(more)
  await visit.page.goto(`${stage.host.address}${route}`)
  await visit.page.getByRole('heading', { name: 'Swatches', level: 1 }).waitFor()
  return visit
}

const give = (
  page: Page,
  photo: Photo,
  nth: number,
  go: (pad: Locator) => Promise<void>,
  by?: 'Choose' | 'Take'
): Promise<void> => givePhoto(page, { name: `moss-${nth}.jpg`, jpeg: jpegOf(photo), nth, by }, go)

/** The places in the order in which the screen asks for them, as shares of the picture. */
function places({ grey, undyed, series, skein: along }: Marks, { width, height }: Photo): { x: number; y: number }[] {
  const [first, last] = [along[0]?.patch as Patch, along.at(-1)?.patch as Patch]
  const half = { x: (last.x - first.x) / (BANDS - 1) / 2, y: (last.y - first.y) / (BANDS - 1) / 2 }
  const ends = [
    { x: first.x - half.x, y: first.y - half.y },
    { x: last.x + half.x, y: last.y + half.y }
  ]
  return [grey, ...ends, ...undyed, ...series].map(({ x, y }) => ({ x: x / width, y: y / height }))
}

async function swatches(page: Page, count: number, go: (pad: Locator) => Promise<void>): Promise<void> {
  await go(page.getByText('How many there are, and how large'))
  const said = page.getByRole('status', { name: 'Swatches of the series' })
  for (let now = Number(await said.textContent()); now < count; now++) {
    await go(button(page, 'Swatches of the series: one more'))
    await expect.poll(() => said.textContent()).toBe(String(now + 1))
  }
}

describe('on a phone, by touch', () => {
  it('three photos are marked and judged, and the verdict stands in the record after a reload', async () => {
    const visit = await stage.visit({ bypassCSP: true })
    const { page } = visit
    await page.goto(stage.host.address)
    await page.getByRole('heading', { name: 'No pot is on' }).waitFor()
    await keep(page, [dyed({ potId: POT, startMs: Date.UTC(2031, 5, 14, 8), pot: { colourway: 'Moss' } })])
    await page.goto(`${stage.host.address}#/dye-book/${POT}`)
    await page.reload()
    await page.getByRole('heading', { name: 'Moss', level: 1 }).waitFor()
    await press(button(page, 'Judge a swatch of it'), () => page.getByText('Judge by').isVisible())
    const tap = (pad: Locator): Promise<void> => pad.tap()
    expect(await violations(page), 'before a photo').toEqual([])
    for (const [nth, { photo, marks }] of taken.entries()) {
      await give(page, photo, nth + 1, tap, nth === 0 ? 'Take' : 'Choose')
      if (nth > 0) continue
      await swatches(page, SERIES, tap)
      await picture(page).scrollIntoViewIfNeeded()
      for (const { x, y } of places(marks, photo)) {
        const still = await page.getByRole('button', { name: / ✓$/ }).count()
        const box = await picture(page).boundingBox()
        if (!box) throw new Error('no picture')
        await page.touchscreen.tap(box.x + x * box.width, box.y + y * box.height)
        await expect.poll(() => page.getByRole('button', { name: / ✓$/ }).count()).toBe(still + 1)
      }
    }
    await button(page, 'Dry').tap()
    await button(page, 'One fibre').tap()
    await verdict(page)
      .filter({ hasText: /^SplitTurns yellower from band \d/ })
      .waitFor()
    await verdict(page).getByText('What would settle it').waitFor()
    await verdict(page).getByText('It is no grade of any standard.').waitFor()
    expect(await page.getByRole('table').getByRole('row').count()).toBe(1 + BANDS)
    expect(await violations(page), 'with a verdict').toEqual([])
    await button(page, 'Still damp').tap()
    await verdict(page).filter({ hasText: 'The yarn is wet' }).waitFor()
    await button(page, 'Dry').tap()
    await button(page, 'Two or more').tap()
    await verdict(page).filter({ hasText: 'Two fibres, cannot tell' }).waitFor()
    await button(page, 'One fibre').tap()
    await verdict(page)
      .filter({ hasText: /^Split/ })
      .waitFor()
    await press(button(page, 'Keep it in the record'), () => page.getByText('Kept in the batch’s record.').isVisible())
    await page.goto(`${stage.host.address}#/dye-book/${POT}`)
    await page.reload()
    const found = page.getByRole('region', { name: 'Verdict on the skein' })
    await found.getByText(/^Split\. Turns yellower from band \d$/).waitFor()
    await expect.poll(() => found.getByRole('img').count()).toBe(taken.length)
    expect(await violations(page), 'the record').toEqual([])
    expect(visit.complaints).toEqual([])
    expect(visit.elsewhere()).toEqual([])
  })

  it('a burnt-out photo is told in words, and a file that is no picture too', async () => {
    const { page } = await opened({})
    const [{ photo, marks }] = taken as [(typeof taken)[number]]
    const data = photo.data.map((code, nth) => (nth % 4 === 3 ? 255 : Math.min(255, code * 3)))
    await give(page, { ...photo, data }, 1, (pad) => pad.tap())
    await picture(page).scrollIntoViewIfNeeded()
    for (const [nth, { x, y }] of places(marks, photo).slice(0, 10).entries()) {
      const box = await picture(page).boundingBox()
      if (!box) throw new Error('no picture')
      await page.touchscreen.tap(box.x + x * box.width, box.y + y * box.height)
      await expect.poll(() => page.getByRole('button', { name: / ✓$/ }).count()).toBe(nth + 1)
    }
    await page.getByText(/Photo 1\. Too bright or too dark to read, undyed 1: .*Expose it less\./).waitFor()
    const asked = page.waitForEvent('filechooser')
    await button(page, 'Choose another photo').tap()
    await (await asked).setFiles({ name: 'list.txt', mimeType: 'text/plain', buffer: Buffer.from('no picture') })
    await page.getByText('list.txt is not taken. It is not a picture. Choose a JPEG or PNG picture.').waitFor()
  })
})

const desk = { viewport: { width: 1440, height: 900 }, hasTouch: false, isMobile: false }

it('by the keyboard alone: photos chosen, marked by arrow keys, judged and kept', async () => {
  const visit = await opened(desk)
  const { page } = visit
  const go = async (pad: Locator): Promise<void> => {
    await tabTo(page, pad)
    await page.keyboard.press('Enter')
  }
  for (const [nth, { photo, marks }] of taken.entries()) {
    await give(page, photo, nth + 1, go)
    if (nth > 0) continue
    await swatches(page, SERIES, go)
    await tabTo(page, picture(page))
    for (const at of places(marks, photo)) {
      await page.keyboard.press('ArrowRight')
      for (const [axis, less, more] of [
        ['x', 'ArrowLeft', 'ArrowRight'],
        ['y', 'ArrowUp', 'ArrowDown']
      ] as const) {
        const now = await placeSaid(page)
        let away = Math.round(100 * at[axis]) - now[axis]
        const key = away < 0 ? less : more
        for (away = Math.abs(away); away >= 5; away -= 5) await page.keyboard.press(`Shift+${key}`)
        // A small step is half of one in a hundred.
        for (; away > 0; away--) for (const _ of [1, 2]) await page.keyboard.press(key)
        await expect.poll(async () => Math.abs((await placeSaid(page))[axis] - 100 * at[axis])).toBeLessThan(2)
      }
      await page.keyboard.press('Enter')
    }
  }
  await go(button(page, 'Dry'))
  await go(button(page, 'One fibre'))
  await verdict(page)
    .filter({ hasText: /^SplitTurns yellower/ })
    .waitFor()
  await go(button(page, 'Keep this'))
  await page.getByText('Kept.', { exact: true }).waitFor()
  await page.reload()
  await page.getByText(/^Split\. Turns yellower from band \d$/).waitFor()
  expect(visit.complaints).toEqual([])
})

async function placeSaid(page: Page): Promise<{ x: number; y: number }> {
  const said = /(\d+) % across, (\d+) % down/.exec((await picture(page).getAttribute('aria-label')) ?? '')
  if (!said) throw new Error('the mark says no place')
  return { x: Number(said[1]), y: Number(said[2]) }
}

it('what an eye sees is kept as that, and typed readings are judged', async () => {
  const { page } = await opened(desk)
  await button(page, 'My eye').click()
  await button(page, 'Only lighter').click()
  await page.getByLabel('In your words').fill('Paler to the tip, the same green.')
  await page.getByText('Still wanted: whether it is dry.').waitFor()
  await button(page, 'Dry').click()
  await button(page, 'Keep this').click()
  await page.getByText('By eye: only lighter').waitFor()
  await page.getByText('Paler to the tip, the same green. Not measured.').waitFor()
  await button(page, 'An instrument').click()
  await page.getByLabel('Skein', { exact: true }).fill('42 30 11\n48 27')
  await page.getByText('Line 2: 2 figures where three are wanted: L*, a* and b*.').waitFor()
  const series = [40, 46, 52, 58, 64, 70, 76]
  await page.getByLabel('Undyed yarn').fill('88 0 12')
  await page.getByLabel('Dilution series').fill(series.map((l) => thrice(l, 20)).join('\n'))
  await page
    .getByLabel('Skein', { exact: true })
    .fill([42, 47, 52, 57, 62, 67].map((l, nth) => thrice(l, 20 + 5 * nth)).join('\n'))
  await button(page, 'Dry').click()
  await button(page, 'One fibre').click()
  await verdict(page)
    // A hue of 20 degrees that goes up: towards red, which is at 25.
    .filter({ hasText: /^SplitTurns redder from band 2/ })
    .waitFor()
  await button(page, 'Keep this').click()
  await page.getByText('By readings typed from an instrument, D65/10.').waitFor()
})

/** Three readings of one colour, as an instrument strays. */
function thrice(l: number, deg: number): string {
  const [chroma, rad] = [50 - 0.5 * (l - 40), (deg * Math.PI) / 180]
  const strayed = [0.1, -0.1, (l % 3) / 30]
  const [a, b] = [chroma * Math.cos(rad), chroma * Math.sin(rad)]
  return strayed.map((stray) => `${l} ${(a + stray).toFixed(2)} ${(b - stray).toFixed(2)}`).join('; ')
}
