// The microphone: open from the start of a voice note to its end, and not a moment longer.
export type Take = { mime: string; bytes: ArrayBuffer; lengthMs: number }
export type TakeRead = { ok: true; take: Take } | { ok: false; say: string }

export type Recording = {
  /** Ends it; `done` says what was heard. Harmless where it has ended. */
  end(): void
  leftMs(): number
  done: Promise<TakeRead>
}

export type Recorder = {
  start(lengthMostMs: number): Promise<{ ok: true; recording: Recording } | { ok: false; say: string }>
}

/** The recorder hands over pieces of this length; a timer that comes late leaves pieces past the limit, which are cut. */
const PIECE_MS = 1_000
/** Ends it so much early that with the recorder's own delay it stays within the limit. */
const EARLY_MS = 100
/** Half a minute of speech in 120 kB. */
const BITS_PER_SECOND = 32_000
const KINDS = ['audio/webm;codecs=opus', 'audio/mp4', 'audio/ogg;codecs=opus']

type AudioSession = { type: string }

export function microphone(
  devices: MediaDevices | undefined = navigator.mediaDevices,
  session = (navigator as Navigator & { audioSession?: AudioSession }).audioSession ?? null
): Recorder {
  return {
    async start(lengthMostMs) {
      if (typeof devices?.getUserMedia !== 'function' || typeof MediaRecorder === 'undefined') {
        return { ok: false, say: 'This browser gives no microphone to this page. Write a note instead.' }
      }
      const quiet = askForBoth(session)
      try {
        const stream = await devices.getUserMedia({ audio: true })
        const recording = record(stream, lengthMostMs)
        void recording.done.then(quiet)
        return { ok: true, recording }
      } catch (error) {
        quiet()
        return { ok: false, say: whyNot(error) }
      }
    }
  }
}

function whyNot(error: unknown): string {
  switch (error instanceof Error ? error.name : '') {
    case 'NotAllowedError':
    case 'SecurityError':
      return 'The microphone is not allowed here. Allow it for this page in the browser’s settings, or write a note.'
    case 'NotFoundError':
    case 'OverconstrainedError':
      return 'No microphone was found. Write a note instead.'
    case 'NotReadableError':
    case 'AbortError':
      return 'Another program holds the microphone. Close it and try again.'
    default:
      return 'The microphone can’t be opened. Write a note instead.'
  }
}

function record(stream: MediaStream, lengthMostMs: number): Recording {
  const closeMicrophone = (): void => {
    for (const track of stream.getTracks()) track.stop()
  }
  let recorder: MediaRecorder
  try {
    const mimeType = KINDS.find((kind) => MediaRecorder.isTypeSupported(kind))
    recorder = new MediaRecorder(stream, { mimeType, audioBitsPerSecond: BITS_PER_SECOND })
    recorder.start(PIECE_MS)
  } catch (error) {
    closeMicrophone()
    throw error
  }
  const pieces: Blob[] = []
  const startedMs = performance.now()
  const end = (): void => {
    if (recorder.state !== 'inactive') recorder.stop()
  }
  const timer = setTimeout(end, lengthMostMs - EARLY_MS)
  // A microphone that is pulled out ends the note; what was heard so far is kept.
  for (const track of stream.getTracks()) track.onended = end
  recorder.ondataavailable = ({ data }) => {
    if (data.size > 0 && pieces.length < lengthMostMs / PIECE_MS) pieces.push(data)
  }
  const done = new Promise<TakeRead>((resolve) => {
    recorder.onstop = () => {
      clearTimeout(timer)
      closeMicrophone()
      const lengthMs = Math.min(performance.now() - startedMs, lengthMostMs)
      resolve(takeOf(pieces, recorder.mimeType, lengthMs))
    }
  })
  return { end, done, leftMs: () => Math.max(0, lengthMostMs - (performance.now() - startedMs)) }
}

async function takeOf(pieces: Blob[], mime: string, lengthMs: number): Promise<TakeRead> {
  const bytes = await new Blob(pieces).arrayBuffer()
  if (bytes.byteLength === 0) return { ok: false, say: 'Nothing was heard, so nothing is kept. Try again.' }
  return { ok: true, take: { mime: mime || 'audio/webm', bytes, lengthMs: Math.round(lengthMs) } }
}

/** The calls go on sounding while the microphone is open. Where the system asks what the sound is for, "playback" would
 * keep the microphone shut. */
function askForBoth(session: AudioSession | null): () => void {
  if (session === null) return () => {}
  const before = session.type
  session.type = 'play-and-record'
  return () => {
    session.type = before
  }
}
