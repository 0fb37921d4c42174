// One time of being on, from the tap that opens the microphone to the moment it is closed.
import type { Hearing, OpenHearing } from './hearing.ts'
import { type Microphone, type OpenMicrophone, whyNot } from './microphone.ts'
import type { FromWorklet } from './whistle-worklet.ts'

/** A rise: the shown act is done. A fall: say it again. */
export type WhistleHeard = {
  kind: 'rise' | 'fall'
  /** When the glide was over, by the wall clock. */
  atMs: number
  semitones: number
  lengthMs: number
}

export type Ways = { nowMs(): number; openMicrophone: OpenMicrophone; openHearing: OpenHearing; whistleDb?: number }

export type ListeningEvents = {
  onHeard(heard: WhistleHeard): void
  onState(state: 'listening' | 'too-loud' | 'broken', why?: string): void
  /** It has closed itself: nothing more comes. */
  onOver(state: 'refused' | 'broken', why: string): void
}

export type Listening = {
  /** True once it listens; false when it could not, or was closed meanwhile. */
  started: Promise<boolean>
  deafFor(ms: number): void
  levelDb(): number | null
  disobeyed(): string
  close(): void
}

/** The worklet tells of itself four times a second. Longer than a page in the background is held up. */
const SILENT_MS = 4_000
const LOOK_MS = 1_000
const MUTED = 'The microphone is muted.'

type Held = {
  closed: boolean
  hearing: Hearing | null
  microphone: Microphone | null
  levelDb: number | null
  lastMs: number
  watch?: ReturnType<typeof setInterval>
}

export function beginListening(ways: Ways, events: ListeningEvents): Listening {
  const held: Held = { closed: false, hearing: null, microphone: null, levelDb: null, lastMs: ways.nowMs() }
  const over = (state: 'refused' | 'broken', why: string): void => {
    if (held.closed) return
    close(held)
    events.onOver(state, why)
  }
  const trouble = (why: string): void => {
    if (!held.closed) events.onState('broken', why)
  }
  return {
    started: begin(held, ways, events, over, trouble).catch((error: unknown) => {
      const { refused, words } = whyNot(error)
      over(refused ? 'refused' : 'broken', words)
      return false
    }),
    deafFor: (ms) => held.hearing?.deafFor(ms),
    levelDb: () => held.levelDb,
    disobeyed: () => held.microphone?.disobeyed ?? '',
    close: () => close(held)
  }
}

async function begin(
  held: Held,
  ways: Ways,
  events: ListeningEvents,
  over: (state: 'broken', why: string) => void,
  trouble: (why: string) => void
): Promise<boolean> {
  // Before anything is waited for: what a tap allows is over after it.
  held.hearing = ways.openHearing(ways.whistleDb === undefined ? {} : { whistleDb: ways.whistleDb }, {
    onMessage: (message) => told(held, ways, events, message),
    onRunning: (running) => {
      if (!running) trouble('The browser has stopped its sound: no whistle is heard.')
    },
    onFailure: () => over('broken', 'The recogniser has failed. Switch the whistle off and on again.')
  })
  held.microphone = await ways.openMicrophone()
  // Switched off while the browser was asking: what it gave then is given back.
  if (held.closed) return giveBack(held)
  for (const track of held.microphone.stream.getAudioTracks()) {
    track.onended = () => over('broken', 'The microphone is gone: unplugged, or no longer allowed.')
    // Taken back by the recogniser's next message once sound comes again.
    track.onmute = () => trouble(MUTED)
  }
  await held.hearing.listenTo(held.microphone.stream)
  if (held.closed) return giveBack(held)
  held.lastMs = ways.nowMs()
  held.watch = setInterval(() => {
    if (ways.nowMs() - held.lastMs > SILENT_MS) trouble('No sound comes from the microphone.')
  }, LOOK_MS)
  if (isMuted(held)) trouble(MUTED)
  else events.onState('listening')
  return !isMuted(held)
}

function told(held: Held, { nowMs }: Ways, events: ListeningEvents, message: FromWorklet): void {
  if (held.closed) return
  held.lastMs = nowMs()
  if (message.type === 'heard') {
    const { kind, semitones, lengthMs } = message.heard
    events.onHeard({ kind, semitones, lengthMs, atMs: nowMs() - message.agoMs })
    return
  }
  held.levelDb = message.levelDb
  if (!isMuted(held)) events.onState(message.tooLoud ? 'too-loud' : 'listening')
}

function isMuted({ microphone }: Held): boolean {
  return microphone?.stream.getAudioTracks().some(({ muted }) => muted) ?? false
}

function giveBack(held: Held): false {
  close(held)
  return false
}

/** The browser shows the microphone as open until every track of it is stopped. */
function close(held: Held): void {
  held.closed = true
  clearInterval(held.watch)
  for (const track of held.microphone?.stream.getTracks() ?? []) {
    track.onended = null
    track.onmute = null
    track.stop()
  }
  held.microphone?.closed?.()
  held.microphone = null
  held.hearing?.close()
  held.hearing = null
  held.levelDb = null
}
