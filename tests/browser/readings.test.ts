// Thermometer and strip at the Stove, by touch on a phone, in the built app.
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Entry } from '../../src/core/pot/entry.ts'
import type { PotEvent } from '../../src/core/pot/events.ts'
import { keepFile, startPot } from './stage/dyer.ts'
import { holdPad } from './stage/hold.ts'
import { REHEARSAL, storedIn } from './stage/journal.ts'
import { press, pressUntilThere } from './stage/press.ts'
import { openStage, type Stage } from './stage/stage.ts'
import { answerAll, clockTo, expectedSaid, knotAt, pad, readBath, show, warmBath } from './stage/warm-bath.ts'

const MIN = 60_000

let stage: Stage
beforeAll(async () => {
  stage = await openStage()
})
afterAll(() => stage?.close())

async function opened(page: Page): Promise<void> {
  await page.goto(`${stage.host.address}?rehearse=1#/protocols`)
  await keepFile(page, 'warm.yaml', warmBath)
}

/** Filled, acid in, ring lit: the rise goes on. Gives the time at which it began. */
async function heating(page: Page, colourway: string): Promise<number> {
  await startPot(page, { title: 'Warm bath', colourway, massG: 100 })
  await answerAll(page, [`${colourway}: filled`, `${colourway}: acid is in`, `${colourway}: ring is`])
  await show(page, colourway)
  await expectedSaid(page, colourway).waitFor()
  return risesSince(page, colourway)
}

async function risesSince(page: Page, colourway: string): Promise<number> {
  const { entries, summaries } = await storedIn(page, REHEARSAL)
  const stream = summaries.find((line) => line.colourway === colourway)?.streamId
  const started = entries.filter(({ streamId, event }) => streamId === stream && event.type === 'StepStarted')
  return Math.max(...started.map(({ atMs }) => atMs))
}

async function risePath(page: Page, colourway: string): Promise<string> {
  const { entries, summaries } = await storedIn(page, REHEARSAL)
  const stream = summaries.find((line) => line.colourway === colourway)?.streamId
  const last = entries.findLast(({ streamId, event }) => streamId === stream && event.type === 'StepStarted')
  return last?.event.type === 'StepStarted' ? last.event.path : ''
}

const said = async (page: Page, pot: string): Promise<string> =>
  ((await expectedSaid(page, pot).textContent()) ?? '').replaceAll('\u00a0', ' ')

describe('two pots on the way to 80 °C', () => {
  it('readings by touch move the knot and its words, never is said early, in °F too, and a reload keeps it all', {
    timeout: 400_000
  }, async () => {
    const { page, context, complaints } = await stage.visit()
    await opened(page)
    const mossMs = await heating(page, 'Moss')
    expect(await said(page, 'Moss')).toContain('No earlier batch: by the protocol’s rate.')
    const path = await risePath(page, 'Moss')
    expect(Math.abs((await knotAt(page, path)) - mossMs - 30 * MIN)).toBeLessThan(MIN)
    const plumMs = await heating(page, 'Plum')
    // Moss rises slower than its protocol says; Plum levels off at 60 °C.
    await show(page, 'Moss')
    for (const [min, mossC, plumC] of [
      [2, 24, 26],
      [8, 35, 42],
      [14, 45, 51],
      [20, 54, 56],
      [26, 63, 58]
    ] as const) {
      await clockTo(page, plumMs, min)
      await show(page, 'Moss')
      await readBath(page, 'Moss', mossC)
      await show(page, 'Plum')
      await readBath(page, 'Plum', plumC)
    }
    const never = page.getByRole('region', { name: 'Plum' }).locator('.bath-never')
    await never.waitFor()
    expect((await never.textContent())?.replaceAll('\u00a0', ' ')).toMatch(
      /will not get to 80 °C on this heat\..*More heat, or a lid\./
    )
    await show(page, 'Moss')
    expect(await said(page, 'Moss')).toMatch(/^80 °C about \d\d:\d\d, \d\d:\d\d to \d\d:\d\d.*From 5 readings\.$/s)
    // 1.5 °C/min and slowing: some 12 min more from 63 °C.
    const moved = (await knotAt(page, path)) - mossMs
    expect(moved).toBeGreaterThan(36 * MIN)
    expect(moved).toBeLessThan(46 * MIN)
    await page.evaluate(() => (location.hash = '#/settings'))
    await press(
      pad(page, '°F').first(),
      async () => (await pad(page, '°F').first().getAttribute('aria-pressed')) === 'true'
    )
    await page.evaluate(() => (location.hash = '#/stove'))
    await show(page, 'Moss')
    expect(await said(page, 'Moss')).toMatch(/^176 °F about/)
    await readBath(page, 'Moss', 149, 'F')
    expect(await said(page, 'Moss')).toMatch(/^176 °F about \d\d:\d\d, \d\d:\d\d to \d\d:\d\d.*From 6 readings\.$/s)
    const before = await said(page, 'Moss')
    await page.reload()
    await page.locator('.stove').waitFor()
    await show(page, 'Moss')
    await expectedSaid(page, 'Moss').waitFor()
    expect(await said(page, 'Moss')).toBe(before)
    expect(complaints).toEqual([])
    await context.close()
  })
})

