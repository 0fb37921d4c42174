// A decision in the making: each event told is at once folded into a working state, so that the next event is decided
// on what is true by then.
import type { CommandHeader, Refusal } from './commands.ts'
import type { PotEvent } from './events.ts'
import { evolve } from './evolve.ts'
import type { LiveState, PotState, Run } from './state.ts'

export type Decision = { ok: true; events: PotEvent[] } | { ok: false; refusal: Refusal }

export class Telling {
  readonly events: PotEvent[] = []
  readonly header: CommandHeader
  #state: PotState

  constructor(state: PotState, header: CommandHeader) {
    this.#state = state
    this.header = header
  }

  get atMs(): number {
    return this.header.atMs
  }

  /** The working state; only asked for after PotStarted. */
  get run(): Run {
    return this.#state as LiveState
  }

  tell(event: PotEvent): void {
    this.events.push(event)
    const { atMs, commandId, by } = this.header
    this.#state = evolve(this.#state, event, { atMs, commandId, by, ref: { writerId: '', seq: 0 } })
  }
}

export function refuse(code: Refusal['code'], say: string): { ok: false; refusal: Refusal } {
  return { ok: false, refusal: { code, say } }
}
