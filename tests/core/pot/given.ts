// given (events), when (command), then (events): the reading order of the engine's tests.

import type { PotCommand } from '../../../src/core/pot/commands.ts'
import { decide } from '../../../src/core/pot/decide.ts'
import type { Entry } from '../../../src/core/pot/entry.ts'
import type { By, PotEvent, PotIdentity } from '../../../src/core/pot/events.ts'
import { evolve } from '../../../src/core/pot/evolve.ts'
import { fold } from '../../../src/core/pot/fold.ts'
import { nextDue } from '../../../src/core/pot/next-due.ts'
import type { PotState, Run } from '../../../src/core/pot/state.ts'
import type { Programme } from '../../../src/core/protocol/model.ts'

export const T0 = Date.UTC(2031, 5, 14, 9, 0, 0)
export const PERSON: By = { kind: 'person', name: null, via: 'tap' }

export function identity(potId = 'pot-a', colourway = 'Moss'): PotIdentity {
  return {
    potId,
    batchName: `2031-06-14 ${colourway}`,
    colourway,
    letter: 'A',
    burner: 'front left',
    colour: '#285f57',
    skeins: [{ tag: 'S1', massG: 100 }],
    fibre: 'wool',
    parentBatchId: null,
    bath: { bathId: `bath-${potId}`, number: 1, parentBatchId: null, unknownDyeLeft: false },
    by: null
  }
}

/** A pot on the bench of a test: commands in, journal and state out; the clock goes as the test says. */
export class Bench {
  state: PotState = { status: 'idle' }
  entries: Entry<PotEvent>[] = []
  nowMs = T0
  #ids = 0

  static start(programme: Programme): Bench {
    const bench = new Bench()
    const protocol = { title: 'Test', text: 'strandline: 1', version: 'v1', from: 'file' as const }
    bench.do({ type: 'Start', pot: identity(), protocol, programme, checks: [], cautionsShown: [] })
    return bench
  }

  get run(): Run {
    if (this.state.status === 'idle') throw new Error('not started')
    return this.state
  }

  open(): string[] {
    return this.run.active.map((a) => a.path)
  }

  due(path: string): number | null {
    const active = this.run.active.find((a) => a.path === path)
    if (!active) throw new Error(`${path} is not open; open are ${this.open().join(', ')}`)
    return active.dueAtMs === null ? null : (active.dueAtMs - T0) / 60_000
  }

  /** Sends a command that must be taken; returns the events. */
  do(command: PotCommand, agoMs = 0, commandId = `c${++this.#ids}`): PotEvent[] {
    const decision = this.try(command, agoMs, commandId)
    if (!decision.ok) throw new Error(`refused: ${decision.refusal.code}: ${decision.refusal.say}`)
    return decision.events
  }

  /** Sends a command that may be refused. */
  try(command: PotCommand, agoMs = 0, commandId = `c${++this.#ids}`, by: By = PERSON): ReturnType<typeof decide> {
    const atMs = this.nowMs - agoMs
    return this.#take(command, atMs, commandId, by)
  }

  #take(command: PotCommand, atMs: number, commandId: string, by: By): ReturnType<typeof decide> {
    const decision = decide(this.state, command, { commandId, atMs, by })
    if (!decision.ok) return decision
    for (const event of decision.events) this.#append(event, atMs, commandId, by)
    return decision
  }

  #append(event: PotEvent, atMs: number, commandId: string, by: By): void {
    const seq = this.entries.length + 1
    const entry: Entry<PotEvent> = {
      v: 2,
      streamId: 'pot/pot-a',
      writerId: 'w',
      seq,
      after: seq > 1 ? { writerId: 'w', seq: seq - 1 } : null,
      commandId,
      atMs,
      recordedAtMs: this.nowMs,
      bootId: 'b',
      monoMs: this.nowMs - T0,
      tzOffsetMin: 0,
      by,
      crc: '',
      event
    }
    this.entries.push(entry)
    const ref = { writerId: 'w', seq }
    this.state =
      event.type === 'Withdrawn' ? fold(this.entries) : evolve(this.state, event, { atMs, commandId, by, ref })
  }

  /** Lets the clock run on by minutes, passing every due moment at its time. */
  pass(minutes: number): PotEvent[] {
    const until = this.nowMs + minutes * 60_000
    const told: PotEvent[] = []
    for (let i = 0; i < 10_000; i++) {
      const due = nextDue(this.state)[0]
      if (!due || due.atMs > until) break
      this.nowMs = Math.max(this.nowMs, due.atMs)
      const decision = this.#take({ type: 'PassDue', key: due.key }, due.atMs, `clock:${due.key}`, { kind: 'clock' })
      if (!decision.ok) throw new Error(`the clock was refused: ${decision.refusal.say}`)
      told.push(...decision.events)
    }
    this.nowMs = until
    return told
  }
}

export function types(events: PotEvent[]): string[] {
  return events.map((e) => e.type)
}
