// A pot without a protocol, by touch on a phone: told as it is done, ended, made a protocol of, and that one started.
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { holdPad } from './stage/hold.ts'
import { REHEARSAL, storedIn } from './stage/journal.ts'
import { press, pressUntilThere } from './stage/press.ts'
import { openStage, type Stage } from './stage/stage.ts'

let stage: Stage
beforeAll(async () => {
  stage = await openStage()
})
afterAll(() => stage?.close())

const pad = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name, exact: true })
const inSheet = (page: Page, name: string | RegExp): Locator =>
  page.getByRole('dialog').getByRole('button', { name, exact: true })

async function startFree(page: Page): Promise<void> {
  await page.goto(`${stage.host.address}?rehearse=60#/start`)
  await page.getByRole('button', { name: /^Start a free pot/ }).tap()
  await page.getByLabel('Colourway').fill('Moss')
  await page.getByLabel('Dry weight').fill('60')
  await pressUntilThere(pad(page, 'Start'), page.locator('.stove, dialog[open]'))
  const anyway = page.getByRole('dialog').getByRole('button', { name: /^Start/ })
  if ((await anyway.count()) > 0) await pressUntilThere(anyway.first(), page.locator('.stove'))
}

/** How many deeds the journal has: the screen shows one only when it is stored. */
async function deedsTold(page: Page): Promise<number> {
  const { entries } = await storedIn(page, REHEARSAL)
  const kinds = ['Dosed', 'HeatSet', 'YarnMoved', 'DeedDone', 'TemperatureRead', 'Judged']
  const commands = entries.filter(({ event }) => kinds.includes(event.type)).map(({ commandId }) => commandId)
  return new Set(commands).size
}

/** Two taps at most once the sheet is open. */
async function tell(page: Page, ...names: (string | RegExp)[]): Promise<void> {
  const before = await deedsTold(page)
  await pressUntilThere(pad(page, 'Moss: what was done'), page.getByRole('dialog'))
  const last = names.at(-1) as string | RegExp
  if (names.length > 1) await pressUntilThere(inSheet(page, names[0] as string), inSheet(page, last))
  await press(inSheet(page, last), async () => (await deedsTold(page)) > before)
  await page.getByRole('dialog').waitFor({ state: 'detached' })
}

describe('a free pot on a phone', () => {
  it('is told six deeds, finished, made a protocol of, and that protocol is started', {
    timeout: 240_000
  }, async () => {
    const { page, context, complaints } = await stage.visit()
    await startFree(page)
    await tell(page, 'Fill', 'It is in')
    await tell(page, 'Add', 'It is in')
    await tell(page, 'Heat on')
    await page.getByText('Heat is on. Stay by the pot.').first().waitFor()
    await tell(page, 'Skeins in')
    await tell(page, 'Turn')
    await tell(page, 'Heat off')
    await pressUntilThere(pad(page, 'Moss: what was done'), page.getByRole('dialog'))
    await pressUntilThere(inSheet(page, 'Finish'), page.getByRole('heading', { name: 'What becomes of the bath' }))
    const dropped = page.getByRole('dialog').getByRole('button', { name: /^Dropped/ })
    await press(page.getByRole('heading', { name: 'What becomes of the bath' }), async () => {
      await holdPad(dropped)
      return (await storedIn(page, REHEARSAL)).entries.some(({ event }) => event.type === 'Finished')
    })
    const { summaries } = await storedIn(page, REHEARSAL)
    await page.goto(`${stage.host.address}?rehearse=60#/dye-book/${encodeURIComponent(summaries[0]?.potId ?? '')}`)
    await pad(page, 'Make a protocol of this').tap()
    await page.getByRole('heading', { level: 1, name: /Moss, as done$/ }).waitFor()
    const words = await page.locator('main').textContent()
    for (const step of ['Fill the bath', 'Vinegar in', 'Heat up', 'Enter the skein', 'Turn the skein', 'Heat off']) {
      expect(words).toContain(step)
    }
    await pad(page, 'Start a pot').tap()
    await page.getByLabel('Colourway').fill('Fern')
    await page.getByLabel('Dry weight').fill('60')
    const strength = page.getByLabel(/Strength|%/).first()
    if ((await strength.count()) > 0) await strength.fill('5')
    await pressUntilThere(pad(page, 'Start'), page.locator('.stove, dialog[open], [role=alert]'))
    const anyway = page.getByRole('dialog').getByRole('button', { name: /^Start/ })
    if ((await anyway.count()) > 0) await pressUntilThere(anyway.first(), page.locator('.stove'))
    await page.getByText('Fill the bath').first().waitFor()
    expect(complaints).toEqual([])
    await context.close()
  })
})
