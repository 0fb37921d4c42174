// A pot on the way to a temperature, read by touch on a clock that the test sets going.
import type { Locator, Page } from 'playwright-core'
import type { WithHandle } from './fast-clock.ts'
import { REHEARSAL, storedIn } from './journal.ts'
import { press } from './press.ts'

/** Invented for the test. */
export const warmBath = `strandline: 1
title: Warm bath
liquor: 20:1
start: 20 °C
materials:
  acid: {kind: acid, strength: 5 %, amount: 3 % owf}
steps:
  - fill: {at: 20 °C}
  - add: {amount: all of acid}
  - heat: {to: 80 °C, rate: 2 °C/min}
  - hold: {for: 10 min, at: 75..85 °C}
  - heat: off
`

export const pad = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name, exact: true })

/** Lets the rehearsal's clock go on to `min` minutes from `fromMs`, calls or no calls. */
export async function clockTo(page: Page, fromMs: number, min: number): Promise<void> {
  await page.evaluate(
    ([start, minutes]) => {
      const { clock } = (globalThis as unknown as WithHandle).strandlineRehearsal
      const untilMs = start + minutes * 60_000
      return new Promise<void>((resolve) => {
        const look = (): void => {
          const leftMs = untilMs - clock.nowMs()
          // Near enough to the minute, and slow enough to stop there also on a machine that stands still for a second.
          clock.runAt(leftMs > 2_000 ? Math.min(150, leftMs / 500) : 1)
          if (leftMs > 2_000) setTimeout(look, 20)
          else resolve()
        }
        look()
      })
    },
    [fromMs, min] as const
  )
}

export function nowMs(page: Page): Promise<number> {
  return page.evaluate(() => (globalThis as unknown as WithHandle).strandlineRehearsal.clock.nowMs())
}

async function readingsOf(page: Page): Promise<number> {
  return (await storedIn(page, REHEARSAL)).entries.filter(({ event }) => event.type === 'TemperatureRead').length
}

/** Enters a reading with the pads, from the call that stands or from the bath: whole degrees of that unit. */
export async function readBath(page: Page, pot: string, degrees: number, unit: 'C' | 'F' = 'C'): Promise<void> {
  const before = await readingsOf(page)
  const pads = page.locator('.ask-temperature').last()
  await press(pad(page, `${pot}: read temperature`), async () => {
    if ((await pads.count()) > 0) return true
    await layAside(page)
    return false
  })
  const wanted = pads.getByRole('button', { name: new RegExp(`^${degrees}\\s°${unit}$`) })
  const middle = async (): Promise<number> =>
    Number.parseFloat((await pads.locator('.ask-figure').textContent()) || '0')
  // By fives, one press after the other: taps in a burst are taken for drops.
  for (let tries = 0; tries < 40 && (await wanted.count()) === 0; tries++) {
    const was = await middle()
    const by = was < degrees ? 'All 5 higher' : 'All 5 lower'
    await press(pads.getByRole('button', { name: by }), async () => (await middle()) !== was)
  }
  await press(wanted, async () => (await readingsOf(page)) > before)
  await pads.waitFor({ state: 'detached' })
}

export const knotAt = async (page: Page, path: string): Promise<number> =>
  Number(await page.locator(`[data-knot="${path}"]`).first().getAttribute('data-at'))

export const expectedSaid = (page: Page, pot: string): Locator =>
  page.getByRole('region', { name: pot }).locator('.bath-expected')

/** Presses these one after the other, each until it is gone; what is not there by then is not asked. */
export async function answerAll(page: Page, names: readonly string[]): Promise<void> {
  for (const name of names) {
    const one = page.getByRole('button', { name: new RegExp(`^${name}`) }).last()
    await one.waitFor()
    await press(one, async () => (await one.count()) === 0)
  }
}

/** What fills the screen: what was missed, where a machine at work stood still while the clock was fast, and a call.
 * Tapped again and again while its pad is dead, all of it would be taken for a burst of drops. */
async function layAside(page: Page): Promise<void> {
  for (const name of ['To the pots', 'See pots']) {
    const aside = page.getByRole('button', { name, exact: true })
    const gone = async (): Promise<boolean> => (await aside.count()) === 0
    if (!(await gone())) await press(aside, gone)
  }
}

/** That pot is the large one, whatever calls: calls are laid aside. */
export async function show(page: Page, pot: string): Promise<void> {
  const region = page.getByRole('region', { name: pot, exact: true })
  const aside = page.getByRole('button', { name: 'See pots' })
  await press(page.getByRole('navigation', { name: 'Pots' }).getByRole('button', { name: pot }).first(), async () => {
    await layAside(page)
    return (await aside.count()) === 0 && (await region.count()) > 0
  })
}
