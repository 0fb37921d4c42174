// Verdicts as they were kept, the latest first: in the Dye book's record, and under Swatches.
import { useEffect, useState } from 'preact/hooks'
import type { PhotoMedia } from '../../core/pot/media.ts'
import { type SeriesLink, seriesSay } from '../../core/record/series.ts'
import { foundSay } from '../../core/record/skein-verdict.ts'
import type { JudgedPhoto, Judgement } from '../../core/record/swatch.ts'
import type { Kitchen } from '../kitchen.ts'
import { useBlobAddress } from './blob-address.ts'
import { foundBy, whenBy } from './swatch-words.ts'
import './swatch-judgements.css'

type Props = { kitchen: Kitchen; judgements: readonly Judgement[] }

export function Judgements({ kitchen, judgements }: Props): preact.JSX.Element {
  return (
    <ol class="judgements">
      {judgements.map((one) => (
        <li key={one.key}>
          <p>
            <strong>{foundSay(one)}</strong>
          </p>
          {one.found.type === 'SwatchJudged' ? (
            <p>{`${one.found.verdict.why.say} ${one.found.verdict.why.settle}`}</p>
          ) : null}
          <p>{foundBy(one)}</p>
          {one.found.series ? <SeriesLine series={one.found.series} /> : null}
          <p class="soft">{whenBy(one)}</p>
          <KeptPhotos kitchen={kitchen} photos={one.photos} />
        </li>
      ))}
    </ol>
  )
}

/** The pictures that something was found by. */
export function KeptPhotos({ kitchen, photos }: { kitchen: Kitchen; photos: readonly JudgedPhoto[] }) {
  if (photos.length === 0) return null
  return (
    <div class="judgements-photos">
      {photos.map((media, nth) =>
        media.letGo === undefined ? (
          <Photo key={media.sha256} kitchen={kitchen} media={media} name={`Photo ${nth + 1} it was judged by`} />
        ) : (
          <p key={media.sha256} class="soft">{`Photo ${nth + 1} was let go: ${media.letGo}`}</p>
        )
      )}
    </div>
  )
}

function SeriesLine({ series }: { series: SeriesLink }): preact.JSX.Element {
  return (
    <p>
      {'By the series '}
      <a href={`#/dye-book/${encodeURIComponent(series.batchId)}`}>{series.name}</a>
      {`, ${seriesSay(series)}.`}
    </p>
  )
}

type PhotoProps = { kitchen: Kitchen; media: PhotoMedia; name: string }

function Photo({ kitchen, media, name }: PhotoProps): preact.JSX.Element {
  const [blob, setBlob] = useState<Blob | null>(null)
  const [problem, setProblem] = useState<string | null>(null)
  useEffect(() => {
    let here = true
    kitchen.media?.read(media.sha256).then(
      (found) => here && (found.ok ? setBlob(found.blob) : setProblem(found.say)),
      () => here && setProblem('The photo can’t be read.')
    )
    return () => {
      here = false
    }
  }, [kitchen, media.sha256])
  const address = useBlobAddress(blob ? media.sha256 : '', () => blob)
  if (problem !== null) return <p role="alert">{problem}</p>
  return address === null ? (
    <p>Opening…</p>
  ) : (
    <img src={address} alt={name} width={media.widthPx} height={media.heightPx} />
  )
}
