// A protocol written on a phone by forms alone, with a reload in the middle; saved, and a pot started by it.
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { violations } from './stage/axe.ts'
import { startPot } from './stage/dyer.ts'
import { addStep, pad, rows } from './stage/forms.ts'
import { openStage, type Stage } from './stage/stage.ts'

let stage: Stage
beforeAll(async () => {
  stage = await openStage()
})
afterAll(() => stage?.close())

async function begin(page: Page): Promise<void> {
  await page.goto(`${stage.host.address}?rehearse=60#/protocols`)
  await pad(page, 'Write a protocol').tap()
  await page.getByRole('heading', { level: 1, name: 'New protocol' }).waitFor()
  await page.locator('.workshop-row', { hasText: 'title' }).tap()
  await page.getByLabel('Title').fill('Plain pot')
  await pad(page, 'Add a material').tap()
  await page.locator('.workshop-open').getByLabel('Name').fill('acid')
  await page.locator('.workshop-open').getByLabel('Strength').fill('5 %')
  await pad(page, 'acid').first().tap()
  // A blank protocol holds one step, so that it can be run: this one begins otherwise.
  await rows(page).first().tap()
  await pad(page, 'Remove').tap()
  await expect.poll(() => rows(page).count()).toBe(0)
}

describe('a protocol written on a phone', () => {
  it('by forms alone, found again after a reload, is saved and started', { timeout: 240_000 }, async () => {
    // axe is a script of the test's own: the app's policy would not let it in.
    const { page, context, complaints } = await stage.visit({
      viewport: { width: 390, height: 844 },
      bypassCSP: true
    })
    await begin(page)
    await addStep(page, 'soak', { For: '10 min' })
    await addStep(page, 'fill', { Liquor: '2 L' })
    await addStep(page, 'add', { Amount: '20 mL of acid' })
    await addStep(page, 'enter')
    expect(await violations(page), 'a form').toEqual([])

    await page.reload()
    await page.getByRole('heading', { level: 1, name: 'Plain pot' }).waitFor()
    await expect
      .poll(() => rows(page).allTextContents())
      .toEqual(['Soak 10 min', 'Fill 2 L', 'Add 20 mL of acid', 'Enter'])
    await page.goto(`${stage.host.address}?rehearse=60#/protocols`)
    await page.getByRole('button', { name: /^Plain pot/ }).tap()
    await expect.poll(() => rows(page).count()).toBe(4)

    await addStep(page, 'heat', { To: '85 °C' })
    await addStep(page, 'hold', { For: '20 min', At: '85 °C' })
    await page.getByText(/^\d+ problems? to mend|One problem to mend/).waitFor()
    await addStep(page, 'heat', { To: 'off' })
    await addStep(page, 'cool', {})
    await pad(page, 'Text').tap()
    await page.getByText('No problems.').waitFor()
    expect(await violations(page), 'the text').toEqual([])
    await pad(page, 'Save').tap()
    await page.getByRole('heading', { level: 1, name: 'Plain pot' }).waitFor()
    await page.getByText('Heat off').first().waitFor()
    expect(await violations(page), 'the saved protocol').toEqual([])

    await startPot(page, { title: 'Plain pot', colourway: 'Moss', massG: 100 })
    await page.getByText(/Soak/).first().waitFor()
    expect(complaints).toEqual([])
    await context.close()
  })
})

describe('a protocol written at a desk', () => {
  it('by keyboard alone, both ways side by side in the dark, and its versions compared', {
    timeout: 240_000
  }, async () => {
    const { page, context, complaints } = await stage.visit({
      viewport: { width: 1440, height: 900 },
      isMobile: false,
      colorScheme: 'dark',
      bypassCSP: true
    })
    const press = async (target: Locator): Promise<void> => {
      await target.focus()
      await page.keyboard.press('Enter')
    }
    await page.goto(`${stage.host.address}?rehearse=60#/protocols/dip-gradient`)
    await press(pad(page, 'Change a copy'))
    await press(rows(page).filter({ hasText: /^Spin/ }))
    await press(pad(page, 'Add a step after'))
    await press(page.getByRole('dialog').getByRole('button', { name: /^do / }))
    const added = rows(page)
      .filter({ hasText: /^Stir the bath/ })
      .last()
    await expect.poll(() => added.evaluate((row) => row === document.activeElement)).toBe(true)
    expect(await page.getByLabel('The text of the protocol').inputValue()).toContain('- do: Stir the bath\n  - photo')
    await page.locator('.workshop-open').getByLabel('Say').fill('Shake it out')
    expect(await violations(page), 'both ways').toEqual([])
    await press(pad(page, 'Save'))
    await page.getByText('Shake it out').first().waitFor()

    await press(pad(page, 'Change a copy'))
    const area = page.getByLabel('The text of the protocol')
    await area.fill((await area.inputValue()).replace('Shake it out', 'Snap it straight'))
    await page.getByText('No problems.').waitFor()
    await press(pad(page, 'Save'))
    await page.getByText('Snap it straight').first().waitFor()
    await press(page.getByText('Earlier versions (1)'))
    await page.getByText('Was Shake it out', { exact: true }).waitFor()
    await page.getByText('Now Snap it straight', { exact: true }).waitFor()
    expect(await violations(page), 'the versions').toEqual([])
    expect(complaints).toEqual([])
    await context.close()
  })
})
