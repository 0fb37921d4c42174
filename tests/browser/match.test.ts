// A skein held against another batch in Chromium: on a phone by touch, and by the keyboard alone, to a match that is kept
// in the batch's record.
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { violations } from './stage/axe.ts'
import { dyed, keep } from './stage/kept-batches.ts'
import { press } from './stage/press.ts'
import { openStage, type Stage } from './stage/stage.ts'
import { tabTo } from './stage/tab-to.ts'

let stage: Stage
beforeAll(async () => {
  stage = await openStage()
})
afterAll(() => stage?.close())

const button = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name })
const card = (page: Page): Locator => page.locator('.swatches-verdict')
const field = (page: Page, label: string): Locator => page.getByLabel(label, { exact: true })

/** Readings of Moss by an instrument, kept with a verdict that cannot tell. */
async function moss(page: Page): Promise<void> {
  await page.goto(`${stage.host.address}#/swatches/batch/kept-moss`)
  await button(page, 'An instrument').tap()
  await field(page, 'Light and observer').selectOption('D65/2')
  await field(page, 'Skein').fill('40 20 -30; 40.1 20 -30; 40 20.1 -30\n50 18 -26; 50.1 18 -26; 50 18.1 -26')
  await button(page, 'Dry').tap()
  await button(page, 'One fibre').tap()
  await press(button(page, 'Keep it in the record'), () => page.getByText('Kept in the batch’s record.').isVisible())
}

it('on a phone: a skein is held against another batch, refused for another light, kept, and stands in its record', async () => {
  const visit = await stage.visit({ bypassCSP: true })
  const { page } = visit
  await page.goto(stage.host.address)
  await page.getByRole('heading', { name: 'No pot is on' }).waitFor()
  const of = (potId: string, colourway: string, parentBatchId: string | null = null) =>
    dyed({
      potId,
      startMs: Date.UTC(2031, 5, 14, 8),
      pot: { colourway, batchName: `2031-06-14 ${colourway}`, parentBatchId }
    })
  await keep(page, [of('kept-moss', 'Moss'), of('kept-fern', 'Fern', 'kept-moss')])
  await moss(page)
  await page.goto(`${stage.host.address}#/swatches/batch/kept-fern`)
  await button(page, 'Does it match?').tap()
  // Nothing of Fern is kept: its readings are typed. Its parent is what it is held against.
  await page.getByText(/^No readings of this batch were kept yet\./).waitFor()
  await expect
    .poll(() => field(page, 'Held against').locator('option:checked').textContent())
    .toMatch(/^Parent: 2031-06-14 Moss, .*instrument D65\/2°, 2 bands$/)
  await field(page, 'The skein: L*a*b*').fill('43 19')
  await page.getByText('Line 1: 2 figures where three are wanted: L*, a* and b*.').waitFor()
  expect(await page.getByText('What stands in the way is told above.').count()).toBe(1)
  await field(page, 'The skein: L*a*b*').fill(
    '43 19 -30; 43.1 19 -30; 43 19.1 -30\n58 18 -26; 58.1 18 -26; 58 18.1 -26'
  )
  await field(page, 'The skein: light and observer').selectOption('D50/2')
  await page
    .getByText('One colour is told against D65/2, the other against D50/2. Measure both in the same way.')
    .waitFor()
  expect(await violations(page), 'refused').toEqual([])
  await field(page, 'The skein: light and observer').selectOption('D65/2')
  await card(page)
    .filter({ hasText: /^LighterΔE00 \d\.\d ± 0\.\d/ })
    .waitFor()
  await card(page)
    .getByText(/^Band 2 differs most: ΔE00 7\.\d ± 0\.\d, lighter\.$/)
    .waitFor()
  await card(page)
    .getByText(/step 2-3 of the grey scale .*no grade of any standard/)
    .waitFor()
  expect(await page.getByRole('table').getByRole('row').count()).toBe(3)
  expect(await violations(page), 'with a match').toEqual([])
  await press(button(page, 'Keep it in the record'), () => page.getByText('Kept in the batch’s record.').isVisible())
  await page.goto(`${stage.host.address}#/dye-book/kept-fern`)
  await page.reload()
  const found = page.getByRole('region', { name: 'Verdict on the skein' })
  await found.getByText(/^Match: lighter\. ΔE00 \d\.\d ± 0\.\d$/).waitFor()
  await found.getByText(/^Of typed L\*a\*b\* of 2 bands, held against 2031-06-14 Moss, /).waitFor()
  await found.getByText(/Both are told against D65\/2°\./).waitFor()
  expect(await violations(page), 'the record').toEqual([])
  expect(visit.complaints).toEqual([])
  expect(visit.elsewhere()).toEqual([])
})

it('by the keyboard alone: both are typed, matched and kept', async () => {
  const { page, complaints } = await stage.visit({
    viewport: { width: 1440, height: 900 },
    hasTouch: false,
    isMobile: false
  })
  await page.goto(`${stage.host.address}#/swatches`)
  await tabTo(page, button(page, 'Does it match?'))
  await page.keyboard.press('Enter')
  await tabTo(page, field(page, 'The skein: L*a*b*'))
  await page.keyboard.type('40 20 10')
  await tabTo(page, field(page, 'Held against'))
  await page.keyboard.type('L*a')
  await tabTo(page, field(page, 'Held against: L*a*b*'))
  await page.keyboard.type('52 20 10')
  await card(page)
    .filter({ hasText: /^DeeperΔE00 \d+\.\d/ })
    .waitFor()
  await card(page)
    .getByText(/How much these readings stray is not known/)
    .waitFor()
  await tabTo(page, button(page, 'Keep this'))
  await page.keyboard.press('Enter')
  await page.getByText('Kept.', { exact: true }).waitFor()
  await page.reload()
  await page.getByText(/^Match: deeper\. ΔE00 \d+\.\d$/).waitFor()
  expect(complaints).toEqual([])
})
