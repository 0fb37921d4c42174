// All that the screens are given. The app makes one real Kitchen; tests make a small one. Screens take values and send
// commands: they hold no state of the domain.
import type { ReadonlySignal } from '@preact/signals'
import type { PotCommand, Refusal } from '../core/pot/commands.ts'
import type { Alert } from '../core/pot/due.ts'
import type { Entry } from '../core/pot/entry.ts'
import type { By, Check, PotEvent, PotIdentity, ProtocolText } from '../core/pot/events.ts'
import type { Expectations } from '../core/pot/expected/expectation.ts'
import type { PhEstimate } from '../core/pot/expected/ph.ts'
import type { MediaBytes } from '../core/pot/media.ts'
import type { PotState } from '../core/pot/state.ts'
import type { Problem, Programme, Protocol } from '../core/protocol/model.ts'
import type { KeptNumbers } from '../core/protocol/numbers/kept.ts'
import type { KitchenBackup } from './backup.ts'
import type { KitchenFound } from './found.ts'
import type { KitchenMedia } from './media.ts'
import type { PhStrip } from './parts/ph-strip.ts'
import type { RehearsalRun, RehearsalWish } from './rehearsing.ts'
import type { BroughtIn, TextSharing } from './sharing.ts'
import type { KitchenShelf } from './shelf.ts'
import type { KitchenCards } from './skein-cards.ts'
import type { KitchenSwatches } from './swatches.ts'
import type { KitchenWriting } from './writing.ts'

/** `expected`: what its thermometer tells of the open steps; `madePh`: what pH its doses would make, null where nobody can
 * say. Left out until that is fetched. */
export type PotOnStove = {
  potId: string
  state: PotState
  alerts: Alert[]
  readOnly: string | null
  expected?: Expectations
  madePh?: PhEstimate | null
}

/** One rung of the alert ladder, in words: "sound ready", "screen may sleep: tap to keep it on". */
export type Lamp = {
  id: 'sound' | 'screen' | 'saved' | 'notices' | 'speech' | 'battery' | 'headset' | 'whistle'
  ok: boolean
  say: string
  tap: (() => void) | null
}

export type Missed = {
  potId: string
  colourway: string
  path: string | null
  what: string
  dueAtMs: number
  byMs: number
  late: string
}

export type Sent = { ok: true } | { ok: false; refusal: Refusal | null; say: string }

/** `cueAtMs`: the act was counted down to that time, and that is when it was done. `commandId`: one for all tries of the same deed; `media`: the bytes that the command names. */
export type SendOptions = {
  agoMs?: number
  cueAtMs?: number | null
  via?: Via
  commandId?: string
  media?: MediaBytes[]
}

export type StoredProtocol = {
  id: string
  file: string
  text: string
  protocol: Protocol
  from: 'built-in' | 'file'
  /** It has versions: when this one was saved, how many there are, and as what file it came if it was not written here. */
  written?: { savedAtMs: number; versions: number; cameAs?: string }
}

export type BookLine = {
  streamId: string
  potId: string
  batchName: string
  colourway: string
  colour: string
  protocolTitle: string
  startedAtMs: number
  endedAtMs: number | null
  status: 'running' | 'held' | 'complete' | 'aborted'
  goodsMassG: number
  offProtocol: boolean
  entries: number
  /** It was running on another device when it was backed up. */
  elsewhere?: true
  /** It was continued on several devices. */
  branched?: true
}

export type Settings = {
  temperature: 'C' | 'F'
  volume: 'metric' | 'us' | 'imperial'
  mass: 'metric' | 'us'
  sound: boolean
  /** 0 to 1. */
  volumeLevel: number
  /** It was tried at the stove how loud that is. */
  loudnessTried: boolean
  voice: 'off' | 'calls' | 'guide'
  theme: 'auto' | 'light' | 'dark'
  /** What the printer has in it. */
  paper: 'a4' | 'letter'
  dyer: string
  /** Where water boils in this kitchen: an altitude, a pressure or the boil itself, as typed; empty: not said. */
  boilsAt: string
  /** Is a calendar file of the coming alerts saved with each start? */
  calendarAtStart: boolean
  /** Keys learned for a pedal; null: those a page-turner sends as it is delivered. */
  pedalDone: LearnedKey | null
  pedalNext: LearnedKey | null
  /** Wet hands: on the Stove only what is pressed and held counts. */
  wet: boolean
  /** The buttons of a headset answer calls. */
  headset: boolean
  /** Whistles answer calls. */
  whistle: boolean
  strip: PhStrip
}

/** A trial of whether this device calls in time while it is locked. */
export type DeviceCheck = {
  minutes: number
  beganAtMs: number
  endedAtMs: number | null
  /** The longest time between two beats of the app, and how many times and how long in all it was over two seconds. */
  longestMs: number
  lateTimes: number
  lateMs: number
  /** The page was ended by the device or a hand before its time. */
  ended: boolean
}

/** A key as the keyboard places it and as it reads: a pedal is both the same, a keyboard of another layout is not. */
export type LearnedKey = { code: string; key: string }

/** The ear for whistles. */
export type KitchenWhistle = {
  /** Is the microphone open, is all well, and both in words. */
  ear: ReadonlySignal<{ open: boolean; ok: boolean; say: string }>
  /** The last whistle; `beganMs` by the device's own clock, `no` counts them. */
  heard: ReadonlySignal<{
    no: number
    kind: 'rise' | 'fall'
    beganMs: number
    semitones: number
    lengthMs: number
  } | null>
  /** Tells in words what a whistle did: by voice where there is one, else by a sound. */
  sayBack(words: string): void
  /** Opens the microphone for a trial, or shuts it; call inside a tap. */
  try(on: boolean): void
}

