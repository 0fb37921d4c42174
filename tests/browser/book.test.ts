import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type BrowserContext, chromium, type Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { PotEvent } from '../../src/core/pot/events.ts'
import { flags } from '../../src/desk/bench/chromium.ts'
import { type Host, hostOf } from '../../src/desk/bench/host.ts'
import { answerAll } from './stage/answers.ts'
import { violations } from './stage/axe.ts'
import { keepFile, startPot } from './stage/dyer.ts'
import { REAL, storedIn, summariesIn } from './stage/journal.ts'
import { press, pressUntilThere } from './stage/press.ts'
import { phone, type Visit, watch } from './stage/stage.ts'

const text = `strandline: 1
title: Short dye
materials:
  dye: {kind: stock, label: stock Y, strength: 1 %, amount: 2 % owf}
steps:
- add: {id: dyed, amount: all of dye, knot: Dye in}
- measure: {what: temperature, knot: How hot}
- do: {say: Skein out, done: out, knot: Out}
`
const AFTERNOON = new Date(2031, 5, 14, 15, 0).getTime()
const MORNING = new Date(2031, 5, 15, 8, 0).getTime()

describe('the book on the morning after', () => {
  const profile = mkdtempSync(join(tmpdir(), 'strandline-book-'))
  let host: Host
  let visit: Visit | null = null
  beforeAll(async () => {
    host = await hostOf(process.env.STRANDLINE_DIST ?? '')
  })
  afterAll(async () => {
    await visit?.context.close()
    await host?.stop()
    rmSync(profile, { recursive: true, force: true, maxRetries: 20, retryDelay: 200 })
  })

  /** A browser of its own on the profile, in which it is that time now. */
  const openAt = async (nowMs: number): Promise<Page> => {
    const executablePath = process.env.CHROME_PATH
    // axe is a script of the test's own: the app's policy would not let it in.
    const more = { ...phone, executablePath, args: flags, bypassCSP: true }
    const context: BrowserContext = await chromium.launchPersistentContext(profile, more)
    await context.addInitScript(`{
      const Real = Date
      const byMs = ${nowMs} - ${Date.now()}
      globalThis.Date = class extends Real {
        constructor(...at) { if (at.length === 0) super(Real.now() + byMs); else super(...at) }
        static now() { return Real.now() + byMs }
      }
    }`)
    visit = await watch(context, host)
    await visit.page.goto(host.address)
    return visit.page
  }

  it('two pots are dyed, and the browser is closed for the night', { timeout: 240_000 }, async () => {
    const page = await openAt(AFTERNOON)
    await page.goto(`${host.address}#/protocols`)
    await keepFile(page, 'short-dye.yaml', text)
    for (const [colourway, massG] of [
      ['Moss', 100],
      ['Plum', 120]
    ] as const) {
      await startPot(page, { title: 'Short dye', colourway, massG })
      const ended = async (): Promise<boolean> => {
        const summaries = await summariesIn(page, REAL)
        return summaries.some((each) => each.colourway === colourway && each.status === 'complete')
      }
      await answerAll(page, () => 'clear', ended)
    }
    await visit?.context.close()
  })

  it('yesterday’s pots stand under Yesterday, with what was read drawn', { timeout: 120_000 }, async () => {
    const page = await openAt(MORNING)
    await go(page, '#/dye-book', 'Dye book')
    const yesterday = page.locator('.book-day', { has: page.getByRole('heading', { name: 'Yesterday' }) })
    await yesterday.getByRole('link', { name: /Plum/ }).waitFor()
    expect(await yesterday.locator('.book-line').count()).toBe(2)
    expect(await page.getByRole('heading', { name: 'Today' }).count()).toBe(0)
    expect(await violations(page), 'the list').toEqual([])
    await yesterday.getByRole('link', { name: /Moss/ }).tap()
    await page.getByRole('heading', { name: 'Moss', level: 1 }).waitFor()
    await page.getByText('One reading: how long it was hot can’t be said.').waitFor()
    expect(await page.locator('.curve-dot').count()).toBe(1)
    expect(await violations(page), 'a record').toEqual([])
  })

  it('results are written after the fact: one of yesterday is marked late, one of today is not', async () => {
    const page = pageOf(visit)
    await tell(page, { what: 'ph', label: 'Final pH', value: '5.2', when: 'When the batch ended' })
    await tell(page, { what: 'rinses', label: 'Rinses', value: '3', when: 'Now' })
    const told = await toldIn(page, 'ResultTold')
    const lateByMs = told.map(({ recordedAtMs, atMs }) => recordedAtMs - atMs)
    expect((lateByMs[0] ?? 0) / 3_600_000).toBeGreaterThan(16)
    expect(lateByMs[1]).toBeLessThan(1_000)
    const results = page.locator('.book-results > div')
    expect(await results.nth(0).textContent()).toMatch(/5\.2.*late entry, written 1[67]/)
    expect(await results.nth(1).textContent()).not.toContain('late entry')
  }, 60_000)

  it('a correction keeps the old value and asks why', { timeout: 60_000 }, async () => {
    const page = pageOf(visit)
    await page.getByRole('button', { name: 'Correct Rinses' }).tap()
    const sheet = page.getByRole('dialog')
    await sheet.getByLabel('It should say').fill('4')
    await pressUntilThere(sheet.getByRole('button', { name: 'Correct it' }), sheet.getByText(/^Say why/))
    expect(await violations(page), 'the correction').toEqual([])
    expect(await toldIn(page, 'Corrected')).toEqual([])
    await sheet.getByLabel('Why').fill('miscounted')
    await press(sheet.getByRole('button', { name: 'Correct it' }), async () => (await sheet.count()) === 0)
    await page.locator('.book-results strong', { hasText: /^4$/ }).waitFor()
    await page.reload()
    await page
      .getByText(/3 becomes 4\. miscounted/)
      .first()
      .waitFor()
    expect((await toldIn(page, 'ResultTold')).map(({ event }) => event.value)).toContainEqual({
      kind: 'number',
      value: 3,
      unit: ''
    })
  })

  it('both are laid side by side, differences first', { timeout: 60_000 }, async () => {
    const page = pageOf(visit)
    await page.getByRole('button', { name: 'Compare', exact: true }).tap()
    await page.getByRole('button', { name: /^Choose .*Plum/ }).tap()
    await page.getByRole('button', { name: 'Side by side' }).tap()
    await page.getByText('No. These differed:').waitFor()
    const differed = page.getByRole('region', { name: 'What differed' })
    expect(await differed.getByRole('row', { name: /^Yarn, dry/ }).textContent()).toMatch(/100.g120.g/)
    expect(await differed.getByRole('row', { name: /^Rinses/ }).textContent()).toBe('Rinses4–')
    expect(await page.getByLabel('Laid together at').inputValue()).not.toBe('')
    expect(await violations(page), 'side by side').toEqual([])
    await page.getByRole('button', { name: 'How well they repeat' }).tap()
    await page.getByText('Two batches are too few to say.').waitFor()
    expect(await violations(page), 'how well they repeat').toEqual([])
  })

  it('a batch is found by what was written about it', { timeout: 60_000 }, async () => {
    const page = pageOf(visit)
    await go(page, '#/dye-book', 'Dye book')
    await page.getByLabel('Find a batch').fill('rinses 4')
    await page.getByText('One batch fits.').waitFor()
    await page.getByRole('link', { name: /Plum/ }).waitFor({ state: 'detached' })
    expect(await page.getByRole('link', { name: /Moss/ }).count()).toBe(1)
    await page.getByText('By date, stock, yarn, protocol, verdict').tap()
    await page.getByLabel('To', { exact: true }).fill('2031-06-13')
    await page.getByText('Nothing fits.').waitFor()
    expect(await violations(page), 'finding').toEqual([])
  })

  it('nothing was asked of any other place, and the browser complained of nothing', () => {
    expect(visit?.elsewhere()).toEqual([])
    expect(visit?.complaints).toEqual([])
  })
})

function pageOf(visit: Visit | null): Page {
  if (visit === null) throw new Error('no browser is open')
  return visit.page
}

async function go(page: Page, route: string, name: string): Promise<void> {
  await page.evaluate((to) => {
    location.hash = to
  }, route)
  await page.getByRole('heading', { name, level: 1 }).waitFor()
}

async function tell(page: Page, { what, label, value, when }: Record<'what' | 'label' | 'value' | 'when', string>) {
  await page.getByRole('button', { name: 'Write a result' }).tap()
  const sheet = page.getByRole('dialog')
  await sheet.getByLabel('What').selectOption(what)
  await sheet.getByLabel(label, { exact: true }).fill(value)
  await sheet.getByRole('button', { name: when }).tap()
  await press(sheet.getByRole('button', { name: 'Write it down' }), async () => (await sheet.count()) === 0)
  await page.locator('.book-results dt', { hasText: label }).waitFor()
}

async function toldIn<T extends PotEvent['type']>(page: Page, type: T) {
  const { entries } = await storedIn(page, REAL)
  return entries.flatMap((entry) =>
    entry.event.type === type ? [{ ...entry, event: entry.event as Extract<PotEvent, { type: T }> }] : []
  )
}
