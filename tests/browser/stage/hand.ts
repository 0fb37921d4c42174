// A hand takes a moment from one tap to the next. A driver does not, on a quick machine: the app takes its second tap for
// a drop of water (src/ui/parts/guard.ts), and the test waits in vain for what it would have done.
import type { Locator, Page } from 'playwright-core'

/** Longer than a burst of drops, from the end of one tap to the beginning of the next. */
const BETWEEN_MS = 300

const lastMs = new WeakMap<Page, number>()
const taught = new WeakSet<object>()

/** From here on every tap and click of the driver in this process is given by such a hand. */
export function slowHand(page: Page): void {
  const locators = Object.getPrototypeOf(page.locator('html')) as Pick<Locator, 'tap' | 'click'>
  if (taught.has(locators)) return
  taught.add(locators)
  for (const way of ['tap', 'click'] as const) {
    const given = locators[way]
    locators[way] = async function (this: Locator, options) {
      const on = this.page()
      const waitMs = (lastMs.get(on) ?? 0) + BETWEEN_MS - Date.now()
      if (waitMs > 0) await on.waitForTimeout(waitMs)
      try {
        await given.call(this, options)
      } finally {
        lastMs.set(on, Date.now())
      }
    }
  }
}
