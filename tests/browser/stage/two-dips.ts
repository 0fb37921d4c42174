// Two dip gradients at once, as every way of answering must bring them to their end, and what their journals must say.
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import type { PotEvent } from '../../../src/core/pot/events.ts'
import type { PotEntry } from '../../../src/session/ports.ts'
import type { Judge } from './answers.ts'
import { startPot } from './dyer.ts'
import { gapsIn, REHEARSAL, type Stored, summariesIn } from './journal.ts'

const MIN = 60_000
export const plum = { title: 'Dip gradient', colourway: 'Plum', massG: 40, bands: 2, eachMin: 2 }
export const moss = { title: 'Dip gradient', colourway: 'Moss', massG: 60, bands: 3, eachMin: 3 }
type Dip = typeof plum

export async function startBoth(page: Page): Promise<void> {
  for (const { bands, eachMin, ...pot } of [plum, moss]) {
    const values = { 'How many bands are tied off?': String(bands), 'How long after each band?': `${eachMin} min` }
    await startPot(page, { ...pot, values })
  }
}

/** Moss is not clear at first and gets acid once more; the first rinse of each is not clear. */
export const judge: Judge = (pot, act, times) => {
  if (act === 'Judge the bath') return pot === 'Moss' && times === 0 ? 'tint' : 'clear'
  return times === 0 ? 'trace' : 'clear'
}

export async function bothComplete(page: Page): Promise<boolean> {
  const summaries = await summariesIn(page, REHEARSAL)
  return summaries.length === 2 && summaries.every(({ status }) => status === 'complete')
}

/** What came by a person after the pots were started: by what, and how often. */
export function heardBy({ entries }: Stored): Record<string, number> {
  const counts: Record<string, number> = {}
  for (const { by, event } of entries) {
    if (by.kind !== 'person' || event.type === 'PotStarted' || event.type === 'CautionShown') continue
    // What the start itself brings along is the start's.
    if (event.type === 'StepStarted' || event.type === 'RoundStarted') continue
    counts[by.via] = (counts[by.via] ?? 0) + 1
  }
  return counts
}

/** The sums of the method: 20 mL of water, 1 % of dye as a 1 % stock and 3 % of acid at 5 % by thirds, on each gram. */
function dosesOf({ massG }: Dip, topUps: number): [string, number][] {
  return [
    ['water', massG * 20],
    ['mixed dye', massG],
    ...Array.from({ length: 3 }, (): [string, number] => ['acid', (massG * 3) / 5 / 3]),
    ...Array.from({ length: topUps }, (): [string, number] => ['acid', massG / 5])
  ]
}

/** Whole, each act once, each dose as its weight asks, each band for its time to the millisecond. */
export function expectBothDone(stored: Stored): void {
  expect(stored.summaries.map(({ status }) => status)).toEqual(['complete', 'complete'])
  expect(gapsIn(stored.entries)).toEqual([])
  for (const [pot, topUps] of [
    [plum, 0],
    [moss, 1]
  ] as const) {
    const entries = entriesOf(stored, pot)
    const told = <T extends PotEvent['type']>(type: T): { atMs: number; event: Extract<PotEvent, { type: T }> }[] =>
      entries.filter(
        (entry): entry is PotEntry & { event: Extract<PotEvent, { type: T }> } => entry.event.type === type
      )
    expect(told('Finished')).toHaveLength(1)
    const doses = told('Dosed').map(({ event }) => [event.of, Number(event.added.value.toFixed(6))])
    expect(doses, pot.colourway).toEqual(dosesOf(pot, topUps).map(([of, mL]) => [of, Number(mL.toFixed(6))]))
    const began = new Map(told('StepStarted').map(({ atMs, event }) => [event.path, atMs]))
    const held = told('StepClosed').filter(({ event }) => /^dip\[\d\]\/hold$/.test(event.path))
    expect(held.map(({ atMs, event }) => atMs - (began.get(event.path) ?? 0))).toEqual(
      Array.from({ length: pot.bands }, () => pot.eachMin * MIN)
    )
    expect(told('StepClosed').filter(({ event }) => /^dip\[\d\]\/lower$/.test(event.path))).toHaveLength(pot.bands)
    expect(told('Withdrawn')).toHaveLength(0)
  }
}

function entriesOf(stored: Stored, { colourway }: Dip): PotEntry[] {
  const { streamId } = stored.summaries.find((line) => line.colourway === colourway) ?? { streamId: '' }
  return stored.entries.filter((entry) => entry.streamId === streamId).sort((a, b) => a.seq - b.seq)
}
