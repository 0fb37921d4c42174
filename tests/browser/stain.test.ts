// A witness cloth, and a skein marked spot by spot, in Chromium: made-up photos on a phone by touch, and at a desk by keys.
import jpeg from 'jpeg-js'
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { violations } from './stage/axe.ts'
import { givePhoto } from './stage/give-photo.ts'
import { press } from './stage/press.ts'
import { openStage, type Stage } from './stage/stage.ts'
import { tabTo } from './stage/tab-to.ts'

let stage: Stage
beforeAll(async () => {
  stage = await openStage()
})
afterAll(() => stage?.close())

type Rgb = readonly [number, number, number]
const [WIDE, HIGH] = [400, 300]
const GREY: Rgb = [118, 118, 118]

/** Squares of 100 px on a grey ground, each about its middle; `brighter`: the whole in another light. */
function photo(squares: readonly { x: number; y: number; colour: Rgb }[], brighter = 1): Buffer {
  const data = Buffer.alloc(WIDE * HIGH * 4, 255)
  for (let at = 0; at < WIDE * HIGH; at++) {
    const [x, y] = [at % WIDE, Math.floor(at / WIDE)]
    const on = squares.find((one) => Math.abs(one.x - x) < 50 && Math.abs(one.y - y) < 50)
    for (const [nth, code] of (on?.colour ?? [90, 90, 90]).entries()) data[4 * at + nth] = Math.round(code * brighter)
  }
  return jpeg.encode({ data, width: WIDE, height: HIGH }, 95).data
}

const button = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name })
const card = (page: Page): Locator => page.locator('.swatches-verdict')
const put = (page: Page): Promise<number> => page.getByRole('button', { name: / ✓$/ }).count()

async function tapAt(page: Page, x: number, y: number): Promise<void> {
  const picture = page.getByRole('application')
  await picture.scrollIntoViewIfNeeded()
  const still = await put(page)
  const box = await picture.boundingBox()
  if (!box) throw new Error('no picture')
  await page.touchscreen.tap(box.x + (x / WIDE) * box.width, box.y + (y / HIGH) * box.height)
  await expect.poll(() => put(page)).toBe(still + 1)
}

it('on a phone: clean and stained cloth are marked in three photos, the stain is told and kept with them', async () => {
  const visit = await stage.visit({ bypassCSP: true })
  const { page } = visit
  await page.goto(`${stage.host.address}#/swatches`)
  await button(page, 'Did it bleed?').tap()
  const [left, middle, right] = [
    { x: 70, y: 150 },
    { x: 200, y: 150 },
    { x: 330, y: 150 }
  ]
  for (const [nth, brighter] of [1, 0.97, 1.02].entries()) {
    const squares = [
      { ...left, colour: GREY },
      { ...middle, colour: [225, 224, 214] as const },
      { ...right, colour: [225, 196 + nth, 200] as const }
    ]
    await givePhoto(page, { name: `cloth-${nth}.jpg`, jpeg: photo(squares, brighter), nth: nth + 1 }, (pad) =>
      pad.tap()
    )
    if (nth === 0) for (const { x, y } of [left, middle, right]) await tapAt(page, x, y)
  }
  await page.getByText('Say whether the cloth is dry, and the stain is here.').waitFor()
  await button(page, 'Still damp').tap()
  await page.getByText(/^Damp cloth is deeper than dry cloth/).waitFor()
  await button(page, 'Dry').tap()
  await page.getByLabel('What cloth').fill('White cotton')
  await page.getByLabel('What it went through').fill('washed with it at 40 °C')
  await card(page)
    .filter({ hasText: /^(Clearly|Heavily) stainedStep \d.*ΔE 1\d\.\d ± \d\.\d/ })
    .waitFor()
  await card(page)
    .getByText(/ISO 105-A03.*no grade of any standard.*D65\/2°\.$/)
    .waitFor()
  expect(await violations(page), 'with a stain').toEqual([])
  await press(button(page, 'Keep this'), () => page.getByText('Kept.', { exact: true }).isVisible())
  await page.reload()
  const kept = page.getByRole('region', { name: 'Kept' })
  await kept.getByText(/^Bleed: (clearly|heavily) stained\. Step/).waitFor()
  await kept.getByText('White cotton, washed with it at 40 °C. By 3 photos.').waitFor()
  await expect.poll(() => kept.getByRole('img').count()).toBe(3)
  expect(visit.complaints).toEqual([])
  expect(visit.elsewhere()).toEqual([])
})

