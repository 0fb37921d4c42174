// Pictures and sound for the screens. The parts that scale and record are loaded when they are first wanted.
import { PHOTO_PIXELS_MOST } from '../core/pot/media.ts'
import type { JournalPort } from '../session/ports.ts'
import { choosePicture } from '../shell/media/choose-picture.ts'
import { sha256Of } from '../shell/media/sha256.ts'
import type { Kitchen } from '../ui/kitchen.ts'
import type { KitchenMedia } from '../ui/media.ts'
import { voiceNotes } from './voice-notes.ts'

export function mediaOf(journal: JournalPort, send: Kitchen['send'], newId: () => string): KitchenMedia {
  return {
    choosePicture,
    async readPhoto(file) {
      const { browserTools, readPhoto } = await import('../shell/media/photo.ts')
      return readPhoto(file, PHOTO_PIXELS_MOST, browserTools)
    },
    voice: voiceNotes({
      send,
      newId,
      sha256Of,
      recorder: async () => (await import('../shell/media/recorder.ts')).microphone()
    }),
    async read(sha256) {
      const found = await journal.media(sha256)
      if (found === null) return { ok: false, say: 'It is not on this device.' }
      // Bytes that changed on the disk are not what was recorded.
      if ((await sha256Of(found.bytes)) !== sha256) return { ok: false, say: 'It is damaged and can’t be shown.' }
      return { ok: true, blob: new Blob([found.bytes], { type: found.mime }) }
    },
    sizes: () => journal.mediaSizes()
  }
}
