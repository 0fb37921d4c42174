// A dyer at the screen: starts pots on the Start screen and answers what the Stove asks, by touch, seeing only what is
// on it.
import type { Page } from 'playwright-core'
import { press, pressUntilThere, type Touch } from './press.ts'

export type Pot = { title: string; colourway: string; massG: number; values?: Record<string, string> }

/** From the Stove or the list of protocols to a running pot. Ends on the Stove. */
export async function startPot(page: Page, { title, colourway, massG, values = {} }: Pot): Promise<void> {
  await page.evaluate(() => (location.hash = '#/start'))
  // So soon after the last tap a knuckle is taken for a drop, and comes again.
  await pressUntilThere(page.getByRole('button', { name: title }).first(), page.getByLabel('Colourway'))
  await page.getByLabel('Colourway').fill(colourway)
  await page.getByLabel('Dry weight').first().fill(String(massG))
  for (const [label, value] of Object.entries(values)) await page.getByLabel(label, { exact: true }).fill(value)
  for (const cup of await page.locator('.start-cup input').all()) await cup.check()
  await start(page)
}

/** The Start pad, and the sheet "before the heat" where a lamp is out. */
export async function start(page: Page): Promise<void> {
  const pad = page.getByRole('button', { name: /^Start( all the same)?$/ }).last()
  await press(pad, async () => !(await page.locator('.start-cup, dialog').first().isVisible()))
  await page.locator('.stove').waitFor()
}

/** From the list of protocols: a protocol from a file, kept, and its page open. `how`: by finger or by mouse. */
export async function keepFile(page: Page, name: string, text: string, how: Touch = 'tap'): Promise<void> {
  await page.locator('input[type=file]').setInputFiles({ name, mimeType: 'text/yaml', buffer: Buffer.from(text) })
  await pressUntilThere(
    page.getByRole('button', { name: 'Keep it' }),
    page.getByRole('button', { name: 'Start a pot' }),
    how
  )
}