it('typed by keys, a slip of the cloth is told at its field', async () => {
  const { page } = await stage.visit({ viewport: { width: 1440, height: 900 }, hasTouch: false, isMobile: false })
  await page.goto(`${stage.host.address}#/swatches`)
  for (const name of ['Did it bleed?', 'An instrument']) {
    await tabTo(page, button(page, name))
    await page.keyboard.press('Enter')
  }
  await tabTo(page, page.getByLabel('Clean cloth: L*a*b*'))
  await page.keyboard.type('93 0 4')
  await tabTo(page, page.getByLabel('Stained cloth: L*a*b*'))
  await page.keyboard.type('93 8.5')
  await page.getByText('Line 1: 2 figures where three are wanted: L*, a* and b*.').waitFor()
  await page.keyboard.type(' 4')
  await tabTo(page, button(page, 'Dry'))
  await page.keyboard.press('Enter')
  await card(page)
    .filter({ hasText: /^Lightly stainedStep 3, ΔE 8\.5/ })
    .waitFor()
  await tabTo(page, button(page, 'Keep this'))
  await page.keyboard.press('Enter')
  await page.getByText(/^Bleed: lightly stained\. Step 3, ΔE 8\.5$/).waitFor()
})

it('a skein is marked spot by spot, by touch and by arrow keys, in its order', async () => {
  const { page, complaints } = await stage.visit()
  await page.goto(`${stage.host.address}#/swatches`)
  // Spots that lie on no line, the deepest first; a card between them.
  const spots = [
    { x: 330, y: 75, colour: [60, 80, 40] as const },
    { x: 70, y: 75, colour: [90, 120, 60] as const },
    { x: 70, y: 225, colour: [140, 170, 100] as const }
  ]
  const grey = { x: 200, y: 150, colour: GREY }
  await givePhoto(page, { name: 'spots.jpg', jpeg: photo([...spots, grey]), nth: 1 }, (pad) => pad.tap())
  await tapAt(page, grey.x, grey.y)
  await button(page, 'Spot by spot').tap()
  await page.getByText('How many there are, and how large').tap()
  for (const [what, count] of [
    ['Swatches of the series', 5],
    ['Places of undyed yarn', 2],
    ['Spots on the skein', 5]
  ] as const) {
    for (let nth = 0; nth < count; nth++) await button(page, `${what}: one fewer`).tap()
  }
  await expect.poll(() => page.getByRole('status', { name: 'Spots on the skein' }).textContent()).toBe('3')
  await page.getByText('S1: Skein, spot 1, at end A').waitFor()
  for (const { x, y } of spots.slice(0, 2)) await tapAt(page, x, y)
  // The last by keys: it begins beside the one before, and the arrows bring it to its place.
  const picture = page.getByRole('application', { name: /S3 Skein, spot 3, at end B: not marked yet/ })
  await picture.focus()
  for (let nth = 0; nth < 10; nth++) await page.keyboard.press('Shift+ArrowDown')
  for (const _ of [1, 2]) await page.keyboard.press('Shift+ArrowLeft')
  await page.getByRole('application', { name: /S3 .*: \d+ % across, 7\d % down/ }).waitFor()
  await button(page, 'Dry').tap()
  await button(page, 'One fibre').tap()
  // Without a series nobody can tell; the spots stand in the skein's order, deepest first.
  await card(page)
    .filter({ hasText: /^Cannot tell/ })
    .waitFor()
  const depths = await page.getByRole('table').locator('tbody td:nth-child(2)').allTextContents()
  expect(depths).toHaveLength(3)
  expect(depths.map(Number)).toEqual([...depths.map(Number)].sort((one, other) => one - other))
  expect(Number(depths[2]) - Number(depths[0])).toBeGreaterThan(25)
  expect(await violations(page), 'with spots').toEqual([])
  // What was kept of the photo is there to be held against something, band by band.
  await press(button(page, 'Keep this'), () => page.getByText('Kept.', { exact: true }).isVisible())
  await button(page, 'Does it match?').tap()
  const chosen = page.getByLabel('The skein', { exact: true }).locator('option:checked')
  await expect.poll(() => chosen.textContent()).toMatch(/^No batch, .*, one photo, 3 bands$/)
  await page.getByLabel('Held against', { exact: true }).selectOption('L*a*b* typed here')
  await page.getByLabel('Held against: L*a*b*').fill(depths.map((l) => `${Number(l) + 20} 0 0`).join('\n'))
  await card(page)
    .filter({ hasText: /^[^.]*deeper[^.]*ΔE00 \d+\.\d/i })
    .waitFor()
  await card(page)
    .getByText(/One is of a photo, and a camera sees colours in a way of its own/)
    .waitFor()
  expect(await page.getByRole('table').getByRole('row').count()).toBe(4)
  expect(complaints).toEqual([])
})
