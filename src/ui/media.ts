// What the screens are given for pictures and sound.
import type { ReadonlySignal } from '@preact/signals'
import type { MediaBytes } from '../core/pot/media.ts'

export type ReadyPhoto = MediaBytes & { widthPx: number; heightPx: number }
export type PhotoRead = { ok: true; photo: ReadyPhoto } | { ok: false; say: string }

export type VoiceState =
  | { kind: 'idle' }
  /** The browser asks whether the microphone may be opened. */
  | { kind: 'asking'; potId: string }
  | { kind: 'recording'; potId: string }
  | { kind: 'storing'; potId: string }
  | { kind: 'stored'; potId: string; lengthMs: number }
  /** `again`: the sound is still at hand and can be sent once more. */
  | { kind: 'failed'; potId: string; say: string; again: boolean }

/** One voice note at a time. It goes on whatever is on the screen, and is stored when it ends. */
export type Voice = {
  state: ReadonlySignal<VoiceState>
  /** Until it ends by itself. */
  leftMs(): number
  start(potId: string): void
  end(): void
  again(): void
  dismiss(): void
}

export type KitchenMedia = {
  /** Opens the device's camera, or its files; inside a tap. Null: nothing was chosen. */
  choosePicture(from: 'camera' | 'file'): Promise<File | null>
  /** Makes it upright and small, without what the camera wrote beside it. */
  readPhoto(file: File): Promise<PhotoRead>
  voice: Voice
  read(sha256: string): Promise<{ ok: true; blob: Blob } | { ok: false; say: string }>
  /** Bytes of pictures and of sound in the journal. */
  sizes(): Promise<{ photos: number; photoBytes: number; sounds: number; soundBytes: number }>
}