export type HeadsetDeed = 'done' | 'again'

/** What an answer came by. */
export type Via = Extract<By, { kind: 'person' }>['via']

export type Kitchen = KitchenWriting & {
  /** Stored pots on the rod and on the bench, in the fixed order of their start. */
  pots: ReadonlySignal<PotOnStove[]>
  /** Wall clock or rehearsal clock, ms; changes once a second. Read it in leaves only. */
  now: ReadonlySignal<number>
  lamps: ReadonlySignal<Lamp[]>
  missed: ReadonlySignal<Missed[]>
  dismissMissed(): void
  notSaved: ReadonlySignal<{ say: string } | null>
  retrySave(): void
  rescue(): void
  /** A jump of the clock that may have been the clock being set. */
  jump: ReadonlySignal<{ byMs: number } | null>
  declareClockSet(): void
  dismissJump(): void
  /** Is this tab the one that writes and alerts? */
  owner: ReadonlySignal<boolean>
  takeOver(): void
  /** A newer version waits; null: none, or a pot is watched. */
  update: ReadonlySignal<{ apply: () => void } | null>
  rehearsal: boolean

  send(potId: string, command: PotCommand, options?: SendOptions): Promise<Sent>
  /** Pictures and sound; absent where there are none. */
  media?: KitchenMedia
  /** The acid for one pot went into another: both records learn it. */
  sendAddedElsewhere(
    fromPotId: string,
    path: string | null,
    toPotId: string,
    amount: import('../core/protocol/model.ts').Amount
  ): Promise<Sent>
  start(start: {
    pot: PotIdentity
    protocol: ProtocolText
    programme: Programme
    checks: Check[]
    cautionsShown: string[]
    numbers?: KeptNumbers
  }): Promise<Sent>
  newId(): string
  /** Begins a rehearsal beside the real pots; absent in one. Loads what it needs only then. */
  rehearse?(wish: RehearsalWish): Promise<RehearsalRun>

  protocols(): Promise<StoredProtocol[]>
  /** Reads a file from anywhere as hostile text and keeps it as a draft; loads the reader only then. */
  bringIn(file: File): Promise<BroughtIn>
  /** What came to the page by itself and waits for a look. */
  arrived: ReadonlySignal<readonly BroughtIn[]>
  dismissArrived(one: BroughtIn): void
  /** Null until it is fetched. */
  sharing: ReadonlySignal<TextSharing | null>
  /** The text that a pot ran by, as a protocol to run again. */
  protocolAgain(
    title: string,
    text: string
  ): Promise<{ ok: true; stored: StoredProtocol } | { ok: false; problems: Problem[] }>

  /** A protocol of what was really done in a pot, kept among the protocols; loads its maker only then. */
  makeProtocol(potId: string): Promise<{ ok: true; stored: StoredProtocol } | { ok: false; say: string }>

  /** The checks "before the heat"; must be called inside the Start tap (audio needs the gesture). */
  beforeTheHeat(): Promise<Check[]>
  trySound(level: number): Promise<boolean>
  /** Null: never tried on this device. */
  deviceCheck: ReadonlySignal<DeviceCheck | null>
  /** Must be called inside a tap, for the sound. */
  beginDeviceCheck(minutes: number): void
  stopDeviceCheck(): void
  /** Says an example; call inside a tap. False: no voice said it. */
  trySpeech(): Promise<boolean>
  /** What the browser says about keeping records, in words, and how much room they take; null where it does not say. */
  storage?(): Promise<{ kept: boolean; say: string; usedBytes: number | null; roomBytes: number | null }>

  /** What stands on the shelf, as it is by now; loaded and read only then. Absent where there is none. */
  shelf?(): Promise<KitchenShelf>
  /** Reads photos of skeins and keeps what is found; loaded only then. Absent where there is nowhere to keep it. */
  swatches?(): Promise<KitchenSwatches>
  /** Loads what backups need only then. Null until it is fetched; absent in a rehearsal. */
  backup?: ReadonlySignal<(() => Promise<KitchenBackup>) | null>

  /** Loads what finds in the Dye book only then. */
  found?(): Promise<KitchenFound>
  book(fromMs: number, toMs: number, limit?: number): Promise<BookLine[]>
  entries(potId: string): Promise<{ entries: Entry<PotEvent>[]; damaged: { index: number; why: string }[] }>
  saveFile(name: string, mime: string, text: string): void
  /** What the dyer wrote for the skein cards; absent in a rehearsal. */
  skeinCards?: KitchenCards
  /** The coming alerts of all live pots as an iCalendar file, a snapshot: saved anew it replaces the one before. */
  saveCalendar(): Promise<Sent>
  /** A file that takes all of them out of the calendar again. */
  cancelCalendar(): Promise<Sent>

  /** Says the call that stands once more, with the voice where one is on, else by its sound. */
  sayAgain?(potId: string, key: string): void
  /** Null until it is fetched. */
  whistle: ReadonlySignal<KitchenWhistle | null>
  /** The buttons of a headset: what they would answer is told, and a press is heard. */
  headset?: {
    tell(call: { title: string; artist: string } | null): void
    hear(press: (deed: HeadsetDeed) => void): () => void
  }

  settings: ReadonlySignal<Settings>
  changeSettings(change: Partial<Settings>): Promise<Sent>
  /** "#/stove", "#/start/<protocol>", …: hash routes, so that any static host will do. */
  route: ReadonlySignal<string>
  go(route: string): void
}
