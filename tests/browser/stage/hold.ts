// A knuckle that stays on a pad until the pad shows that it was long enough.
import type { CDPSession, Locator, Page } from 'playwright-core'

const sessions = new WeakMap<Page, Promise<CDPSession>>()

function touchOf(page: Page): Promise<CDPSession> {
  const known = sessions.get(page) ?? page.context().newCDPSession(page)
  sessions.set(page, known)
  return known
}

/** How long a pad is given to show that it feels the finger. */
const FELT_MS = 400
/** What a hold may take on a busy machine; the app asks for 0.7 s. */
const HELD_MS = 3_000

export async function holdPad(pad: Locator, quick: { timeout: number } = { timeout: 1_000 }): Promise<void> {
  const page = pad.page()
  // What was there a moment ago may be gone.
  await pad.scrollIntoViewIfNeeded(quick).catch(() => {})
  const box = await pad.boundingBox(quick).catch(() => null)
  if (box === null) return
  const touch = await touchOf(page)
  const point = { x: Math.round(box.x + box.width / 2), y: Math.round(box.y + box.height / 2) }
  await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [point] })
  try {
    await page.waitForFunction(() => document.querySelector('[data-held]') !== null, undefined, { timeout: FELT_MS })
    await page.waitForFunction(() => document.querySelector('[data-held]') === null, undefined, { timeout: HELD_MS })
  } catch (error) {
    // Nothing there felt it.
    if (!(error instanceof Error) || error.name !== 'TimeoutError') throw error
  } finally {
    await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] })
  }
}

/** A knuckle as it is needed: a tap, and a hold on what asks for one. */
export async function tapPad(pad: Locator, quick: { timeout: number }): Promise<void> {
  if (await pad.evaluate((node) => node.matches('.pad-hold'), undefined, quick)) await holdPad(pad, quick)
  else await pad.tap(quick)
}
