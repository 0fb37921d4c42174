// Swatches: a skein beside its control, read from photos, from an instrument or by eye, to a verdict that is kept.
import { useEffect, useState } from 'preact/hooks'
import type { Kitchen } from '../../kitchen.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { Comparisons } from '../../parts/swatch-comparisons.tsx'
import { Judgements } from '../../parts/swatch-judgements.tsx'
import type { KeptSwatches, KitchenSwatches } from '../../swatches.ts'
import type { Act } from './act.ts'
import { BatchField } from './batch-field.tsx'
import { ByEye } from './by-eye.tsx'
import { ByInstrument } from './by-instrument.tsx'
import { ByPhoto } from './by-photo.tsx'
import { draftOf, type Quest, type Way } from './draft.ts'
import { Matching } from './match/index.tsx'
import { chooseSeries } from './series.ts'
import { Staining } from './stain/index.tsx'
import './style.css'

const quests: Record<Quest, { label: string; about: string }> = {
  split: {
    label: 'Did it split?',
    about:
      'Did a mixed dye split along the skein, or did it only get lighter? A skein is held against its own dilution series, at equal depth.'
  },
  match: {
    label: 'Does it match?',
    about:
      'Is it the same as that one? A skein’s readings are held against those of another batch, or against L*a*b* that you type.'
  },
  stain: {
    label: 'Did it bleed?',
    about:
      'What did a witness cloth take from the yarn? The stained cloth is held against clean cloth of the same kind.'
  }
}
const questChoices = (Object.keys(quests) as Quest[]).map((value) => ({ value, label: quests[value].label }))

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
    else {
      draft.value = { ...draft.value, quest: 'split' }
      void chooseSeries(kitchen, draft, id)
    }
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
  const { quest, batchId } = draft.value
  const [kept, setKept] = useState<KeptSwatches | null>(null)
  const again = (): void => void swatches.kept(batchId).then(setKept)
  useEffect(again, [swatches, batchId])
  const act = { kitchen, swatches, draft, kept: again }
  return (
    <div class="swatches">
      <Page title="Swatches">
        <ChoiceRow
          legend="What to find out"
          choices={questChoices}
          value={quest}
          onChoose={(chosen) => (draft.value = { ...draft.value, quest: chosen })}
        />
        <p>{quests[quest].about}</p>
        <BatchField kitchen={kitchen} draft={draft} />
        {quest === 'split' ? <Splitting {...act} /> : quest === 'match' ? <Matching {...act} /> : <Staining {...act} />}
        <section class="swatches-part" aria-labelledby="swatches-kept">
          <h2 id="swatches-kept">{batchId === null ? 'Kept' : 'Kept of this batch'}</h2>
          {kept?.problem ? <p role="alert">{kept.problem}</p> : null}
          {kept === null ? (
            <p>Opening…</p>
          ) : kept.judgements.length + kept.comparisons.length === 0 ? (
            <p class="soft">Nothing yet. What is kept stands here, and in the batch’s record.</p>
          ) : (
            <>
              <Comparisons kitchen={kitchen} comparisons={kept.comparisons} />
              <Judgements kitchen={kitchen} judgements={kept.judgements} />
            </>
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

function Splitting(act: Act): preact.JSX.Element {
  const { draft } = act
  const { way } = draft.value
  return (
    <>
      <ChoiceRow
        legend="Judge by"
        choices={ways}
        value={way}
        onChoose={(chosen) => (draft.value = { ...draft.value, way: chosen })}
      />
      {way === 'photo' ? <ByPhoto {...act} /> : way === 'instrument' ? <ByInstrument {...act} /> : <ByEye {...act} />}
    </>
  )
}
