// From the camera or a file to a picture that can be kept. What becomes of it is written on the stage, not in the sheet.
import type { Kitchen } from '../../../kitchen.ts'
import type { KitchenMedia } from '../../../media.ts'
import type { PhotoDraft, Stage } from '../stage.ts'

type From = Parameters<KitchenMedia['choosePicture']>[0]

/** Must be called inside a tap. A picture that can't be taken leaves the one before it as it was, if there was one. */
export async function takePicture(kitchen: Kitchen, stage: Stage, potId: string, from: From): Promise<void> {
  const { media } = kitchen
  const file = await media?.choosePicture(from)
  if (!media || !file) return
  const before = stage.photos.peek()[potId]
  setDraft(stage, potId, { kind: 'reading' })
  const read = await media.readPhoto(file).catch((error: unknown) => failed(error))
  if (read.ok) {
    const what = before?.kind === 'ready' ? before.what : 'bath'
    setDraft(stage, potId, { kind: 'ready', photo: read.photo, what, commandId: kitchen.newId() })
  } else if (before?.kind === 'ready') {
    setDraft(stage, potId, before)
    stage.said.value = { potId, say: read.say }
  } else setDraft(stage, potId, { kind: 'failed', say: read.say })
  // The sheet may have been closed meanwhile; a call stays over it.
  stage.open.value ??= { kind: 'photo', potId, during: null }
}

export function setDraft(stage: Stage, potId: string, draft: PhotoDraft | undefined): void {
  stage.photos.value = { ...stage.photos.peek(), [potId]: draft }
}

function failed(error: unknown): { ok: false; say: string } {
  const why = error instanceof Error ? error.message : String(error)
  return { ok: false, say: `The picture can’t be read (${why}). Take it again.` }
}
