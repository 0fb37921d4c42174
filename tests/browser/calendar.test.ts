import { readFileSync } from 'node:fs'
import ICAL from 'ical.js'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Kitchen } from '../../src/ui/kitchen.ts'
import { faultsOf } from '../core/calendar/judge.ts'
import { startPot } from './stage/dyer.ts'
import { openStage, type Stage } from './stage/stage.ts'

let stage: Stage
beforeAll(async () => {
  stage = await openStage()
})
afterAll(() => stage?.close())

type Asked = 'saveCalendar' | 'cancelCalendar'

/** What the browser is handed over as a file. */
async function fileOf(page: Page, asked: Asked): Promise<{ name: string; text: string }> {
  const coming = page.waitForEvent('download')
  const sent = await page.evaluate((which) => {
    const { kitchen } = (globalThis as unknown as { strandlineRehearsal: { kitchen: Kitchen } }).strandlineRehearsal
    return kitchen[which]?.()
  }, asked)
  expect(sent).toEqual({ ok: true })
  const download = await coming
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') }
}

function eventsOf(text: string): { summary: string; sequence: number; status: string }[] {
  expect(faultsOf(text)).toEqual([])
  return new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((event) => ({
    summary: String(event.getFirstPropertyValue('summary')),
    sequence: Number(event.getFirstPropertyValue('sequence')),
    status: String(event.getFirstPropertyValue('status'))
  }))
}

describe('the calendar file in a browser', () => {
  it('holds the coming alerts of a pot; a later one, after a reload, has a higher sequence; a last one cancels all', async () => {
    const { page, context, complaints } = await stage.visit({ acceptDownloads: true })
    await page.goto(`${stage.host.address}?rehearse`)
    await startPot(page, { title: 'Level immersion', colourway: 'Plum', massG: 100 })
    const first = await fileOf(page, 'saveCalendar')
    expect(first.name).toMatch(/^strandline-\d{4}-\d\d-\d\d-\d{4}\.ics$/)
    const events = eventsOf(first.text)
    expect(events.length).toBeGreaterThan(5)
    for (const { summary, sequence } of events) expect(`${summary} ${sequence}`).toMatch(/^Rehearsal, Plum: .+ 0$/)
    await page.reload()
    await page.locator('.call').waitFor()
    const second = eventsOf((await fileOf(page, 'saveCalendar')).text)
    expect(new Set(second.map(({ sequence }) => sequence))).toEqual(new Set([1]))
    const last = eventsOf((await fileOf(page, 'cancelCalendar')).text)
    expect(new Set(last.map(({ sequence, status }) => `${status} ${sequence}`))).toEqual(new Set(['CANCELLED 2']))
    expect(last.length).toBeGreaterThanOrEqual(events.length)
    expect(complaints).toEqual([])
    await context.close()
  })
})
