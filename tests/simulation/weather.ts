// The faults of a day: what the store does to the next write or reading.
import type { Fault } from '../../src/shell/journal/memory-journal.ts'
import type { Chance } from './chance.ts'
import type { Counts } from './counts.ts'

/** How rough a day is, each a share of writes or readings. */
export type Roughness = { fails: number; slow: number; crashes: number; readFails: number }

export const calm: Roughness = { fails: 0, slow: 0, crashes: 0, readFails: 0 }

export class Weather {
  roughness: Roughness = calm
  /** While the store is full or the connection gone, every write fails. */
  spell: 'full' | 'lost' | null = null
  readonly #chance: Chance
  readonly #counts: Counts

  constructor(chance: Chance, counts: Counts) {
    this.#chance = chance
    this.#counts = counts
  }

  clear(): void {
    this.roughness = calm
    this.spell = null
  }

  ofWrite(): Fault | null {
    const fault = this.#fault()
    if (fault !== null) {
      const names =
        typeof fault === 'string' ? [fault] : ['slow write', ...(fault.then ? [`slow, then ${fault.then}`] : [])]
      for (const name of names) this.#counts.add('fault', name)
    }
    return fault
  }

  ofReading(): boolean {
    const fails = this.#chance.of(this.roughness.readFails)
    if (fails) this.#counts.add('fault', 'failed reading')
    return fails
  }

  #fault(): Fault | null {
    if (this.spell !== null) return this.spell
    const { fails, slow, crashes } = this.roughness
    const chance = this.#chance
    if (chance.of(crashes)) return chance.pick(['crash-before', 'crash-after'] as const)
    if (chance.of(fails)) return chance.pick(['full', 'lost', 'conflict'] as const)
    if (!chance.of(slow)) return null
    const slowMs = chance.whole(50, 20_000)
    const then = chance.of(0.4) ? chance.pick(['full', 'lost'] as const) : undefined
    return { slowMs, then }
  }
}

/** The page is gone by this fault, before or after its write lands. */
export function isCrash(fault: Fault | null): boolean {
  return fault === 'crash-before' || fault === 'crash-after'
}
