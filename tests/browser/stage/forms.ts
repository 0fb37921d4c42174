// The forms of the workshop, by touch.
import type { Locator, Page } from 'playwright-core'
import { expect } from 'vitest'

export const pad = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name, exact: true })
export const rows = (page: Page): Locator => page.getByRole('region', { name: 'Step by step' }).locator('.workshop-row')
/** The form that is open. */
export const form = (page: Page): Locator => page.locator('.workshop-open')

export type Fields = Record<string, string>

export async function fill(page: Page, fields: Fields): Promise<void> {
  for (const [label, value] of Object.entries(fields)) {
    await form(page).getByLabel(label, { exact: true }).first().fill(value)
  }
}

/** Opens the `nth` row that says so. */
export async function openRow(page: Page, says: string | RegExp, nth = 0): Promise<void> {
  const row = page.locator('.workshop-row', { hasText: says }).nth(nth)
  if ((await row.getAttribute('aria-expanded')) !== 'true') await row.tap()
  await form(page).waitFor()
}

/** By the pad that adds one here: at the end, after the open row, inside it. */
export async function addStep(
  page: Page,
  word: string,
  fields: Fields = {},
  by:
    | 'Add a step at the end'
    | 'Add a step after'
    | 'Add a step inside'
    | 'Add what is done otherwise' = 'Add a step at the end'
): Promise<void> {
  const before = await rows(page).count()
  await pad(page, by).first().tap()
  const sheet = page.getByRole('dialog')
  await sheet
    .getByRole('button', { name: new RegExp(`^${word}\\b`) })
    .first()
    .tap()
  await sheet.waitFor({ state: 'detached' })
  await expect.poll(() => rows(page).count()).toBeGreaterThan(before)
  await fill(page, fields)
}

/** Takes away what a fresh step began with, and is not wanted: the open row. */
export async function removeRow(page: Page, says: string | RegExp, nth = 0): Promise<void> {
  const before = await rows(page).count()
  await openRow(page, says, nth)
  await pad(page, 'Remove').tap()
  await expect.poll(() => rows(page).count()).toBeLessThan(before)
}
