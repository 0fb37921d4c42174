import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Host, hostOf } from '../../src/desk/bench/host.ts'
import { keepFile } from './stage/dyer.ts'
import { gapsIn, REAL, storedIn } from './stage/journal.ts'
import { pressUntilGone } from './stage/press.ts'
import { openProfile, type RealBrowser } from './stage/real-profile.ts'

const KILLS = 20
const WATCHED_TAPS = 3
/** Seeded, so that a failure comes again: from the tap to twice as late as this machine needs to show what is stored. */
const delayMs = (round: number, showsAfterMs: number): number => (((round * 7919) % 41) / 40) * 2 * showsAfterMs

/** One act after the other, each with its number in its words. */
const turns = `strandline: 1
title: Many turns
steps:
${Array.from({ length: KILLS + WATCHED_TAPS + 1 }, (_, at) => `- do: {say: Turn number ${at + 1}, done: turned}`).join('\n')}
`

describe('a browser killed like a phone whose battery ran out', () => {
  const profile = mkdtempSync(join(tmpdir(), 'strandline-kill-'))
  let host: Host
  let real: RealBrowser | null = null
  beforeAll(async () => {
    host = await hostOf(process.env.STRANDLINE_DIST ?? '')
  })
  afterAll(async () => {
    await real?.kill()
    await host?.stop()
    rmSync(profile, { recursive: true, force: true, maxRetries: 20, retryDelay: 200 })
  })

  it(`kill -9 ${KILLS} times between a tap and a little after it is stored: what the screen said is there, once, and the Stove comes up with it`, async () => {
    const confirmed: number[] = []
    const called: number[] = []
    let showsAfterMs = 0
    for (let round = 0; round <= KILLS; round++) {
      real = await openProfile(profile)
      const page = real.context.pages()[0] ?? (await real.context.newPage())
      await page.goto(host.address)
      if (round === 0) {
        await startThePot(page, host.address)
        showsAfterMs = await watchedTaps(page)
      }
      called.push(await numberCalled(page))
      await expectAllThere(page, confirmed, called.at(-1) ?? 0)
      if (round < KILLS) confirmed.push(...(await tapAndKill(real, page, delayMs(round, showsAfterMs))))
    }
    // Where each tap was killed shows in the call after it: the next one, or the same once more.
    const steps = called.slice(1).map((number, at) => number - (called[at] ?? 0))
    expect(steps.filter((step) => step !== 0 && step !== 1)).toEqual([])
    // Kills on both sides of the write, or nothing was tried.
    expect(new Set(steps).size).toBe(2)
    expect(confirmed.length).toBeGreaterThan(0)
  }, 600_000)
})

/** With a mouse: a browser that was started by hand has no touch screen. */
async function startThePot(page: Page, address: string): Promise<void> {
  await page.goto(`${address}#/protocols`)
  await keepFile(page, 'turns.yaml', turns, 'click')
  await page.getByRole('button', { name: 'Start a pot' }).click()
  await page.getByLabel('Colourway').fill('Plum')
  await page.getByLabel('Dry weight').first().fill('100')
  await page.getByRole('button', { name: 'Start', exact: true }).click()
  const sheet = page.getByRole('dialog', { name: 'Before the heat' })
  await sheet.or(page.locator('.stove')).first().waitFor()
  if (await sheet.isVisible()) await pressUntilGone(sheet.getByRole('button', { name: /^Start/ }), sheet, 'click')
}

/** The number of the act that the Stove calls for, after whatever it says was missed. */
async function numberCalled(page: Page): Promise<number> {
  const missed = page.locator('.missed')
  await page.locator('.call-act').or(missed).first().waitFor()
  if (await missed.isVisible()) await pressUntilGone(missed.locator('.pad-main'), missed, 'click')
  await page.locator('.call-act').waitFor()
  return numberIn(await page.locator('.call-act').textContent())
}

const numberIn = (act: string | null): number => Number(/number (\d+)/.exec(act ?? '')?.[1])

async function expectAllThere(page: Page, confirmed: number[], called: number): Promise<void> {
  const { entries } = await storedIn(page, REAL)
  const done = entries.flatMap(({ event }) => (event.type === 'StepClosed' ? [event.path] : []))
  expect(done).toHaveLength(called - 1)
  expect(new Set(done).size).toBe(done.length)
  expect(confirmed.filter((number) => number >= called)).toEqual([])
  expect(gapsIn(entries)).toEqual([])
}

/** A few taps that nothing kills; how long after the tap the screen showed that it is stored, in the middle. */
async function watchedTaps(page: Page): Promise<number> {
  const tookMs: number[] = []
  for (let tap = 0; tap < WATCHED_TAPS; tap++) {
    const { taken, confirmed } = await tapOnce(page, tap)
    await taken
    const takenAtMs = performance.now()
    await confirmed
    tookMs.push(performance.now() - takenAtMs)
  }
  return tookMs.sort((a, b) => a - b)[1] ?? 0
}

/** One tap and the kill. Gives what the screen said was done until then. */
async function tapAndKill(real: RealBrowser, page: Page, afterMs: number): Promise<number[]> {
  const done: number[] = []
  const { taken, confirmed } = await tapOnce(page, WATCHED_TAPS)
  void confirmed.then((number) => done.push(number))
  await taken
  await new Promise((over) => setTimeout(over, afterMs))
  await real.kill()
  return done
}

/** Taps a pad that has lain still for long enough. `taken`: the tap is in the page. `confirmed`: the screen calls for the
 * act after it; the number of the one that is done. */
async function tapOnce(page: Page, no: number): Promise<{ taken: Promise<void>; confirmed: Promise<number> }> {
  let tellTaken = (): void => {}
  let tellCalled = (_act: string): void => {}
  const taken = new Promise<void>((done) => {
    tellTaken = done
  })
  const confirmed = new Promise<number>((done) => {
    tellCalled = (act) => done(numberIn(act) - 1)
  })
  await page.exposeFunction(`tellTaken${no}`, () => tellTaken())
  await page.exposeFunction(`tellCalled${no}`, (act: string) => tellCalled(act))
  await page.locator('.call-pad').waitFor()
  await page.evaluate(tellWhatIsSeen, no)
  const nowMs = await page.evaluate(() => performance.now())
  await page.waitForFunction((sinceMs) => performance.now() - sinceMs > 800, nowMs)
  const box = await page.locator('.call-pad').boundingBox()
  await page.mouse.move((box?.x ?? 0) + 50, (box?.y ?? 0) + 30)
  await page.mouse.down()
  // Not awaited: the browser may be gone before it answers.
  void page.mouse.up().catch(() => {})
  return { taken, confirmed }
}

/** Tells when the pad has taken the tap, and which act the screen calls for from then on. */
function tellWhatIsSeen(no: number): void {
  const tell = globalThis as unknown as Record<string, (act?: string) => void>
  const pad = document.querySelector('.call-pad')
  pad?.addEventListener('click', () => tell[`tellTaken${no}`]?.())
  const first = document.querySelector('.call-act')?.textContent ?? ''
  const watcher = new MutationObserver(() => {
    const act = document.querySelector('.call-act')?.textContent ?? first
    if (act === first) return
    watcher.disconnect()
    tell[`tellCalled${no}`]?.(act)
  })
  watcher.observe(document.body, { childList: true, subtree: true, characterData: true })
}
