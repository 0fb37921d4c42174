// A rehearsal beside the real pots: a stove of its own, on a clock of its own, of which nothing is kept.
import type { ReadonlySignal } from '@preact/signals'
import type { ProtocolText } from '../core/pot/events.ts'
import type { Programme } from '../core/protocol/model.ts'
import type { Kitchen } from './kitchen.ts'

/** Who answers: the dyer, or somebody made up. */
export type RehearsalAnswers = 'own' | 'prompt' | 'slow' | 'forgetful'

/** `startsMs`: so long after the rehearsal begins. */
export type RehearsedPot = { programme: Programme; protocol: ProtocolText; startsMs: number }

export type RehearsalWish = { pots: RehearsedPot[]; answers: RehearsalAnswers; speed: number }

/** One act that was called: how long it waited, and where hands were wanted by another pot meanwhile. */
export type RehearsedAct = { pot: string; act: string; atMs: number; waitedMs: number }
export type RehearsedMeeting = { atMs: number; first: string; second: string; waitedMs: number }

/** What came of it. Times are ms after the beginning. */
export type RehearsalReport = {
  pots: { name: string; title: string; tookMs: number | null; sounds: number; mostAnHour: number }[]
  acts: RehearsedAct[]
  meetings: RehearsedMeeting[]
}

export type RehearsalRun = {
  /** What the Stove is given: its pots, its clock and its deeds are the rehearsal's. */
  kitchen: Kitchen
  /** ms since it began. */
  passedMs: ReadonlySignal<number>
  speed: ReadonlySignal<number>
  /** What the clock makes of the speed: 0 paused; 1 while a pot waits for the dyer's own answer. */
  goes: ReadonlySignal<number>
  setSpeed(speed: number): void
  answers: ReadonlySignal<RehearsalAnswers>
  setAnswers(answers: RehearsalAnswers): void
  paused: ReadonlySignal<boolean>
  pause(on: boolean): void
  /** Goes at once to the next time that hands are wanted, or to the end. While a call wants the dyer's answer nothing is
   * skipped. */
  toNextCall(): Promise<void>
  /** What a thermometer would show in each pot. */
  baths: ReadonlySignal<{ name: string; tempC: number }[]>
  /** Pots that are to start later. */
  coming: ReadonlySignal<{ name: string; inMs: number }[]>
  /** Why it can't go on, in words; null: it can. */
  stuck: ReadonlySignal<string | null>
  /** Why the next call was not gone to, in words; null: it was, or what stood in the way is done. */
  first: ReadonlySignal<string | null>
  /** Null until all pots have ended. */
  report: ReadonlySignal<RehearsalReport | null>
  /** Calls sound while no real pot is on. */
  sounds: ReadonlySignal<boolean>
  setSounds(on: boolean): void
  close(): void
}
