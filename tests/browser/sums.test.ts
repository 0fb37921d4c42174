// The sums of the bench in Chromium: by touch on a phone, by the keyboard alone, in °F and US measures, without a network.
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { violations } from './stage/axe.ts'
import { press } from './stage/press.ts'
import { keepsTheApp, keptForOffline, openStage, type Stage, type Visit } from './stage/stage.ts'
import { tabTo } from './stage/tab-to.ts'

let stage: Stage
beforeAll(async () => {
  stage = await openStage()
})
afterAll(() => stage?.close())

const LIST = '#/shelf/sums'
const upright = { viewport: { width: 390, height: 844 } }
/** What a phone's keyboard leaves of it. */
const withKeyboard = { width: 390, height: 430 }

async function at(route: string, visit: Promise<Visit>): Promise<Visit> {
  const visited = await visit
  await visited.page.goto(`${stage.host.address}${route}`)
  return visited
}

const heading = (page: Page, name: string): Promise<void> => page.getByRole('heading', { name, level: 1 }).waitFor()
const head = (page: Page): Locator => page.locator('.sum-head')
const says = (page: Page, words: string | RegExp): Promise<void> => head(page).filter({ hasText: words }).waitFor()
const field = (page: Page, label: string): Locator => page.getByLabel(label, { exact: true })

async function sound({ elsewhere, complaints }: Visit): Promise<void> {
  expect(elsewhere()).toEqual([])
  expect(complaints).toEqual([])
}

/** A finger that comes again until the field has the focus. */
function tapInto(into: Locator): Promise<void> {
  return press(into, () => into.evaluate((element) => element === document.activeElement))
}

describe('on a phone, by touch', () => {
  it('a sum is found, filled in and read while the keyboard is up', async () => {
    const visit = await at(LIST, stage.visit(upright))
    const { page } = visit
    await heading(page, 'Bench sums')
    await field(page, 'Find').fill('liquor water')
    await page.getByRole('link', { name: /^Water for a liquor ratio/ }).tap()
    await heading(page, 'Water for a liquor ratio')
    await says(page, 'Still wanted: dry weight of the goods, liquor ratio.')
    await page.setViewportSize(withKeyboard)
    for (const [label, text] of [
      ['Dry weight of the goods', '50'],
      ['Liquor ratio', '30'],
      ['Stock that goes in (if any)', '40'],
      ['Acid that goes in (if any)', '20'],
      ['Water that the wet goods carry (if any)', '30']
    ] as const) {
      await tapInto(field(page, label))
      // Not by keys: those pressed within a frame of a touch are lost in this browser.
      await field(page, label).fill(text)
      const [answer, typed] = [await head(page).boundingBox(), await field(page, label).boundingBox()]
      // The answer stands at the top and the field below it, both whole.
      expect(answer?.y, label).toBeGreaterThanOrEqual(0)
      expect(typed?.y, label).toBeGreaterThanOrEqual((answer?.y ?? 0) + (answer?.height ?? 0))
      expect((typed?.y ?? 0) + (typed?.height ?? 0), label).toBeLessThanOrEqual(withKeyboard.height)
    }
    await says(page, /Pour\s*1\.41\sL/)
    await sound(visit)
  })

  it('a slip is told at its field, and what was typed stays over leaving and a reload', async () => {
    const visit = await at(`${LIST}/ph`, stage.visit(upright))
    const { page } = visit
    await field(page, 'Water in the bath').fill('6 cups')
    await page.getByText(/“6 cups” can’t be read\. Say which: US cup/).waitFor()
    await page.getByRole('link', { name: 'All sums' }).tap()
    await heading(page, 'Bench sums')
    await page.getByRole('link', { name: /^pH of a bath/ }).tap()
    await heading(page, 'pH of a bath')
    expect(await field(page, 'Water in the bath').inputValue()).toBe('6 cups')
    await page.reload()
    await heading(page, 'pH of a bath')
    expect(await field(page, 'Water in the bath').inputValue()).toBe('6 cups')
    await field(page, 'Water in the bath').fill('3')
    await field(page, 'Unit of Water in the bath').selectOption('L')
    await field(page, 'Alkalinity of the water').fill('100')
    await field(page, 'Vinegar (if any)').fill('40')
    await says(page, /pH 4\.1/)
    await says(page, 'measure for the record')
    await sound(visit)
  })

  it('every finger-sized thing of a sum is at least 44 px, and nothing lies outside the screen', async () => {
    const { page } = await at(`${LIST}/mix`, stage.visit(upright))
    await heading(page, 'Mix dyes by parts')
    const boxes = await page.locator('.sum :is(input, select, button, summary), .sum-back').evaluateAll((all) =>
      all.map((each) => {
        const { left, right, height } = each.getBoundingClientRect()
        return { name: each.outerHTML.slice(0, 80), left, right, height }
      })
    )
    expect(boxes.length).toBeGreaterThan(8)
    for (const { name, left, right, height } of boxes) {
      expect(height, name).toBeGreaterThanOrEqual(44)
      expect(left, name).toBeGreaterThanOrEqual(0)
      expect(right, name).toBeLessThanOrEqual(390)
    }
  })
})

