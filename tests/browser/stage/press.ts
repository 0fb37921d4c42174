// A knuckle that comes again until the screen says it was felt: a pad lies dead for 0.7 s after it changed under the
// finger, and taps in a burst are taken for drops of water.
import type { Locator } from 'playwright-core'

export type Touch = 'tap' | 'click'

const PATIENCE_MS = 40_000
/** What a pad is given before a knuckle comes again: more than it takes to show something, less than a test can wait. */
const LOOK_MS = 1_000

export async function press(pad: Locator, felt: () => Promise<boolean>, how: Touch = 'tap'): Promise<void> {
  const until = Date.now() + PATIENCE_MS
  while (!(await felt())) {
    if (Date.now() > until) throw new Error(`Nothing came of pressing ${pad}. The screen says: ${await seenOn(pad)}`)
    await pad[how]({ timeout: 1_000 }).catch(() => {})
    const look = Date.now() + LOOK_MS
    while (Date.now() < look && !(await felt())) await pad.page().waitForTimeout(80)
  }
}

/** So that a failure that comes once in a while says what stood in the way. */
const seenOn = async (pad: Locator): Promise<string> =>
  (
    await pad
      .page()
      .locator('body')
      .ariaSnapshot({ timeout: 5_000 })
      .catch(() => 'nothing')
  ).slice(0, 1_500)

export async function pressUntilGone(pad: Locator, gone: Locator, how?: Touch): Promise<void> {
  // What has not come yet is not gone.
  await pad.waitFor()
  return press(pad, async () => (await gone.count()) === 0, how)
}

export function pressUntilThere(pad: Locator, there: Locator, how?: Touch): Promise<void> {
  return press(pad, async () => (await there.count()) > 0, how)
}