describe('a pot where an earlier one stood', () => {
  it('begins with how long that one took, before any reading', { timeout: 400_000 }, async () => {
    const { page, context, complaints } = await stage.visit()
    await opened(page)
    const firstMs = await heating(page, 'Moss')
    for (const [min, tempC] of [
      // Each before the Stove calls for it.
      [1, 22],
      [12, 41],
      [24, 61],
      [32, 75],
      [35, 80]
    ] as const) {
      await clockTo(page, firstMs, min)
      await readBath(page, 'Moss', tempC)
    }
    await pressUntilThere(pad(page, 'Moss: more'), page.getByRole('dialog'))
    const sheet = page.getByRole('dialog')
    await pressUntilThere(sheet.getByRole('button', { name: 'End the batch' }), sheet.getByText('The batch ends here'))
    const why = sheet.getByRole('button', { name: 'no time' })
    await press(why, async () => (await why.getAttribute('aria-pressed')) === 'true')
    await press(sheet.getByRole('heading', { name: 'End the batch' }), async () => {
      await holdPad(sheet.getByRole('button', { name: /end the batch/ }))
      return (await storedIn(page, REHEARSAL)).entries.some(({ event }) => event.type === 'Aborted')
    })
    const secondMs = await heating(page, 'Fern')
    await expectedSaid(page, 'Fern').getByText('From 1 earlier batch on this burner').waitFor()
    // From 20 °C it takes what Moss took from there, not the 30 min of the protocol.
    const took = (await knotAt(page, await risePath(page, 'Fern'))) - secondMs
    expect(took).toBeGreaterThan(33 * MIN)
    expect(took).toBeLessThan(39 * MIN)
    expect(complaints).toEqual([])
    await context.close()
  })
})

describe('a strip', () => {
  const lastPh = async (page: Page): Promise<Extract<PotEvent, { type: 'PhRead' }> | undefined> => {
    const { entries } = await storedIn(page, REHEARSAL)
    const events = (entries as Entry<PotEvent>[]).map(({ event }) => event)
    return events.findLast((event): event is Extract<PotEvent, { type: 'PhRead' }> => event.type === 'PhRead')
  }

  it('is read in its own steps after the maker’s seconds, or between two, or as stained, with its lot', {
    timeout: 240_000
  }, async () => {
    const { page, context, complaints } = await stage.visit()
    await opened(page)
    await heating(page, 'Moss')
    const sheet = page.getByRole('dialog')
    const openPh = async (): Promise<void> => {
      await pressUntilThere(pad(page, 'Moss: more'), sheet)
      await pressUntilThere(sheet.getByRole('button', { name: 'Read pH' }), sheet.locator('.ask-ph'))
    }
    const read = async (what: Locator): Promise<void> => {
      const count = async (): Promise<number> =>
        (await storedIn(page, REHEARSAL)).entries.filter(({ event }) => event.type === 'PhRead').length
      const before = await count()
      await press(what, async () => (await count()) > before)
      await sheet.waitFor({ state: 'detached' })
    }
    await openPh()
    await sheet.getByText('Your strips').tap()
    await sheet.getByLabel('Steps of the strips').fill('4, 4.4, 4.7, 5, 5.3')
    await sheet.getByLabel('Read after, seconds').fill('3')
    await sheet.getByLabel('Lot of the strips').fill('L 7')
    await sheet.getByLabel('Lot of the strips').blur()
    const count = sheet.getByRole('button', { name: 'Dipped: count 3 s' })
    // Pressed again it would begin anew.
    await press(count, async () => /^\d s$/.test((await count.textContent()) ?? ''))
    await sheet.getByText('Read it now.').waitFor()
    await read(sheet.getByRole('button', { name: '4.7', exact: true }))
    expect(await lastPh(page)).toMatchObject({ reading: { kind: 'value', ph: 4.7 }, lot: 'L 7' })
    await openPh()
    await pressUntilThere(
      sheet.getByRole('button', { name: 'between', exact: true }),
      sheet.getByRole('button', { name: '4.4 – 4.7' })
    )
    await read(sheet.getByRole('button', { name: '4.4 – 4.7' }))
    expect(await lastPh(page)).toMatchObject({ reading: { kind: 'between', low: 4.4, high: 4.7 }, lot: 'L 7' })
    await openPh()
    // By keyboard: a pad is a button.
    const byKey = async (): Promise<string | undefined> => {
      await sheet
        .getByRole('button', { name: /Stained/ })
        .focus({ timeout: 500 })
        .catch(() => {})
      await page.keyboard.press('Enter')
      return (await lastPh(page))?.reading.kind
    }
    await expect.poll(byKey, { interval: 1_000, timeout: 20_000 }).toBe('unreadable')
    expect(await lastPh(page)).toMatchObject({ reading: { kind: 'unreadable' }, lot: 'L 7' })
    expect(complaints).toEqual([])
    await context.close()
  })
})
