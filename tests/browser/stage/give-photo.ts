import type { FileChooser, Locator, Page } from 'playwright-core'
import { expect } from 'vitest'

/** Chooses a file as the next photo of a swatch, and waits until it is open. */
export async function givePhoto(
  page: Page,
  { name, jpeg, nth, by = 'Choose' }: { name: string; jpeg: Buffer; nth: number; by?: 'Choose' | 'Take' },
  go: (pad: Locator) => Promise<void>
): Promise<void> {
  let asked: FileChooser | null = null
  page.once('filechooser', (chooser) => (asked = chooser))
  // A press right after a tap is taken for a drop, and comes again.
  for (let tries = 0; asked === null && tries < 20; tries++) {
    await go(page.getByRole('button', { name: new RegExp(`^${by} (the|another) photo$`) }))
    await page.waitForTimeout(300)
  }
  const chooser = asked as FileChooser | null
  // A phone opens its camera by this alone.
  const camera = by === 'Take' ? 'environment' : null
  expect(await chooser?.element().getAttribute('capture')).toBe(camera)
  await chooser?.setFiles({ name, mimeType: 'image/jpeg', buffer: jpeg })
  await page.getByRole('button', { name: new RegExp(`^Photo ${nth}`) }).waitFor()
}
