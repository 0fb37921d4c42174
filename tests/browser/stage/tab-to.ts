import type { Locator, Page } from 'playwright-core'

/** Tab until the focus is there; a whole round without it is a failure. */
export async function tabTo(page: Page, target: Locator): Promise<void> {
  await target.waitFor()
  for (let i = 0; i < 120; i++) {
    if (await target.evaluate((element) => element === document.activeElement)) return
    await page.keyboard.press('Tab')
  }
  throw new Error(`the keyboard does not come to ${target}`)
}
