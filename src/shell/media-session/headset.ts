// The buttons of a headset and of a lock screen, through Media Session. They answer while silence plays, and only then:
// a pause is shown as one, and it never touches the calls, which sound by another way.
import { silentWav } from './silence.ts'

/** Five seconds is what browsers ask for; a little more, because they round. */
const SILENCE_SEC = 6

/** off: not wanted. ready: the buttons answer. paused: somebody, or the phone, paused it. blocked: the browser lets
 * nothing play before the next touch. none: this browser has no such buttons. */
export type HeadsetState = 'off' | 'ready' | 'paused' | 'blocked' | 'none'
export type HeadsetPress = 'done' | 'again'
export type Told = { title: string; artist: string }

export type Headset = {
  state(): HeadsetState
  want(on: boolean): void
  /** What a press would answer, for the lock screen; null: nothing. */
  tell(told: Told | null): void
  /** After a pause, or in the touch that a browser waits for. */
  resume(): void
  onPress(heard: (press: HeadsetPress) => void): () => void
  onState(changed: () => void): () => void
}

export type Sounding = Pick<HTMLAudioElement, 'play' | 'pause' | 'addEventListener'>
type Handled = 'nexttrack' | 'previoustrack' | 'play' | 'pause' | 'stop'
export type Buttons = {
  setActionHandler(action: Handled, handler: (() => void) | null): void
  playbackState: 'none' | 'paused' | 'playing'
  show(told: Told | null): void
}

export function headset(buttons: Buttons | null = buttonsHere(), makeAudio: () => Sounding = silence): Headset {
  let audio: Sounding | null = null
  let wanted = false
  let state: HeadsetState = 'off'
  let told: Told | null = null
  const presses = new Set<(press: HeadsetPress) => void>()
  const changes = new Set<() => void>()
  const press = (which: HeadsetPress) => () => {
    if (state === 'ready') for (const heard of presses) heard(which)
  }
  const become = (next: HeadsetState): void => {
    if (state === next) return
    state = next
    if (buttons !== null) setButtons(buttons, next, { press, resume, pause: () => audio?.pause() })
    show()
    for (const changed of changes) changed()
  }
  const show = (): void => {
    const standing = state === 'paused' ? { title: 'Paused: these buttons don’t answer', artist: 'Strandline' } : told
    buttons?.show(state === 'off' ? null : standing)
  }
  const opened = (): Sounding => {
    if (audio !== null) return audio
    const made = makeAudio()
    // Also where the phone itself pauses it: a call comes in, or music takes the buttons back.
    made.addEventListener('pause', () => wanted && become('paused'))
    made.addEventListener('playing', () => wanted && become('ready'))
    audio = made
    return made
  }
  const resume = (): void => {
    if (!wanted || buttons === null) return
    opened()
      .play()
      .then(
        () => wanted && become('ready'),
        () => wanted && become('blocked')
      )
  }
  return {
    state: () => state,
    want(on) {
      if (on === wanted) return
      wanted = on
      if (!on) {
        audio?.pause()
        become('off')
      } else if (buttons === null) become('none')
      else resume()
    },
    tell(next) {
      if (told?.title === next?.title && told?.artist === next?.artist) return
      told = next
      show()
    },
    resume,
    onPress(heard) {
      presses.add(heard)
      return () => presses.delete(heard)
    },
    onState(changed) {
      changes.add(changed)
      return () => changes.delete(changed)
    }
  }
}

type Deeds = { press: (which: HeadsetPress) => () => void; resume: () => void; pause: () => void }

/** While it is paused only "play" is offered: what does not answer is not shown. */
function setButtons(buttons: Buttons, state: HeadsetState, { press, resume, pause }: Deeds): void {
  const ready = state === 'ready'
  const on = state !== 'off'
  buttons.setActionHandler('nexttrack', ready ? press('done') : null)
  buttons.setActionHandler('previoustrack', ready ? press('again') : null)
  buttons.setActionHandler('play', on ? resume : null)
  buttons.setActionHandler('pause', on ? pause : null)
  buttons.setActionHandler('stop', on ? pause : null)
  buttons.playbackState = ready ? 'playing' : on ? 'paused' : 'none'
}

function silence(): HTMLAudioElement {
  const audio = new Audio(URL.createObjectURL(new Blob([silentWav(SILENCE_SEC)], { type: 'audio/wav' })))
  audio.loop = true
  return audio
}

function buttonsHere(): Buttons | null {
  const { mediaSession } = navigator as Partial<Pick<Navigator, 'mediaSession'>>
  if (mediaSession === undefined || typeof MediaMetadata === 'undefined') return null
  return {
    setActionHandler(action, handler) {
      try {
        mediaSession.setActionHandler(action, handler)
      } catch {
        // An action this browser does not know: the others stand.
      }
    },
    get playbackState() {
      return mediaSession.playbackState
    },
    set playbackState(state) {
      mediaSession.playbackState = state
    },
    show(told) {
      mediaSession.metadata = told === null ? null : new MediaMetadata(told)
    }
  }
}
