// The pictures and voice notes of a record, each at its step and time.
import { useState } from 'preact/hooks'
import { localClock } from '../../../core/record/local-time.ts'
import type { BatchRecord, MediaRecord } from '../../../core/record/record.ts'
import type { Kitchen } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import { MediaSheet } from './media-sheet.tsx'
import { Sound } from './sound.tsx'
import { When } from './tables.tsx'
import { seconds, useMedia } from './use-media.ts'
import './media.css'

type Props = { kitchen: Kitchen; potId: string; record: BatchRecord; changed: () => void }

export function MediaPart({ kitchen, potId, record, changed }: Props): preact.JSX.Element | null {
  const [open, setOpen] = useState<string | null>(null)
  if (record.media.length === 0) return null
  const large = record.media.find((media) => keyOf(media) === open)
  return (
    <section class="book-part" aria-labelledby="book-media">
      <h2 id="book-media">Pictures and voice notes</h2>
      <ul class="book-media">
        {record.media.map((media) => (
          <li key={keyOf(media)} class={`book-${media.kind}`}>
            <One kitchen={kitchen} record={record} media={media} open={() => setOpen(keyOf(media))} />
          </li>
        ))}
      </ul>
      {large ? (
        <MediaSheet
          kitchen={kitchen}
          potId={potId}
          media={large}
          name={nameOf(record, large)}
          close={(trimmed) => {
            setOpen(null)
            if (trimmed) changed()
          }}
        />
      ) : null}
    </section>
  )
}

type OneProps = { kitchen: Kitchen; record: BatchRecord; media: MediaRecord; open: () => void }

function One({ kitchen, record, media, open }: OneProps): preact.JSX.Element {
  const { address, problem } = useMedia(kitchen, media)
  const name = nameOf(record, media)
  return (
    <>
      {media.trimmed ? (
        <p class="book-gone">Let go: {media.trimmed.why}</p>
      ) : problem !== null ? (
        <p class="book-gone" role="alert">
          {problem}
        </p>
      ) : address === null ? (
        <p class="book-gone">Opening…</p>
      ) : media.kind === 'photo' ? (
        <button type="button" class="book-thumb" onClick={open}>
          <img src={address} alt={name} width={media.widthPx ?? undefined} height={media.heightPx ?? undefined} />
        </button>
      ) : (
        <Sound address={address} name={name} />
      )}
      <p class="book-media-said">
        <When said={media.said} />
        <span>
          <strong>{media.kind === 'photo' ? media.what : `Voice note, ${seconds(media)}`}</strong>
          {media.label === '' ? '' : `, ${media.label}`}
          {media.withdrawn ? <span class="soft"> Undone.</span> : null}
        </span>
      </p>
      {media.kind === 'voice' && !media.trimmed ? (
        <Pad label={`${name}: more`} onPress={open}>
          More
        </Pad>
      ) : null}
    </>
  )
}

/** Pot, step, time: what stands for the picture where it can't be seen. */
function nameOf({ identity }: BatchRecord, media: MediaRecord): string {
  const time = localClock(media.said.atMs, media.said.tzOffsetMin)
  const what = media.kind === 'photo' ? media.what : `voice note, ${seconds(media)}`
  return [identity.colourway, media.label, time, what].filter(Boolean).join(', ')
}

function keyOf({ said }: MediaRecord): string {
  return `${said.entry.writerId} ${said.entry.seq}`
}
