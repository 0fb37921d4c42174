// A photo into the journal: from the camera or a file, looked at, said what it shows, kept.
import { useState } from 'preact/hooks'
import type { Kitchen } from '../../../kitchen.ts'
import type { ReadyPhoto } from '../../../media.ts'
import { useBlobAddress } from '../../../parts/blob-address.ts'
import { Pad } from '../../../parts/pad.tsx'
import { AgoRow } from '../ago-row.tsx'
import { TextAnswer } from '../ask/text-answer.tsx'
import { type LivePot, nameOf } from '../live.ts'
import type { PhotoDraft, Stage } from '../stage.ts'
import { Reason } from './reason.tsx'
import { setDraft, takePicture } from './take-picture.ts'
import './media.css'

type Props = { kitchen: Kitchen; stage: Stage; pot: LivePot }

const shows = ['bath', 'skein', 'rinse']

export default function Photo(props: Props): preact.JSX.Element {
  const { stage, pot } = props
  const draft = stage.photos.value[pot.potId]
  if (draft?.kind === 'ready') return <Ready {...props} draft={draft} />
  return (
    <>
      {draft?.kind === 'failed' ? (
        <p class="sheet-said" role="alert">
          {draft.say}
        </p>
      ) : null}
      {draft?.kind === 'reading' ? <p role="status">Making the picture ready…</p> : <Sources {...props} />}
      <p class="soft">
        Kept at 2 megapixels at most, with the step and the time. What the camera wrote beside it, such as the place, is
        left out.
      </p>
      <WithoutPicture {...props} />
    </>
  )
}

function Sources({ kitchen, stage, pot }: Props): preact.JSX.Element {
  return (
    <div class="photo-from">
      <Pad kind="main" look="solid" onPress={() => void takePicture(kitchen, stage, pot.potId, 'camera')}>
        Camera
      </Pad>
      <Pad kind="main" onPress={() => void takePicture(kitchen, stage, pot.potId, 'file')}>
        From a file
      </Pad>
    </div>
  )
}

function Ready({
  kitchen,
  stage,
  pot,
  draft
}: Props & { draft: Extract<PhotoDraft, { kind: 'ready' }> }): preact.JSX.Element {
  const { potId } = pot
  const { photo, commandId, what } = draft
  const keep = async (): Promise<void> => {
    const { sha256, mime, bytes, widthPx, heightPx } = photo
    const media = { sha256, mime, bytes: bytes.byteLength, widthPx, heightPx }
    const carried = { commandId, media: [{ sha256, mime, bytes }] }
    const sent = await stage.send(potId, { type: 'NotePhoto', what: what.trim(), media }, 'tap', carried)
    if (!sent.ok) return
    setDraft(stage, potId, undefined)
    stage.close()
  }
  return (
    <div class="photo-ready">
      <Preview photo={photo} name={nameOf(pot)} />
      <div class="photo-say">
        <Reason
          legend="What it shows"
          reasons={shows}
          value={what}
          onReason={(said) => setDraft(stage, potId, { ...draft, what: said })}
        />
        <Pad
          kind="main"
          look="solid"
          layoutKey={photo.sha256}
          disabled={stage.busy.value || what.trim() === ''}
          onPress={() => void keep()}
        >
          {nameOf(pot)}: keep the picture
        </Pad>
        <div class="photo-again">
          <Pad kind="lesser" onPress={() => void takePicture(kitchen, stage, potId, 'camera')}>
            Camera again
          </Pad>
          <Pad kind="lesser" onPress={() => setDraft(stage, potId, undefined)}>
            Don’t keep it
          </Pad>
        </div>
        <AgoRow stage={stage} look="plain" />
      </div>
    </div>
  )
}

function Preview({ photo, name }: { photo: ReadyPhoto; name: string }): preact.JSX.Element {
  const address = useBlobAddress(photo.sha256, () => new Blob([photo.bytes], { type: photo.mime }))
  const { widthPx, heightPx, bytes } = photo
  return (
    <figure class="photo-preview">
      {address ? <img src={address} width={widthPx} height={heightPx} alt={`${name}, as it will be kept`} /> : null}
      <figcaption class="soft">
        {widthPx} × {heightPx}, {Math.ceil(bytes.byteLength / 1000)} kB
      </figcaption>
    </figure>
  )
}

/** Taken with another camera: that there is one is still worth a line. */
function WithoutPicture({ stage, pot }: Props): preact.JSX.Element {
  const [open, setOpen] = useState(false)
  if (!open) {
    return (
      <Pad kind="lesser" onPress={() => setOpen(true)}>
        Taken elsewhere: note it only
      </Pad>
    )
  }
  const note = (what: string): void => {
    void stage.send(pot.potId, { type: 'NotePhoto', what, media: null }).then((sent) => {
      if (sent.ok) stage.close()
    })
  }
  return <TextAnswer ask="What the photo shows" save="Photo noted" onText={note} />
}
