import type { FileChooser, Locator, Page } from 'playwright-core'

/** Chooses a file as the next photo of a swatch, and waits until it is open. */
export async function givePhoto(
  page: Page,
  { name, jpeg, nth }: { name: string; jpeg: Buffer; nth: number },
  go: (pad: Locator) => Promise<void>
): Promise<void> {
  let asked: FileChooser | null = null
  page.once('filechooser', (chooser) => (asked = chooser))
  // A press right after a tap is taken for a drop, and comes again.
  for (let tries = 0; asked === null && tries < 20; tries++) {
    await go(page.getByRole('button', { name: /^Choose (the|another) photo$/ }))
    await page.waitForTimeout(300)
  }
  await (asked as FileChooser | null)?.setFiles({ name, mimeType: 'image/jpeg', buffer: jpeg })
  await page.getByRole('button', { name: new RegExp(`^Photo ${nth}`) }).waitFor()
}
