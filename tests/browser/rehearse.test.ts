// Rehearsals on the screen, beside the real pots, with nothing of them kept.
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { violations } from './stage/axe.ts'
import { startPot } from './stage/dyer.ts'
import { REAL, storedIn } from './stage/journal.ts'
import { pressUntilGone, pressUntilThere } from './stage/press.ts'
import { openStage, type Stage } from './stage/stage.ts'

let stage: Stage
beforeAll(async () => {
  stage = await openStage()
})
afterAll(() => stage?.close())

const pad = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name })
const bar = (page: Page): Locator => page.locator('.rehearse-bar')
const over = (page: Page): Locator => page.getByRole('heading', { level: 1, name: 'The rehearsal is over' })

describe('a newcomer', () => {
  it('rehearses a built-in in one tap from the empty Stove, answers, ends it, and nothing was kept', async () => {
    const { page, context, complaints } = await stage.visit({ bypassCSP: true })
    await page.goto(stage.host.address)
    await pad(page, /^Rehearse one first/).tap()
    const call = page.locator('.call')
    await call.waitFor()
    await expect.poll(() => bar(page).textContent()).toContain('1× while you are called')
    expect(await violations(page)).toEqual([])
    await pressUntilGone(call.getByRole('button', { name: /in soak/ }), call)
    await expect.poll(() => bar(page).textContent()).toContain('60×')
    // Half an hour of soaking is gone at once.
    await pad(page, 'Next call').tap()
    await call.waitFor()
    expect(await call.textContent()).toContain('Fill')
    await pressUntilThere(pad(page, 'Pace'), page.getByRole('dialog'))
    expect(await violations(page)).toEqual([])
    await pressUntilGone(pad(page, 'Back'), page.getByRole('dialog'))
    await pressUntilThere(pad(page, 'End'), page.getByRole('heading', { level: 1, name: 'Rehearse' }))
    expect(await violations(page)).toEqual([])
    await page.evaluate(() => (location.hash = '#/stove'))
    await page.getByText('No pot is on').waitFor()
    expect(await storedIn(page, REAL)).toEqual({ entries: [], summaries: [] })
    expect(complaints).toEqual([])
    await context.close()
  })
})

describe('two protocols together', () => {
  it('are chosen and begun by the keyboard alone, answered by somebody slow, and the report says where they met', async () => {
    const { page, context } = await stage.visit({ hasTouch: false, isMobile: false, bypassCSP: true })
    await page.goto(`${stage.host.address}#/rehearse`)
    const reach = async (to: Locator): Promise<void> => {
      await to.focus()
      await page.keyboard.press('Enter')
    }
    await reach(pad(page, /^Dip gradient/))
    await reach(pad(page, /^Level immersion/))
    await page.getByLabel('Starts after').nth(1).fill('soon')
    await page.getByText('“soon” is not whole minutes. Write a number such as 20.').waitFor()
    expect(await pad(page, 'Begin with 2 pots').isDisabled()).toBe(true)
    await page.getByLabel('Starts after').nth(1).fill('20')
    await reach(pad(page, '600×'))
    await reach(pad(page, 'Somebody slow'))
    await reach(pad(page, 'Begin with 2 pots'))
    await bar(page).waitFor()
    expect(await bar(page).textContent()).toMatch(/Moss starts in \d+ min/)
    // Nobody has to watch it to its end.
    await expect
      .poll(
        async () => {
          if (await over(page).isVisible()) return true
          await page.keyboard.press('Escape')
          await pad(page, 'Next call')
            .press('Enter', { timeout: 1_000 })
            .catch(() => {})
          return over(page).isVisible()
        },
        { timeout: 60_000, interval: 50 }
      )
      .toBe(true)
    const told = await page.locator('main').textContent()
    expect(told).toMatch(/Plum: Dip gradient\s*took 1[67]\sh/)
    expect(told).toMatch(/Moss: Level immersion\s*took 1[67]\sh/)
    expect(await page.locator('[aria-labelledby="rehearse-meetings"] li').count()).toBeGreaterThan(0)
    expect(told).toMatch(/(\d+) of \1 acts were done a minute or more after their call/)
    expect(await violations(page)).toEqual([])
    await context.close()
  })
})

describe('a real pot', () => {
  it('goes on calling over a rehearsal, and only what is done to it is kept', async () => {
    const { page, context } = await stage.visit()
    await page.goto(stage.host.address)
    await startPot(page, { title: 'Level immersion', colourway: 'Rowan', massG: 100 })
    await page.locator('.call').waitFor()
    await page.evaluate(() => (location.hash = '#/rehearse/own/600/level-immersion'))
    await page.getByText('Rowan wants hands').waitFor()
    const call = page.locator('.rehearse-stove .call')
    await pressUntilGone(call.getByRole('button', { name: /in soak/ }), call)
    await pressUntilThere(pad(page, 'Pace'), page.getByText('A real pot is on, so the rehearsal stays silent'))
    await pressUntilGone(pad(page, 'Back'), page.getByRole('dialog'))
    expect(new Set((await storedIn(page, REAL)).summaries.map(({ colourway }) => colourway))).toEqual(
      new Set(['Rowan'])
    )
    await pressUntilThere(pad(page, 'To the Stove for Rowan'), page.locator('.call', { hasText: 'Rowan' }))
    const { entries } = await storedIn(page, REAL)
    expect(entries.some(({ event }) => event.type === 'StepClosed')).toBe(false)
    await context.close()
  })
})
