// The clock of a rehearsal: as fast as may be while nobody is wanted, and slow enough to press pads while somebody is.
import type { Page } from 'playwright-core'
import type { PotOnStove } from '../../../src/ui/kitchen.ts'

type Handle = {
  kitchen: { pots: { value: PotOnStove[]; subscribe(seen: (pots: PotOnStove[]) => void): () => void } }
  clock: { nowMs(): number; runAt(speed: number): void }
}
export type WithHandle = { strandlineRehearsal: Handle }

/** `hands`: how many times as fast while a pot calls. What is next comes within `withinMs` or so. */
export function runFast(page: Page, hands = 15, withinMs = 1_000): Promise<void> {
  return page.evaluate(
    ([slow, within]) => {
      const { kitchen, clock } = (globalThis as unknown as WithHandle).strandlineRehearsal
      const dues = (pot: PotOnStove): number[] =>
        pot.state.status === 'running' ? pot.state.active.flatMap(({ dueAtMs }) => dueAtMs ?? []) : []
      const set = (pots: PotOnStove[]): void => {
        const calls = pots.some(({ alerts }) => alerts.some(({ kind }) => kind !== 'headsUp'))
        const leftMs = Math.min(...pots.flatMap(dues)) - clock.nowMs()
        const fast = Number.isFinite(leftMs) ? Math.min(3_600, Math.max(slow, leftMs / within)) : slow
        clock.runAt(calls ? slow : fast)
      }
      kitchen.pots.subscribe(set)
    },
    [hands, withinMs] as const
  )
}
