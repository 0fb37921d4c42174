import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { PotEvent } from '../../src/core/pot/events.ts'
import type { PotEntry } from '../../src/session/ports.ts'
import { answerAll, type Judge } from './stage/answers.ts'
import { startPot } from './stage/dyer.ts'
import { runFast } from './stage/fast-clock.ts'
import { gapsIn, REHEARSAL, type Stored, storedIn, summariesIn } from './stage/journal.ts'
import { press } from './stage/press.ts'
import { keepsTheApp, keptForOffline, openStage, type Stage, type Visit } from './stage/stage.ts'

const MIN = 60_000
const plum = { title: 'Dip gradient', colourway: 'Plum', massG: 40, bands: 2, eachMin: 2 }
const moss = { title: 'Dip gradient', colourway: 'Moss', massG: 60, bands: 3, eachMin: 3 }
type Dip = typeof plum

const asked = ({ bands, eachMin, ...pot }: Dip): Parameters<typeof startPot>[1] => ({
  ...pot,
  values: { 'How many bands are tied off?': String(bands), 'How long after each band?': `${eachMin} min` }
})

/** Moss is not clear at first and gets acid once more; the first rinse of each is not clear. */
const judge: Judge = (pot, act, times) => {
  if (act === 'Judge the bath') return pot === 'Moss' && times === 0 ? 'tint' : 'clear'
  return times === 0 ? 'trace' : 'clear'
}

let stage: Stage
let visit: Visit
let stored: Stored

beforeAll(async () => {
  stage = await openStage()
  visit = await stage.visit(keepsTheApp)
  const { page } = visit
  await page.goto(`${stage.host.address}?rehearse=15`)
  await keptForOffline(page)
  await stage.host.stop()
  await page.reload()
  await page.locator('.stove').waitFor()
  await runFast(page)
  await startPot(page, asked(plum))
  await startPot(page, asked(moss))
  await answerAll(page, judge, async () => {
    const summaries = await summariesIn(page, REHEARSAL)
    return summaries.length === 2 && summaries.every(({ status }) => status === 'complete')
  })
  stored = await storedIn(page, REHEARSAL)
}, 8 * MIN)
afterAll(() => stage?.close())

const entriesOf = ({ colourway }: Dip): PotEntry[] => {
  const { streamId } = stored.summaries.find((line) => line.colourway === colourway) ?? { streamId: '' }
  return stored.entries.filter((entry) => entry.streamId === streamId).sort((a, b) => a.seq - b.seq)
}

type Told<T extends PotEvent['type']> = { atMs: number; event: Extract<PotEvent, { type: T }> }

const told = <T extends PotEvent['type']>(pot: Dip, type: T): Told<T>[] =>
  entriesOf(pot).filter((entry): entry is PotEntry & Told<T> => entry.event.type === type)

/** The sums of the method: 20 mL of water, 1 % of dye as a 1 % stock and 3 % of acid at 5 % by thirds, on each gram. */
const dosesOf = ({ massG }: Dip, topUps: number): [string, number][] => [
  ['water', massG * 20],
  ['mixed dye', ((massG * 1) / 100 / 1) * 100],
  ...Array.from({ length: 3 }, (): [string, number] => ['acid', ((massG * 3) / 100 / 5) * 100 * (1 / 3)]),
  ...Array.from({ length: topUps }, (): [string, number] => ['acid', ((massG * 1) / 100 / 5) * 100])
]

