// A voice note from the first pad to the journal. It belongs to no screen: a call that comes meanwhile takes the screen, and
// the note goes on.
import { signal } from '@preact/signals'
import { type MediaBytes, VOICE_LENGTH_MOST_MS } from '../core/pot/media.ts'
import type { Recorder, Recording, Take } from '../shell/media/recorder.ts'
import type { Kitchen } from '../ui/kitchen.ts'
import type { Voice, VoiceState } from '../ui/media.ts'

export type VoicePorts = {
  send: Kitchen['send']
  newId: () => string
  recorder: () => Promise<Recorder>
  sha256Of: (bytes: ArrayBuffer) => Promise<string>
}

type Kept = { potId: string; take: Take; commandId: string }

export function voiceNotes({ send, newId, recorder, sha256Of }: VoicePorts): Voice {
  const state = signal<VoiceState>({ kind: 'idle' })
  let recording: Recording | null = null
  let kept: Kept | null = null

  const store = async (one: Kept): Promise<void> => {
    const { potId, take, commandId } = one
    const { mime, bytes, lengthMs } = take
    kept = one
    state.value = { kind: 'storing', potId }
    const sha256 = await sha256Of(bytes)
    const carried: MediaBytes = { sha256, mime, bytes }
    const media = { sha256, mime, bytes: bytes.byteLength, lengthMs }
    // One id for all tries: what was stored without an answer is not stored twice.
    const sent = await send(potId, { type: 'NoteVoice', media }, { media: [carried], commandId })
    if (sent.ok) kept = null
    state.value = sent.ok
      ? { kind: 'stored', potId, lengthMs }
      : { kind: 'failed', potId, say: sent.say, again: sent.refusal === null }
  }
  const run = async (potId: string): Promise<void> => {
    const started = await (await recorder()).start(VOICE_LENGTH_MOST_MS)
    if (!started.ok) {
      state.value = { kind: 'failed', potId, say: started.say, again: false }
      return
    }
    recording = started.recording
    state.value = { kind: 'recording', potId }
    const heard = await recording.done
    recording = null
    if (heard.ok) await store({ potId, take: heard.take, commandId: newId() })
    else state.value = { kind: 'failed', potId, say: heard.say, again: false }
  }
  const told = (potId: string, work: Promise<void>): void => {
    work.catch((error: unknown) => {
      const why = error instanceof Error ? error.message : String(error)
      state.value = { kind: 'failed', potId, say: `The voice note failed (${why}).`, again: kept !== null }
    })
  }
  return {
    state,
    leftMs: () => recording?.leftMs() ?? 0,
    start(potId) {
      const { kind } = state.peek()
      if (kind === 'asking' || kind === 'recording' || kind === 'storing') return
      kept = null
      state.value = { kind: 'asking', potId }
      told(potId, run(potId))
    },
    end: () => recording?.end(),
    again() {
      if (kept !== null && state.peek().kind === 'failed') told(kept.potId, store(kept))
    },
    dismiss() {
      const { kind } = state.peek()
      if (kind === 'stored' || kind === 'failed') state.value = { kind: 'idle' }
    }
  }
}
