// The microphone as the recogniser wants it: with nothing done to the sound. A browser made for calls takes a whistle for
// noise and takes it away.
const improvements = {
  echoCancellation: 'echo cancelling',
  noiseSuppression: 'noise suppression',
  autoGainControl: 'gain control'
} as const

type Improvement = keyof typeof improvements

export type Microphone = {
  stream: MediaStream
  /** In words: what the browser does to the sound all the same, or does not tell. Empty: nothing. */
  disobeyed: string
  /** Once its tracks are stopped. */
  closed?(): void
}

export type OpenMicrophone = () => Promise<Microphone>

export async function openMicrophone(): Promise<Microphone> {
  const devices = navigator.mediaDevices as MediaDevices | undefined
  // Pages that did not come over a safe connection have no such thing.
  if (devices === undefined) throw new DOMException('no microphone for this page', 'NotSupportedError')
  const restore = askToRecord()
  try {
    const stream = await devices.getUserMedia({
      audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false, channelCount: 1 }
    })
    const [track] = stream.getAudioTracks()
    return { stream, disobeyed: track === undefined ? '' : whatIsOn(track.getSettings()), closed: restore }
  } catch (error) {
    restore()
    throw error
  }
}

/**
 * Where there is an audio session (Safari), the app has asked for mere playback, which leaves a microphone mute. After the
 * draft of the Audio Session API, from memory; no such phone was at hand.
 */
function askToRecord(): () => void {
  const session = (navigator as Navigator & { audioSession?: { type: string } }).audioSession
  if (session === undefined) return () => {}
  const before = session.type
  session.type = 'play-and-record'
  return () => {
    session.type = before
  }
}

export function whatIsOn(settings: MediaTrackSettings): string {
  const names = Object.keys(improvements) as Improvement[]
  const on = names.filter((name) => settings[name] !== false && settings[name] !== undefined)
  const untold = names.filter((name) => settings[name] === undefined)
  const list = (which: Improvement[]): string => which.map((name) => improvements[name]).join(', ')
  return [
    on.length > 0 ? `The browser does not switch off: ${list(on)}. It may take a whistle for noise.` : '',
    untold.length > 0 ? `The browser does not tell whether it is off: ${list(untold)}.` : ''
  ]
    .filter((line) => line !== '')
    .join(' ')
}

/** Why there is no microphone, in words, and whether a person said no. */
export function whyNot(error: unknown): { refused: boolean; words: string } {
  const name = error instanceof Error || error instanceof DOMException ? error.name : ''
  switch (name) {
    case 'NotAllowedError':
    case 'SecurityError':
      return {
        refused: true,
        words: 'The microphone is not allowed. Allow it for this page in the browser, then switch the whistle on again.'
      }
    case 'NotFoundError':
      return { refused: false, words: 'No microphone was found.' }
    case 'NotReadableError':
    case 'AbortError':
      return { refused: false, words: 'The microphone does not open. Another program may have it.' }
    case 'NotSupportedError':
      return { refused: false, words: 'This browser gives this page no microphone. It does so over https only.' }
    default:
      return {
        refused: false,
        words: `Whistles can't be heard here: ${error instanceof Error ? error.message : error}`
      }
  }
}
