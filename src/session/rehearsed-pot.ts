import type { PotCommand } from '../core/pot/commands.ts'
import { decide } from '../core/pot/decide.ts'
import type { By, PotEvent } from '../core/pot/events.ts'
import { evolve } from '../core/pot/evolve.ts'
import type { LiveState, PotState } from '../core/pot/state.ts'
import type { Programme } from '../core/protocol/model.ts'
import { SimulatedBath } from './simulated-bath.ts'

export type Told = { atMs: number; commandId: string; by: By; event: PotEvent }

/** One pot on a clock moved by hand, through the real engine and without a store. */
export class RehearsedPot {
  state: PotState = { status: 'idle' }
  readonly told: Told[] = []
  readonly bath: SimulatedBath
  nowMs: number
  #ids = 0

  constructor(programme: Programme, startMs: number) {
    this.nowMs = startMs
    this.bath = new SimulatedBath(programme, startMs)
  }

  live(): LiveState | null {
    return this.state.status === 'running' || this.state.status === 'held' ? this.state : null
  }

  /** Time goes on, never back. */
  goTo(atMs: number): void {
    this.nowMs = Math.max(this.nowMs, atMs)
  }

  /** Sends a command; the sentence of a refusal, or null. */
  send(command: PotCommand, by: By, atMs = this.nowMs): string | null {
    const commandId = `rehearsal-${++this.#ids}`
    const decision = decide(this.state, command, { commandId, atMs, by })
    if (!decision.ok) return decision.refusal.say
    for (const event of decision.events) {
      const ref = { writerId: 'rehearsal', seq: this.told.length + 1 }
      this.told.push({ atMs, commandId, by, event })
      this.state = evolve(this.state, event, { atMs, commandId, by, ref })
      this.bath.heed(event, atMs)
    }
    return null
  }
}
