// Photos, their marks, and the verdict on them.
import { useMemo } from 'preact/hooks'
import { photoWhite } from '../../../core/colour/index.ts'
import type { SwatchEvent } from '../../../core/record/swatch.ts'
import { Strip } from '../../parts/strip.tsx'
import { faultSay } from '../../parts/swatch-words.ts'
import type { Act } from './act.ts'
import { Answers } from './answers.tsx'
import { Guide } from './guide.tsx'
import { judged, laidOut, thingsRead } from './judged.ts'
import { KeepPad } from './keep-pad.tsx'
import { keptOf } from './kept-photo.ts'
import { Marking } from './marking.tsx'
import { withSeries } from './series.ts'
import { SeriesDyed } from './series-dyed.tsx'
import { SeriesField } from './series-field.tsx'
import { Faults, Shots, TakePads, useReadings } from './shots.tsx'
import { Verdict } from './verdict.tsx'

export function ByPhoto({ kitchen, swatches, draft, kept }: Act): preact.JSX.Element {
  const { shots, shown, shape } = draft.value
  const shot = shots[shown]
  useReadings(swatches, draft)
  return (
    <>
      <SeriesField kitchen={kitchen} draft={draft} />
      <Guide open={shots.length === 0} />
      <TakePads kitchen={kitchen} swatches={swatches} album={draft} />
      {shot ? (
        <>
          <Shots album={draft} />
          <Marking key={shot.id} album={draft} shot={shot} />
          <Faults shots={shots} shape={shape} say={(fault) => faultSay(fault)} />
          <Answers kitchen={kitchen} draft={draft} />
          <Found kitchen={kitchen} swatches={swatches} draft={draft} kept={kept} />
        </>
      ) : null}
    </>
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
