import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { REHEARSAL, storedIn } from './stage/journal.ts'
import { openStage, type Stage } from './stage/stage.ts'

const short = `strandline: 1
title: Short
steps:
- do: Rinse the skein
- do: Squeeze it
`

let stage: Stage
beforeAll(async () => {
  stage = await openStage()
})
afterAll(() => stage?.close())

/** Tab until the focus is on what is looked for; a whole round without it is a failure. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let i = 0; i < 120; i++) {
    await page.keyboard.press('Tab')
    const focused = await page.evaluate(() => {
      const at = document.activeElement as HTMLInputElement | null
      return `${at?.getAttribute('aria-label') ?? ''} ${at?.labels?.[0]?.textContent ?? ''} ${at?.textContent ?? ''}`
    })
    if (name.test(focused)) return
  }
  throw new Error(`the keyboard does not come to ${name}`)
}

/** A pad that has just come up lies dead for 0.7 s, under a key as under a finger. */
async function enterUntilGone(page: Page, sheet: Locator, holds = false): Promise<void> {
  await expect
    .poll(
      async () => {
        if ((await sheet.count()) > 0) {
          await page.keyboard.down('Enter')
          if (holds) await heldOut(page)
          await page.keyboard.up('Enter')
        }
        return sheet.count()
      },
      { timeout: 15_000, interval: 500 }
    )
    .toBe(0)
}

/** Until the pad shows that it was held long enough; one that lies dead shows nothing, and is pressed again. */
async function heldOut(page: Page): Promise<void> {
  const feels = await page.waitForSelector('[data-held]', { timeout: 400 }).catch(() => null)
  if (feels === null) return
  await page.locator('[data-held]').waitFor({ state: 'detached' })
}

describe('a pot by keyboard alone', () => {
  it('is started, answered as by a pedal, finished, and stands in the journal', async () => {
    const { page, context } = await stage.visit({ hasTouch: false, isMobile: false })
    await page.goto(`${stage.host.address}?rehearse#/protocols`)
    const file = { name: 'short.yaml', mimeType: 'text/yaml', buffer: Buffer.from(short) }
    await page.locator('input[type=file]').setInputFiles(file)
    await page.getByRole('button', { name: 'Keep it' }).waitFor()
    await tabTo(page, /^\s*Keep it\s*$/)
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: 'Start a pot' }).waitFor()
    await tabTo(page, /Start a pot/)
    await page.keyboard.press('Enter')
    await page.getByLabel('Dry weight').waitFor()
    await tabTo(page, /Colourway/)
    await page.keyboard.type('Ochre')
    await tabTo(page, /Dry weight/)
    await page.keyboard.type('50')
    await tabTo(page, /^\s*Start\s*$/)
    await page.keyboard.press('Enter')
    await page.getByRole('dialog').or(page.locator('.stove')).first().waitFor()
    const before = page.getByRole('dialog')
    if (await before.isVisible()) {
      await tabTo(page, /Start/)
      await enterUntilGone(page, before)
    }
    for (const act of ['Rinse the skein', 'Squeeze it']) {
      await page.locator('.call-act', { hasText: act }).waitFor()
      // A pedal: it acts on the pot shown, once the pad under it has lain still for 0.7 s.
      await expect
        .poll(
          async () => {
            await page.keyboard.press('PageDown')
            return page.locator('.call-act', { hasText: act }).count()
          },
          { timeout: 15_000, interval: 300 }
        )
        .toBe(0)
    }
    const sheet = page.getByRole('dialog')
    await expect
      .poll(
        async () => {
          if ((await sheet.count()) === 0) await page.keyboard.press('PageDown')
          return sheet.count()
        },
        { timeout: 15_000, interval: 500 }
      )
      .toBe(1)
    await tabTo(page, /Dropped/)
    await enterUntilGone(page, sheet, true)
    await page.getByRole('heading', { name: 'No pot is on' }).waitFor()
    const { entries } = await storedIn(page, REHEARSAL)
    const types = entries.map(({ event }) => event.type)
    expect(types.filter((type) => type === 'StepClosed')).toHaveLength(2)
    expect(types.at(-1)).toBe('Finished')
    await context.close()
  })
})

describe('the workshop by keyboard', () => {
  it.each([
    [390, 844],
    [844, 390]
  ])('shows above its foot what has the focus, at %d × %d', async (width, height) => {
    const { page, context } = await stage.visit({ hasTouch: false, isMobile: false, viewport: { width, height } })
    await page.goto(`${stage.host.address}?rehearse#/protocols`)
    await page.getByRole('button', { name: 'Write a protocol' }).click()
    await page.locator('.workshop-tools').waitFor()
    const seen: string[] = []
    const hidden: string[] = []
    while (seen.length < 40 && seen.at(-1) !== 'Save') {
      await page.keyboard.press('Tab')
      const [name, under] = await page.evaluate(() => {
        const foot = document.querySelector('.workshop-tools') as Element
        const at = document.activeElement as Element
        const { top, bottom } = at.getBoundingClientRect()
        // Of what is taller than the room, its beginning.
        const end = Math.min(bottom, top + 60)
        return [at.textContent ?? '', end > foot.getBoundingClientRect().top && !foot.contains(at)] as const
      })
      seen.push(name)
      if (under) hidden.push(name)
    }
    expect(seen).toContain('Add a step at the end')
    expect(seen.at(-1)).toBe('Save')
    expect(hidden).toEqual([])
    await context.close()
  })
})
