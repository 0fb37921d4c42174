// Photos on paper: small, in rows, each with its step and time under it. Their frames are of one size, so that what is
// measured before they are opened holds afterwards.
import { useEffect, useState } from 'preact/hooks'
import { cutWords, photosIn, type Room } from '../../../../core/record/condensed.ts'
import { localClock } from '../../../../core/record/local-time.ts'
import type { BatchRecord, MediaRecord } from '../../../../core/record/record.ts'
import type { Kitchen } from '../../../kitchen.ts'
import { useMedia } from '../use-media.ts'
import './photos.css'

type Props = {
  kitchen: Kitchen
  record: BatchRecord
  room: Room
  /** Is one still being opened? What is printed then would lack it. */
  opening: (still: boolean) => void
}

export function Photos({ kitchen, record, room, opening }: Props): preact.JSX.Element | null {
  // One that was undone stands among what was undone.
  const photos = record.media.filter(({ kind, withdrawn }) => kind === 'photo' && !withdrawn)
  const { shown, left } = photosIn(photos, room)
  const [settled, setSettled] = useState<ReadonlySet<string>>(new Set())
  const still = shown.some((media) => media.trimmed === null && !settled.has(keyOf(media)))
  useEffect(() => opening(still), [still])
  useEffect(() => () => opening(false), [])
  if (photos.length === 0) return null
  return (
    <section>
      <h3>Photos</h3>
      {shown.length === 0 ? null : (
        <ul class="print-photos">
          {shown.map((media) => (
            <li key={keyOf(media)}>
              <Photo
                kitchen={kitchen}
                media={media}
                settled={() => setSettled((before) => new Set(before).add(keyOf(media)))}
              />
              <p>{cutWords(captionOf(media), { letters: Math.min(room.letters, CAPTION_LETTERS) })}</p>
            </li>
          ))}
        </ul>
      )}
      {left === 0 ? null : <p class="print-left">{leftSay(left, shown.length)}</p>}
    </section>
  )
}

function leftSay(left: number, shown: number): string {
  const some = `${left} ${shown > 0 ? 'more ' : ''}${left === 1 ? 'photo' : 'photos'}`
  return `${shown > 0 ? `and ${some}` : some}: see the record on the device`
}

const CAPTION_LETTERS = 120

type PhotoProps = { kitchen: Kitchen; media: MediaRecord; settled: () => void }

function Photo({ kitchen, media, settled }: PhotoProps): preact.JSX.Element {
  const { address, problem } = useMedia(kitchen, media)
  const [broken, setBroken] = useState(false)
  const none = !kitchen.media || broken ? 'It can’t be shown here.' : problem
  useEffect(() => {
    if (none !== null) settled()
  }, [none])
  if (media.trimmed) return <div class="print-photo">{`Let go: ${media.trimmed.why}`}</div>
  if (none !== null) return <div class="print-photo">{none}</div>
  return (
    <div class="print-photo">
      {address === null ? null : (
        <img src={address} alt={captionOf(media)} decoding="sync" onLoad={settled} onError={() => setBroken(true)} />
      )}
    </div>
  )
}

/** "Heat off, 10:12: the bath" */
function captionOf({ label, said, what }: MediaRecord): string {
  const where = [label, localClock(said.atMs, said.tzOffsetMin)].filter(Boolean).join(', ')
  return `${where}: ${what}`
}

function keyOf({ said }: MediaRecord): string {
  return `${said.entry.writerId} ${said.entry.seq}`
}