it('by the keyboard alone: found, filled in, looked into, copied', async () => {
  const visit = await at(
    LIST,
    stage.visit({ viewport: { width: 1440, height: 900 }, hasTouch: false, isMobile: false })
  )
  const { page, context } = visit
  await context.grantPermissions(['clipboard-read', 'clipboard-write'])
  await heading(page, 'Bench sums')
  await tabTo(page, field(page, 'Find'))
  await page.keyboard.type('dilution')
  await tabTo(page, page.getByRole('link', { name: /^Dilution series/ }))
  await page.keyboard.press('Enter')
  await heading(page, 'Dilution series')
  await tabTo(page, field(page, 'Dry weight of the goods'))
  await page.keyboard.type('10')
  await tabTo(page, field(page, 'Deepest shade'))
  await page.keyboard.type('2')
  await says(page, /37\.5\smL/)
  expect(await page.getByRole('row').count()).toBe(7)
  await tabTo(page, page.getByText('How this is worked out'))
  await page.keyboard.press('Enter')
  await page.getByText('10 g × 2 ÷ 1 = 20 mL').waitFor()
  await page.getByText('Source: common practice, no source.').waitFor()
  await tabTo(page, page.getByRole('button', { name: 'Copy the result' }))
  await page.keyboard.press('Enter')
  await page.getByText('Copied.').waitFor()
  const text = await page.evaluate(() => navigator.clipboard.readText())
  expect(text).toContain('0.125 % owf\t12.5 mL of 0.1 %\t± 0.8 %')
  await sound(visit)
})

it('in °F and US measures, from the settings on', async () => {
  const visit = await at('#/settings', stage.visit(upright))
  const { page } = visit
  await heading(page, 'Settings')
  for (const name of ['°F', 'US measures', 'oz, lb']) await page.getByRole('button', { name, exact: true }).tap()
  await page.goto(`${stage.host.address}${LIST}/ramp-time`)
  await heading(page, 'How long a ramp takes')
  await field(page, 'From').fill('104')
  await field(page, 'To').fill('203')
  await field(page, 'Rate').fill('1.8')
  await says(page, /55\smin/)
  await page.goto(`${stage.host.address}${LIST}/make-up`)
  await field(page, 'Volume wanted').fill('1')
  await says(page, /0\.33\soz \(9\.46\sg\)/)
  await sound(visit)
})

it('without a network, opened for the first time', async () => {
  const visit = await at('', stage.visit({ ...upright, ...keepsTheApp }))
  const { page, context } = visit
  await page.getByRole('heading', { name: 'No pot is on' }).waitFor()
  await keptForOffline(page)
  await context.setOffline(true)
  await page.evaluate((to) => {
    location.hash = to
  }, `${LIST}/stock`)
  await heading(page, 'Stock for a depth')
  await field(page, 'Dry weight of the goods').fill('50')
  await field(page, 'Depth of shade').fill('0,8')
  await says(page, /40\smL/)
})

describe.each(['light', 'dark'] as const)('for every eye, %s', (colorScheme) => {
  it('the list, a sum not whole yet, one worked out, and one refused are accessible', async () => {
    const visit = await at(LIST, stage.visit({ ...upright, colorScheme, bypassCSP: true }))
    const { page } = visit
    await heading(page, 'Bench sums')
    expect(await violations(page), 'the list').toEqual([])
    await page.goto(`${stage.host.address}${LIST}/acid-dose`)
    await heading(page, 'Acid by the goods')
    expect(await violations(page), 'not whole').toEqual([])
    await field(page, 'Dry weight of the goods').fill('50')
    await field(page, 'Strength on the label').fill('80')
    await page.getByText('Corrosive acid').waitFor()
    await page.getByText('How this is worked out').tap()
    expect(await violations(page), 'worked out').toEqual([])
    await field(page, 'Dry weight of the goods').fill('-50')
    await page.getByText('It can’t be -50.').waitFor()
    expect(await violations(page), 'refused').toEqual([])
    await page.goto(`${stage.host.address}${LIST}/time-to-temperature`)
    await heading(page, 'Time to a temperature')
    expect(await violations(page), 'rows').toEqual([])
  })
})
