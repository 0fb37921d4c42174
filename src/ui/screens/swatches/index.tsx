// Swatches: a skein beside its control, read from photos, from an instrument or by eye, to a verdict that is kept.
import { useEffect, useState } from 'preact/hooks'
import type { Kitchen } from '../../kitchen.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { Judgements } from '../../parts/swatch-judgements.tsx'
import type { KeptSwatches, KitchenSwatches } from '../../swatches.ts'
import { BatchField } from './batch-field.tsx'
import { ByEye } from './by-eye.tsx'
import { ByInstrument } from './by-instrument.tsx'
import { ByPhoto } from './by-photo.tsx'
import { draftOf, type Way } from './draft.ts'
import { chooseSeries } from './series.ts'
import './style.css'

const ways: { value: Way; label: string }[] = [
  { value: 'photo', label: 'A photo' },
  { value: 'instrument', label: 'An instrument' },
  { value: 'eye', label: 'My eye' }
]

export default function Swatches({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  const [swatches, setSwatches] = useState<KitchenSwatches | null>(null)
  const [failed, setFailed] = useState(!kitchen.swatches)
  const draft = draftOf(kitchen)
  const [, of, asked] = /^#\/swatches\/(batch|series)\/([^/]+)/.exec(kitchen.route.value) ?? []
  useEffect(() => {
    if (asked === undefined) return
    const id = decodeURIComponent(asked)
    if (of === 'batch') draft.value = { ...draft.value, batchId: id }
    else void chooseSeries(kitchen, draft, id)
  }, [of, asked, draft])
  useEffect(() => {
    kitchen.swatches?.().then(setSwatches, () => setFailed(true))
  }, [kitchen])
  if (swatches === null) {
    return (
      <Page title="Swatches">
        <p>{failed ? 'Swatches can’t be opened here.' : 'Opening…'}</p>
      </Page>
    )
  }
  return <Opened kitchen={kitchen} swatches={swatches} />
}

function Opened({ kitchen, swatches }: { kitchen: Kitchen; swatches: KitchenSwatches }): preact.JSX.Element {
  const draft = draftOf(kitchen)
  const { way, batchId } = draft.value
  const [kept, setKept] = useState<KeptSwatches | null>(null)
  const again = (): void => void swatches.kept(batchId).then(setKept)
  useEffect(again, [swatches, batchId])
  const act = { kitchen, swatches, draft, kept: again }
  return (
    <div class="swatches">
      <Page title="Swatches">
        <p>
          Did a mixed dye split along the skein, or did it only get lighter? A skein is held against its own dilution
          series, at equal depth.
        </p>
        <BatchField kitchen={kitchen} draft={draft} />
        <ChoiceRow
          legend="Judge by"
          choices={ways}
          value={way}
          onChoose={(chosen) => (draft.value = { ...draft.value, way: chosen })}
        />
        {way === 'photo' ? <ByPhoto {...act} /> : way === 'instrument' ? <ByInstrument {...act} /> : <ByEye {...act} />}
        <section class="swatches-part" aria-labelledby="swatches-kept">
          <h2 id="swatches-kept">{batchId === null ? 'Kept' : 'Kept of this batch'}</h2>
          {kept?.problem ? <p role="alert">{kept.problem}</p> : null}
          {kept === null ? (
            <p>Opening…</p>
          ) : kept.judgements.length === 0 ? (
            <p class="soft">Nothing yet. A verdict that is kept stands here, and in the batch’s record.</p>
          ) : (
            <Judgements kitchen={kitchen} judgements={kept.judgements} />
          )}
          {batchId === null ? null : (
            <div>
              <Pad onPress={() => kitchen.go(`#/dye-book/${encodeURIComponent(batchId)}`)}>To its record</Pad>
            </div>
          )}
        </section>
      </Page>
    </div>
  )
}
