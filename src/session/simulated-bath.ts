import { newtonC } from '../core/chemistry/heating/laws.ts'
import type { PotEvent } from '../core/pot/events.ts'
import type { Programme, Step } from '../core/protocol/model.ts'
import { stepAt, stepsOf } from '../core/protocol/tree.ts'

type Course =
  | { kind: 'steady' }
  | { kind: 'heating'; cPerMin: number; towardsC: number }
  /** By Newton's law. */
  | { kind: 'cooling' }
  /** Cold water at the wall. */
  | { kind: 'cooled'; cPerMin: number }

/** The temperature of a bath that nobody measures: it heats at the stated rate, stays where a ramp left it, and cools by
 * Newton's law with the programme's constant once the heat is off. */
export class SimulatedBath {
  readonly #programme: Programme
  #course: Course = { kind: 'steady' }
  #sinceMs: number
  #fromC: number
  /** Filled afresh since it was last heated: the programme knows how warm that water is. */
  #refilled = false

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
    if (event.type === 'StepStarted') this.#started(stepAt(this.#programme, event.path), atMs)
    if (event.type === 'StepClosed') this.#closed(stepAt(this.#programme, event.path), atMs)
    if (event.type === 'HeatSet' && !event.on) this.#turn(atMs, { kind: 'cooling' })
  }

  #started(step: Step | null, atMs: number): void {
    if (step?.word === 'fill') this.#refilled = true
    if (step?.ramp) {
      const { cPerMin, highC, lowC, expectedFromC } = step.ramp
      this.#turn(atMs, { kind: 'heating', cPerMin, towardsC: highC ?? lowC })
      if (this.#refilled) this.#fromC = expectedFromC
      this.#refilled = false
    }
    const coolCPerMin = step?.wait?.coolCPerMin
    if (coolCPerMin !== undefined) this.#turn(atMs, { kind: 'cooled', cPerMin: coolCPerMin })
  }

  #closed(step: Step | null, atMs: number): void {
    if (step?.ramp) this.#turn(atMs, { kind: 'steady' })
    if (step?.wait?.coolCPerMin !== undefined) this.#turn(atMs, { kind: 'cooling' })
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
      case 'cooled':
        return Math.max(Math.min(roomC, this.#fromC), this.#fromC - this.#course.cPerMin * min)
      case 'cooling':
        return newtonC({ fromC: this.#fromC, towardsC: roomC, perMin: coolingPerMin }, min)
    }
  }
}
