// Catching up after a sleep equals having stayed awake: a twin kitchen with the same store stays awake instead.
import type { PotEntry } from '../../src/session/ports.ts'
import type { Chance } from './chance.ts'
import { Counts } from './counts.ts'
import { Kitchen } from './kitchen.ts'
import { momentsOf } from './rules/standing.ts'

/** What one kitchen wrote awake from `fromMs` for `ms`, on a copy of the store. */
export async function stayedAwake(kitchen: Kitchen, chance: Chance, ms: number): Promise<Map<string, string[]>> {
  const twin = new Kitchen(chance, new Counts(), {}, kitchen.nowMs)
  twin.writerId = kitchen.writerId
  twin.store.copyFrom(kitchen.store)
  const lengths = new Map(twin.store.streamIds().map((id) => [id, twin.store.stream(id).length]))
  const tab = await twin.openTab()
  const untilMs = twin.nowMs + ms
  while (twin.nowMs < untilMs) {
    const coming = tab.session.pots().flatMap(({ state }) => momentsOf(state).map(({ atMs }) => atMs))
    const next = Math.min(untilMs, ...coming.filter((atMs) => atMs > twin.nowMs))
    const tickMs = chance.of(0.1) ? chance.whole(1, 60_000) : next - twin.nowMs
    twin.clock.advance(Math.min(tickMs, untilMs - twin.nowMs))
    await twin.settle()
  }
  tab.session.close()
  return new Map([...lengths].map(([id, from]) => [id, twin.store.stream(id).slice(from).map(told)]))
}

/** By what an alert could be noticed is the one thing that sleep changes. */
export function told({ atMs, by, event }: PotEntry): string {
  return JSON.stringify([atMs, by, event.type === 'AlertRaised' ? { ...event, told: null } : event])
}
