// Photos, their marks, and the verdict on them.
import type { Signal } from '@preact/signals'
import { useEffect, useMemo, useState } from 'preact/hooks'
import { isRefused } from '../../../core/chemistry/answer.ts'
import { photoWhite } from '../../../core/colour/index.ts'
import type { SwatchEvent } from '../../../core/record/swatch.ts'
import { Pad } from '../../parts/pad.tsx'
import { Strip } from '../../parts/strip.tsx'
import { faultSay } from '../../parts/swatch-words.ts'
import type { KitchenSwatches } from '../../swatches.ts'
import type { Act } from './act.ts'
import { Answers } from './answers.tsx'
import { changeShot, type Draft, type Shot } from './draft.ts'
import { Guide } from './guide.tsx'
import { judged, laidOut, thingsRead } from './judged.ts'
import { KeepPad } from './keep-pad.tsx'
import { Marking } from './marking.tsx'
import { pixelMarks, stillToMark } from './marks.ts'
import { withSeries } from './series.ts'
import { SeriesDyed } from './series-dyed.tsx'
import { SeriesField } from './series-field.tsx'
import { Verdict } from './verdict.tsx'

export function ByPhoto({ kitchen, swatches, draft, kept }: Act): preact.JSX.Element {
  const { shots, shown, shape } = draft.value
  const shot = shots[shown]
  useReadings(swatches, draft)
  return (
    <>
      <SeriesField kitchen={kitchen} draft={draft} />
      <Guide open={shots.length === 0} />
      <TakePads kitchen={kitchen} swatches={swatches} draft={draft} />
      {shot ? (
        <>
          <Shots draft={draft} />
          <Marking key={shot.id} draft={draft} shot={shot} />
          <Faults shots={shots} shape={shape} />
          <Answers kitchen={kitchen} draft={draft} />
          <Found kitchen={kitchen} swatches={swatches} draft={draft} kept={kept} />
        </>
      ) : null}
    </>
  )
}

/** Reads each photo whose marks were moved; an answer to older marks is dropped. */
function useReadings(swatches: KitchenSwatches, draft: Signal<Draft>): void {
  const { shots, shape } = draft.value
  const wanted = shots.find(
    (shot) => shot.read === null && shot.problem === null && stillToMark(shape, shot.places).length === 0
  )
  useEffect(() => {
    const marks = wanted && pixelMarks(shape, wanted.places, wanted.photo)
    if (!wanted || !marks) return
    let here = true
    swatches.photos.read(wanted.id, marks).then((answer) => {
      if (!here) return
      if (!answer.ok) changeShot(draft, wanted.id, { problem: answer.say })
      else if (!isRefused(answer.read)) changeShot(draft, wanted.id, { read: answer.read })
      else {
        const [problem] = answer.read.problems
        changeShot(draft, wanted.id, { problem: `${problem?.what ?? ''} ${problem?.instead ?? ''}` })
      }
    })
    return () => {
      here = false
    }
  }, [swatches, draft, wanted, shape])
}

function TakePads({ kitchen, swatches, draft }: Omit<Act, 'kept'>): preact.JSX.Element {
  const [problem, setProblem] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
  const take = async (from: 'camera' | 'file'): Promise<void> => {
    const file = await kitchen.media?.choosePicture(from)
    if (!file) return
    setBusy(true)
    const id = kitchen.newId()
    const opened = await swatches.photos.open(id, file)
    setBusy(false)
    setProblem(opened.ok ? null : opened.say)
    if (!opened.ok) return
    const { shots } = draft.value
    // The same things lie there: their marks carry over, to be nudged.
    const places = shots.at(-1)?.places ?? {}
    const shot: Shot = { id, name: file.name, photo: opened.photo, places, read: null, problem: null }
    draft.value = { ...draft.value, shots: [...shots, shot], shown: shots.length }
  }
  const more = draft.value.shots.length > 0 ? 'another photo' : 'the photo'
  return (
    <div class="swatches-take">
      <Pad
        kind="lesser"
        look={draft.value.shots.length === 0 ? 'solid' : 'plain'}
        disabled={busy}
        onPress={() => void take('camera')}
      >
        {`Take ${more}`}
      </Pad>
      <Pad kind="lesser" disabled={busy} onPress={() => void take('file')}>
        {`Choose ${more}`}
      </Pad>
      <p role="status">{busy ? 'Reading the photo…' : ''}</p>
      {problem === null ? null : (
        <Strip tone="warn" urgent>
          {problem}
        </Strip>
      )}
    </div>
  )
}

