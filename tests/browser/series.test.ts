// In Chromium, by touch on a phone: a skein judged by a series that was dyed as a batch, what the records, the tag and the
// comparison say of it, and a bath judged beside cups.
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { violations } from './stage/axe.ts'
import { keepFile, startPot } from './stage/dyer.ts'
import { REAL, storedIn } from './stage/journal.ts'
import { dyed, keep } from './stage/kept-batches.ts'
import { press, pressUntilThere } from './stage/press.ts'
import { openStage, type Stage } from './stage/stage.ts'

let stage: Stage
beforeAll(async () => {
  stage = await openStage()
})
afterAll(() => stage?.close())

const startMs = Date.UTC(2031, 5, 12, 8)
const batch = (potId: string, protocol: string) =>
  dyed({ potId, protocol, goods: '60', startMs, pot: { colourway: potId, batchName: `2031-06-12 ${potId}` } })

/** Invented for the test. */
const look = `strandline: 1
title: Look at it
materials:
  dye: {kind: stock, label: stock Y, strength: 1 %, amount: 2 % owf}
steps:
- add: {amount: all of dye, hands: 20 s}
- check: {grade: bath}
`

/** Three readings of one colour, as an instrument strays. */
function thrice(l: number, deg: number): string {
  const [chroma, rad] = [50 - 0.5 * (l - 40), (deg * Math.PI) / 180]
  return [0.1, -0.1, (l % 3) / 30]
    .map(
      (stray) => `${l} ${(chroma * Math.cos(rad) + stray).toFixed(2)} ${(chroma * Math.sin(rad) - stray).toFixed(2)}`
    )
    .join('; ')
}

const button = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name, exact: true })

it('a series that was dyed judges a skein, both records say so, and a bath stands beside cups', async () => {
  const visit = await stage.visit({ bypassCSP: true })
  const { page } = visit
  await page.goto(stage.host.address)
  await page.getByRole('heading', { name: 'No pot is on' }).waitFor()
  await keep(page, [batch('Steps', 'dilution-series'), batch('Moss', 'dip-gradient')])
  const go = (hash: string): Promise<unknown> => page.goto(`${stage.host.address}${hash}`)

  await go('#/dye-book/Steps')
  await pressUntilThere(button(page, 'Judge a skein by it'), page.getByText('Tabs that lie there'))
  await page.getByLabel('Batch', { exact: true }).selectOption('Moss')
  await press(button(page, /^J6/), () => page.getByText(/^% owf.*5 to mark/).isVisible())
  await press(button(page, 'An instrument'), () => page.getByLabel('Undyed yarn').isVisible())
  await page.getByLabel('Undyed yarn').fill('88 0 12')
  await page.getByLabel('Dilution series').fill([40, 48, 56, 64, 72].map((l) => thrice(l, 20)).join('\n'))
  const skein = [42, 47, 52, 57, 62, 67].map((l, nth) => thrice(l, 20 + 5 * nth)).join('\n')
  await page.getByLabel('Skein', { exact: true }).fill(skein)
  await button(page, 'Dry').tap()
  const dyedAs = page.getByRole('region', { name: 'The series as it was dyed' })
  await press(button(page, 'One fibre'), () => dyedAs.isVisible())
  await dyedAs.getByRole('row', { name: /^J5 0.13 clear 72.0/ }).waitFor()
  expect(await violations(page), 'swatches').toEqual([])
  await press(button(page, 'Keep it in the record'), () => page.getByText('Kept in the batch’s record.').isVisible())

  await go('#/dye-book/Steps')
  const judged = page.getByRole('list', { name: 'Judged by this series' })
  await judged.getByText(/Split\. Turns redder from band \d/).waitFor()
  await judged.getByRole('link', { name: '2031-06-12 Moss' }).tap()
  await page.getByText(/^By the series 2031-06-12 Steps, 5 tabs of 2 to 0.13.% owf\.$/).waitFor()
  await go('#/dye-book/Moss/print')
  await press(button(page, 'Tag'), () => page.getByText(/^Split, redder from \d$/).isVisible())
  const word = page.getByText(/^Split, redder from \d$/)
  // Nothing of it is cut off at the tag's end.
  expect(await word.evaluate((node) => node.scrollWidth - node.clientWidth)).toBeLessThanOrEqual(0)
  await go('#/dye-book/compare/Moss,Steps')
  const differed = page.getByRole('table').first()
  await differed.getByRole('row', { name: /^Verdict on the skein Split\. Turns redder from band \d –$/ }).waitFor()

  await go('#/protocols')
  await keepFile(page, 'look.yaml', look)
  await startPot(page, { title: 'Look at it', colourway: 'Plum', massG: 50 })
  await pressUntilThere(page.locator('.call-pad'), page.locator('.ask-grade').first())
  await pressUntilThere(button(page, /^cups/), button(page, 'how to make them'))
  expect(await violations(page), 'the cups').toEqual([])
  await pressUntilThere(button(page, 'Like the cup of 12 %'), page.getByText('What hue is left?'))
  const stored = async () => (await storedIn(page, REAL)).entries.map(({ event }) => event)
  await press(button(page, 'red'), async () =>
    (await stored()).some((event) => event.type === 'Judged' && event.cups !== undefined)
  )
  const told = (await stored()).filter((event) => event.type === 'Judged' && event.cups !== undefined)
  expect(told).toEqual([
    {
      type: 'Judged',
      path: expect.any(String),
      of: 'bath',
      grade: 'tint',
      hue: 'red',
      cups: { like: [12], ladder: [100, 50, 25, 12, 6, 3, 0] }
    }
  ])
  expect(visit.complaints).toEqual([])
  expect(visit.elsewhere()).toEqual([])
})
