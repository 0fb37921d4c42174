// How long steps really took, read from the journal alone: no wait ends short of its time, none by the clock at another
// moment than its due one, no ramp below its mark, and lateness to absorb is handed on whole.
import type { Programme, Step } from '../../../src/core/protocol/model.ts'
import { stepAt } from '../../../src/core/protocol/tree.ts'
import type { PotEntry } from '../../../src/session/ports.ts'

/** Milliseconds may be lost where lengths are divided. */
const ROUNDING_MS = 2

type Running = {
  step: Step
  startedAtMs: number
  /** From when its time counts; null: the moment has not come. */
  fromMs: number | null
  dueAtMs: number | null
  absorbedMs: number
  uncountedMs: number
  outsideSinceMs: number | null
  moved: boolean
  met: Set<number>
  /** Moments that had come by the time it began, whatever hour they were said to have been at. */
  known: Set<string>
}

export function lengthsBroken(programme: Programme, held: readonly PotEntry[]): string[] {
  const lengths = new Lengths(programme)
  for (const entry of held) lengths.heed(entry)
  return lengths.broken
}

class Lengths {
  readonly broken: string[] = []
  readonly #programme: Programme
  readonly #running = new Map<string, Running>()
  readonly #marked = new Map<string, number>()
  #heldSinceMs = 0
  #carry: { commandId: string; ms: number } | null = null
  #reading: { commandId: string; tempC: number } | null = null

  constructor(programme: Programme) {
    this.#programme = programme
  }

  heed(entry: PotEntry): void {
    const { event, atMs, commandId } = entry
    switch (event.type) {
      case 'StepStarted':
        this.#begins(entry, event)
        break
      case 'StepClosed':
        this.#closes(entry, event.path, event.how)
        this.#carry = { commandId, ms: event.carryMs }
        this.#mark(event.path.slice(event.path.lastIndexOf('/') + 1), atMs)
        break
      case 'Ended':
        this.#mark(event.path.slice(event.path.lastIndexOf('/') + 1), atMs)
        break
      case 'MomentMarked':
        this.#mark(event.name, atMs)
        break
      case 'ConditionMet':
        this.#running.get(event.path)?.met.add(event.index)
        break
      case 'TemperatureRead':
        this.#reading = { commandId, tempC: event.tempC }
        break
      case 'DueMoved':
        this.#moves(event, atMs)
        break
      case 'Held':
        this.#heldSinceMs = atMs
        break
      case 'Resumed':
        if (!event.heldTimeCounts) this.#leaveOut(event.heldMs)
        break
      case 'ClockShifted':
        this.#shift(event.byMs)
        break
      default:
        break
    }
  }

  #begins(entry: PotEntry, event: Extract<PotEntry['event'], { type: 'StepStarted' }>): void {
    const step = stepAt(this.#programme, event.path)
    if (!step) return
    const { atMs, commandId } = entry
    const from = step.wait?.from ?? null
    const fromMs = from === null ? atMs : (this.#marked.get(from) ?? null)
    this.#running.set(event.path, {
      step,
      startedAtMs: atMs,
      fromMs,
      dueAtMs: event.dueAtMs,
      absorbedMs: event.absorbedMs,
      uncountedMs: 0,
      outsideSinceMs: null,
      moved: false,
      met: new Set(),
      known: new Set(this.#marked.keys())
    })
    const handedOn = !event.side && this.#carry?.commandId === commandId ? this.#carry.ms : 0
    const taken = event.carryMs + event.absorbedMs
    if (taken !== handedOn) {
      this.broken.push(`${event.path} began with ${taken} ms of lateness to absorb, ${handedOn} were handed on`)
    }
    const wait = step.wait
    if (wait?.forMs && event.absorbedMs > Math.max(0, wait.forMs - wait.leastMs) + ROUNDING_MS) {
      this.broken.push(`${event.path} shrank under its least`)
    }
  }

  #closes({ atMs, commandId }: PotEntry, path: string, how: string): void {
    const running = this.#running.get(path)
    this.#running.delete(path)
    if (!running) return
    if (how === 'clock' && running.dueAtMs !== atMs) {
      this.broken.push(`the clock closed ${path} ${atMs - (running.dueAtMs ?? 0)} ms off its due time`)
    }
    if (how !== 'clock' && how !== 'reading') return
    const { step } = running
    if (step.ramp) {
      const read = this.#reading?.commandId === commandId ? this.#reading.tempC : null
      if (read === null || read < step.ramp.lowC) this.broken.push(`the ramp ${path} ended at ${read} °C`)
    }
    if (!step.wait) return
    for (const [index, until] of step.wait.until.entries()) {
      const came = until.kind === 'moment' ? this.#hasCome(running, until.name, how, atMs) : running.met.has(index)
      if (!came) this.broken.push(`${path} ended before its ${until.kind} came`)
    }
    const shortMs = this.#shortMs(running, atMs)
    if (shortMs > ROUNDING_MS) this.broken.push(`${path} ended (${how}) ${shortMs} ms short of its time`)
  }

  /** An answer said to have been some minutes ago may lie before the moment; the clock may not. */
  #hasCome(running: Running, name: string, how: string, atMs: number): boolean {
    if (how === 'reading') return this.#marked.has(name)
    return running.known.has(name) || (this.#marked.get(name) ?? Infinity) <= atMs
  }

  /** How much of a wait's own time is still to come at `atMs`. */
  #shortMs(running: Running, atMs: number): number {
    const { step, fromMs, startedAtMs, absorbedMs, uncountedMs, moved } = running
    const wait = step.wait
    if (!wait || wait.forMs === null || moved) return 0
    if (fromMs === null) return Infinity
    if (wait.from === null) return fromMs + wait.forMs - absorbedMs + uncountedMs - atMs
    return Math.max(fromMs + wait.forMs, startedAtMs + wait.leastMs) + uncountedMs - atMs
  }

  #moves(event: Extract<PotEntry['event'], { type: 'DueMoved' }>, atMs: number): void {
    const running = this.#running.get(event.path)
    if (!running) return
    running.dueAtMs = event.dueAtMs
    if (event.why === 'moved') running.moved = true
    if (event.why === 'outside-range') running.outsideSinceMs ??= atMs
    if (event.why === 'inside-range' && running.outsideSinceMs !== null) {
      if (this.#shortMs(running, running.outsideSinceMs) > 0) running.uncountedMs += atMs - running.outsideSinceMs
      running.outsideSinceMs = null
    }
    if (event.why === 'trouble') {
      running.startedAtMs = atMs
      running.fromMs = atMs
      running.uncountedMs = 0
      running.outsideSinceMs = null
    }
  }

  #leaveOut(heldMs: number): void {
    for (const running of this.#running.values()) {
      if (running.fromMs === null || running.outsideSinceMs !== null) continue
      if (this.#shortMs(running, this.#heldSinceMs) > 0) running.uncountedMs += heldMs
    }
  }

  #mark(name: string, atMs: number): void {
    this.#marked.set(name, atMs)
    for (const running of this.#running.values()) {
      if (running.step.wait?.from === name) running.fromMs ??= atMs
    }
  }

  #shift(byMs: number): void {
    const by = (at: number | null): number | null => (at === null ? null : at + byMs)
    for (const running of this.#running.values()) {
      running.startedAtMs += byMs
      running.fromMs = by(running.fromMs)
      running.dueAtMs = by(running.dueAtMs)
      running.outsideSinceMs = by(running.outsideSinceMs)
    }
    for (const [name, atMs] of this.#marked) this.#marked.set(name, atMs + byMs)
    this.#heldSinceMs += byMs
  }
}