describe('two dip gradients at once, on a phone, by touch, with no network', () => {
  it('come to their end, and no entry of either is missing or stands twice', () => {
    expect(stored.summaries.map(({ status }) => status)).toEqual(['complete', 'complete'])
    expect(gapsIn(stored.entries)).toEqual([])
    for (const pot of [plum, moss]) expect(told(pot, 'Finished')).toHaveLength(1)
  })

  it.each([
    [plum, 0],
    [moss, 1]
  ] as const)(
    'get what their weight asks for, each acid once, and acid again only where the bath was not clear: $colourway',
    (pot, topUps) => {
      const doses = told(pot, 'Dosed').map(({ event }) => [event.of, Number(event.added.value.toFixed(6))])
      expect(doses).toEqual(dosesOf(pot, topUps).map(([of, mL]) => [of, Number(mL.toFixed(6))]))
    }
  )

  it.each([plum, moss])('lie in the dye band by band for the time given, to the millisecond: $colourway', (pot) => {
    const began = new Map(told(pot, 'StepStarted').map(({ atMs, event }) => [event.path, atMs]))
    const held = told(pot, 'StepClosed').filter(({ event }) => /^dip\[\d\]\/hold$/.test(event.path))
    expect(held.map(({ event }) => event.how)).toEqual(Array.from({ length: pot.bands }, () => 'clock'))
    for (const { atMs, event } of held) expect(atMs - (began.get(event.path) ?? 0)).toBe(pot.eachMin * MIN)
    const lowered = told(pot, 'StepClosed').filter(({ event }) => /^dip\[\d\]\/lower$/.test(event.path))
    expect(lowered.map(({ event }) => event.path)).toEqual(held.map(({ event }) => event.path.replace('hold', 'lower')))
  })

  it.each([plum, moss])('are called for every act, once and not before its time: $colourway', (pot) => {
    const dueAtMs = new Map<string, number>()
    const calls: string[] = []
    for (const { atMs, event } of entriesOf(pot)) {
      if (event.type === 'StepStarted' && event.dueAtMs !== null) dueAtMs.set(event.path, event.dueAtMs)
      if (event.type !== 'AlertRaised' || event.kind !== 'call') continue
      calls.push(event.key)
      expect(atMs).toBeGreaterThanOrEqual(dueAtMs.get(event.path ?? '') ?? Infinity)
    }
    expect(new Set(calls).size).toBe(calls.length)
    const answered = told(pot, 'StepClosed').filter(({ event }) => event.how !== 'clock')
    expect(calls.length).toBeGreaterThan(20)
    expect(answered.length).toBeGreaterThan(20)
  })

  it('stand in the Dye book with what was planned, what was added, and when', async () => {
    const { page } = visit
    for (const pot of [plum, moss]) {
      await page.evaluate(() => {
        location.hash = '#/dye-book'
      })
      await page.locator('.book-line a', { hasText: pot.colourway }).tap()
      await page.getByRole('heading', { name: pot.colourway, level: 1 }).waitFor()
      expect(await page.locator('.book-head').textContent()).toMatch(/Done in/)
      const rows = await page
        .locator('.book-part table tbody tr')
        .evaluateAll((all) =>
          all.map((row) =>
            [...row.querySelectorAll('td')].map((cell) => (cell.textContent ?? '').replaceAll('\u00a0', ' '))
          )
        )
      const doses = told(pot, 'Dosed')
      const clock = (atMs: number): string => new Date(atMs).toTimeString().slice(0, 5)
      // Acid that the clear bath did not ask for stands there too, as not added.
      const wentIn = rows.filter(([, added]) => added !== 'not added')
      expect(rows.length).toBe(5 + 3)
      expect(wentIn.map(([, , when]) => when?.slice(0, 5))).toEqual(doses.map(({ atMs }) => clock(atMs)))
      for (const [planned, added] of wentIn) expect(added).toBe(planned)
      const litres = (mL: number): string => (mL >= 1_000 ? `${mL / 1_000} L` : `${mL} mL`)
      expect(wentIn.map(([planned]) => planned)).toEqual(
        doses.map(({ event }) => litres(Number(event.added.value.toFixed(3))))
      )
    }
  })

  it('and one of them is started again with five taps from opening the app', async () => {
    const { page } = visit
    await page.goto(`${stage.host.address}?rehearse=15`)
    const taps = [
      page.getByRole('button', { name: 'Menu' }),
      page.getByRole('dialog').getByRole('button', { name: 'Dye book' }),
      page.getByRole('button', { name: 'Moss: same again' }),
      page.getByRole('button', { name: 'Start', exact: true }),
      page.getByRole('button', { name: 'Start all the same' })
    ]
    const next = [...taps.slice(1), page.locator('.call, .bath').first()]
    for (const [at, pad] of taps.entries()) {
      const after = next[at]
      await press(pad, async () => (await after?.isVisible()) ?? false)
    }
    const { summaries, entries } = await storedIn(page, REHEARSAL)
    const again = summaries.filter(({ status }) => status === 'running')
    expect(again).toHaveLength(1)
    expect(again[0]).toMatchObject({ colourway: 'Moss', goodsMassG: moss.massG, protocolTitle: moss.title })
    const started = entries.flatMap(({ streamId, event }) =>
      streamId === again[0]?.streamId && event.type === 'PotStarted' ? [event.programme.setOut] : []
    )
    const before = told(moss, 'PotStarted').map(({ event }) => event.programme.setOut)
    expect(started).toEqual(before)
  })

  it('and in all that time nothing was asked of any other place, and the browser complained of nothing', () => {
    expect(visit.elsewhere()).toEqual([])
    expect(visit.complaints).toEqual([])
  })
})