function Shots({ draft }: { draft: Signal<Draft> }): preact.JSX.Element {
  const { shots, shown } = draft.value
  const letGo = (): void => {
    draft.value = { ...draft.value, shots: shots.filter((_, nth) => nth !== shown), shown: Math.max(0, shown - 1) }
  }
  return (
    <div class="swatches-row">
      {shots.map(({ id, read, problem }, nth) => (
        <Pad key={id} selected={nth === shown} onPress={() => (draft.value = { ...draft.value, shown: nth })}>
          {`Photo ${nth + 1}${problem !== null || (read && read.faults.length > 0) ? ', has a fault' : ''}`}
        </Pad>
      ))}
      <Pad onPress={letGo}>{`Leave photo ${shown + 1} out`}</Pad>
      {shots.length < 3 ? (
        <p class="soft">Three photos or more of the same things, each laid anew, show how much readings stray.</p>
      ) : null}
    </div>
  )
}

function Faults({ shots, shape }: Pick<Draft, 'shots' | 'shape'>): preact.JSX.Element {
  const said = shots.flatMap(({ read, problem, places }, nth) => {
    const still = stillToMark(shape, places).length
    const own = problem ?? (still > 0 ? `${still} ${still === 1 ? 'place is' : 'places are'} still to mark.` : null)
    return [...(own === null ? [] : [own]), ...(read?.faults.map(faultSay) ?? [])].map(
      (say) => `Photo ${nth + 1}. ${say}`
    )
  })
  const read = shots.every((shot) => shot.read !== null)
  return (
    <section class="swatches-part" aria-labelledby="swatches-faults">
      <h2 id="swatches-faults">What is wrong with it</h2>
      {said.length > 0 ? (
        <ul class="swatches-faults" role="status">
          {said.map((say) => (
            <li key={say}>{say}</li>
          ))}
        </ul>
      ) : (
        <p role="status">{read ? 'Nothing that was looked for: light, card, brightness, size.' : 'Reading…'}</p>
      )}
    </section>
  )
}

function Found({ kitchen, swatches, draft, kept }: Act): preact.JSX.Element | null {
  const { shots, shape, dry, fibres, batchId, series: dyed } = draft.value
  const reads = shots.map(({ read }) => read)
  const laid = useMemo(() => laidOut(reads), reads)
  const found = useMemo(() => {
    if (laid === null || 'problem' in laid || dry === null || fibres === null) return null
    return judged(laid.laid, { dry, fibres })
  }, [laid, dry, fibres])
  if (laid === null) return null
  if ('problem' in laid) return <Strip tone="warn">{laid.problem}</Strip>
  if (found === null || dry === null || fibres === null) return <p>Answer both questions, and the verdict is here.</p>
  const events = (): SwatchEvent[] => {
    const { undyed, series, positions } = laid.laid
    const readings = thingsRead(undyed ? [undyed] : [], series, positions)
    const photos = shots.map(({ photo }) => photo.media.sha256)
    const { verdict } = found
    const by = { by: 'photo', white: photoWhite, photos } as const
    return [
      ...shots.flatMap((shot) => keptOf(shot, shape)),
      { type: 'SwatchJudged', batchId, ...by, ...withSeries(dyed), dry, fibres, readings, verdict }
    ]
  }
  return (
    <>
      <Verdict found={found} />
      <SeriesDyed kitchen={kitchen} draft={draft} read={found.series} />
      <KeepPad
        kitchen={kitchen}
        swatches={swatches}
        batchId={batchId}
        of={found}
        series={dyed}
        events={events}
        media={() => shots.map(({ photo }) => photo.bytes)}
        kept={kept}
      />
    </>
  )
}

function keptOf({ photo, places, read }: Shot, shape: Draft['shape']): SwatchEvent[] {
  const marks = pixelMarks(shape, places, photo)
  if (marks === null || read === null) return []
  const { media, widthPx, heightPx } = photo
  const readings = thingsRead(read.undyed, read.series, read.skein)
  return [
    {
      type: 'SwatchPhotoKept',
      media,
      readWidthPx: widthPx,
      readHeightPx: heightPx,
      marks,
      readings,
      faults: read.faults
    }
  ]
}
