import type { PotEvent } from '../core/pot/events.ts'
import type { Programme } from '../core/protocol/model.ts'
import { stepAt, stepsOf } from '../core/protocol/tree.ts'

type Course =
  | { kind: 'steady' }
  | { kind: 'heating'; cPerMin: number; towardsC: number }
  /** Newton's law of cooling, T = Ta + (T0 - Ta) e^-kt. */
  | { kind: 'cooling' }

/** The temperature of a bath that nobody measures: it heats at the stated rate, stays where a ramp left it, and cools by
 * Newton's law with the programme's constant once the heat is off. */
export class SimulatedBath {
  readonly #programme: Programme
  #course: Course = { kind: 'steady' }
  #sinceMs: number
  #fromC: number

  constructor(programme: Programme, atMs: number) {
    this.#programme = programme
    this.#sinceMs = atMs
    this.#fromC = stepsOf(programme).find((s) => s.ramp)?.ramp?.expectedFromC ?? programme.roomC
  }

  /** °C at that time, to the tenth of a degree, as a kitchen thermometer shows it. */
  tempC(atMs: number): number {
    return Math.round(this.#exactC(atMs) * 10) / 10
  }

  heed(event: PotEvent, atMs: number): void {
    if (event.type === 'StepStarted') {
      const ramp = stepAt(this.#programme, event.path)?.ramp
      if (ramp) this.#turn(atMs, { kind: 'heating', cPerMin: ramp.cPerMin, towardsC: ramp.highC ?? ramp.lowC })
    }
    if (event.type === 'StepClosed' && stepAt(this.#programme, event.path)?.ramp) this.#turn(atMs, { kind: 'steady' })
    if (event.type === 'HeatSet' && !event.on) this.#turn(atMs, { kind: 'cooling' })
  }

  #turn(atMs: number, course: Course): void {
    this.#fromC = this.#exactC(atMs)
    this.#sinceMs = atMs
    this.#course = course
  }

  #exactC(atMs: number): number {
    const min = Math.max(0, atMs - this.#sinceMs) / 60_000
    const { roomC, coolingPerMin } = this.#programme
    switch (this.#course.kind) {
      case 'steady':
        return this.#fromC
      case 'heating':
        return Math.min(Math.max(this.#course.towardsC, this.#fromC), this.#fromC + this.#course.cPerMin * min)
      case 'cooling':
        return roomC + (this.#fromC - roomC) * Math.exp(-coolingPerMin * min)
    }
  }
}
