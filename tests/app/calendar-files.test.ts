import ICAL from 'ical.js'
import { describe, expect, it } from 'vitest'
import { calendarFiles } from '../../src/app/calendar-files.ts'
import { settingsFor } from '../../src/app/settings.ts'
import { type Kept, memoryKept } from '../../src/shell/settings/kept.ts'
import { faultsOf } from '../core/calendar/judge.ts'
import { MIN, pass, send, started, type Table } from '../session/kitchen-table.ts'

type Saved = { name: string; mime: string; text: string }

function filesOf(at: Table, kept: Kept = memoryKept(), rehearsal = false) {
  const saved: Saved[] = []
  const files = calendarFiles({
    kept,
    clock: at.clock,
    pots: at.session.pots,
    settings: () => settingsFor('de-AT'),
    saveFile: (name, mime, text) => void saved.push({ name, mime, text }),
    rehearsal
  })
  return { ...files, saved }
}

function sequencesOf({ text }: Saved): number[] {
  const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent')
  return events.map((event) => event.getFirstPropertyValue('sequence') as unknown as number)
}

describe('the calendar file', () => {
  it('is handed over under a name of its own, and each later one has a higher sequence, also after a reload', async () => {
    const at = await started()
    const kept = memoryKept()
    const { saveCalendar, saved } = filesOf(at, kept)
    expect(await saveCalendar()).toEqual({ ok: true })
    await pass(at, 11 * MIN)
    await send(at, { type: 'MarkDone', path: 'acid1' })
    expect(await saveCalendar()).toEqual({ ok: true })
    const reloaded = filesOf(at, kept)
    expect(await reloaded.saveCalendar()).toEqual({ ok: true })
    const all = [...saved, ...reloaded.saved]
    for (const { text } of all) expect(faultsOf(text)).toEqual([])
    expect(all.map(sequencesOf)).toEqual([
      [0, 0, 0],
      [1, 1],
      [2, 2]
    ])
    expect(saved.map(({ name, mime }) => `${name} ${mime}`)).toEqual([
      'strandline-2031-06-14-0900.ics text/calendar',
      'strandline-2031-06-14-0911.ics text/calendar'
    ])
  })

  it('two asked for at once get two numbers', async () => {
    const { saveCalendar, saved } = filesOf(await started())
    await Promise.all([saveCalendar(), saveCalendar()])
    expect(saved.map((file) => sequencesOf(file)[0])).toEqual([0, 1])
  })

  it('is taken back by a cancelling file, also when the pot is over, and only once', async () => {
    const at = await started()
    const { saveCalendar, cancelCalendar, saved } = filesOf(at)
    expect(await cancelCalendar()).toMatchObject({ ok: false, say: expect.stringContaining('No calendar file') })
    await saveCalendar()
    await send(at, { type: 'Abort', reason: 'test' })
    expect(await saveCalendar()).toMatchObject({ ok: false, say: expect.stringContaining('No alert is to come') })
    expect(await cancelCalendar()).toEqual({ ok: true })
    expect(await cancelCalendar()).toMatchObject({ ok: false })
    expect(saved).toHaveLength(2)
    expect(saved[1]?.name).toBe('strandline-cancel-2031-06-14-0900.ics')
    expect(saved[1]?.text).toContain('METHOD:CANCEL')
    expect(saved[1] && sequencesOf(saved[1])).toEqual([1, 1, 1])
  })

  it('is not made when its number cannot be stored: a repeated number would leave the older file standing', async () => {
    const kept = { ...memoryKept(), set: () => Promise.reject(new Error('full')) }
    const { saveCalendar, saved } = filesOf(await started(), kept)
    expect(await saveCalendar()).toMatchObject({ ok: false, say: expect.stringContaining('could not be stored') })
    expect(saved).toEqual([])
  })

  it('of a rehearsal says so in every event', async () => {
    const { saveCalendar, saved } = filesOf(await started(), memoryKept(), true)
    await saveCalendar()
    expect(saved[0]?.text.match(/SUMMARY:Rehearsal/g)).toHaveLength(3)
  })
})
