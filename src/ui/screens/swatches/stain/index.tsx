// Did it bleed? A witness cloth, clean and stained, to the step of the grey scale for staining.
import type { Signal } from '@preact/signals'
import { useMemo } from 'preact/hooks'
import { isRefused } from '../../../../core/chemistry/answer.ts'
import { type Stain, stainOfCloth } from '../../../../core/colour/index.ts'
import { ChoiceRow } from '../../../parts/choice-row.tsx'
import { TextField } from '../../../parts/field.tsx'
import { Strip } from '../../../parts/strip.tsx'
import type { Act } from '../act.ts'
import { DryRow } from '../dry-row.tsx'
import { KeepPad } from '../keep-pad.tsx'
import { keptOf } from '../kept-photo.ts'
import { Marking } from '../marking.tsx'
import { Faults, Shots, TakePads, useReadings } from '../shots.tsx'
import { type Cloth, clothFaultSay, photographedCloth, typedCloth } from './cloth.ts'
import { type StainDraft, stainDraftOf } from './draft.ts'
import { ClothFigures } from './figures.tsx'
import { ClothGuide } from './guide.tsx'
import { Result } from './result.tsx'

export function Staining({ kitchen, swatches, draft, kept }: Act): preact.JSX.Element {
  const { batchId } = draft.value
  const chosen = stainDraftOf(kitchen)
  const { way, shots, typed, cloth, done, dry } = chosen.value
  const reads = shots.map(({ read }) => read)
  const photographed = useMemo(() => photographedCloth(reads), reads)
  const written = useMemo(() => typedCloth(typed), [typed])
  const found = way === 'photo' ? photographed : written
  const stain = useMemo(() => stainOf(found, dry), [found, dry])
  // Other words about it are another deed.
  const deed = useMemo(() => ({}), [stain, cloth, done])
  return (
    <>
      <ChoiceRow
        legend="Read by"
        choices={[
          { value: 'photo', label: 'A photo' },
          { value: 'instrument', label: 'An instrument' }
        ]}
        value={way}
        onChoose={(value) => (chosen.value = { ...chosen.value, way: value })}
      />
      {way === 'photo' ? (
        <Photos kitchen={kitchen} swatches={swatches} album={chosen} />
      ) : (
        <ClothFigures
          typed={typed}
          problems={written.problems}
          change={(part) => (chosen.value = { ...chosen.value, typed: { ...typed, ...part } })}
        />
      )}
      <About draft={chosen} />
      {stain === null ? (
        <Missing found={found} dry={dry} />
      ) : (
        <>
          <Result stain={stain} />
          <KeepPad
            kitchen={kitchen}
            swatches={swatches}
            batchId={batchId}
            of={deed}
            series={null}
            events={() => [
              ...(way === 'photo' ? shots.flatMap((shot) => keptOf(shot, chosen.value.shape)) : []),
              {
                type: 'ClothStained',
                batchId,
                by: way,
                photos: way === 'photo' ? shots.map(({ photo }) => photo.media.sha256) : [],
                cloth: cloth.trim(),
                done: done.trim(),
                stain
              }
            ]}
            media={() => (way === 'photo' ? shots.map(({ photo }) => photo.bytes) : [])}
            kept={kept}
          />
        </>
      )}
    </>
  )
}

/** Damp cloth is deeper than dry cloth: it is not judged. */
function stainOf({ read }: Cloth, dry: boolean | null): Stain | null {
  const stain = read === null || dry !== true ? null : stainOfCloth(read)
  return stain === null || isRefused(stain) ? null : stain
}

function Photos({ kitchen, swatches, album }: Pick<Act, 'kitchen' | 'swatches'> & { album: Signal<StainDraft> }) {
  const { shots, shown, shape } = album.value
  const shot = shots[shown]
  useReadings(swatches, album)
  return (
    <>
      <ClothGuide open={shots.length === 0} />
      <TakePads kitchen={kitchen} swatches={swatches} album={album} />
      {shot ? (
        <>
          <Shots album={album} />
          <Marking key={shot.id} album={album} shot={shot} />
          <Faults shots={shots} shape={shape} say={clothFaultSay} />
        </>
      ) : null}
    </>
  )
}

function About({ draft }: { draft: Signal<StainDraft> }): preact.JSX.Element {
  const { cloth, done, dry } = draft.value
  const change = (part: Partial<StainDraft>): void => {
    draft.value = { ...draft.value, ...part }
  }
  return (
    <section class="swatches-part" aria-label="About the cloth">
      <TextField
        label="What cloth"
        hint="“White cotton.”"
        value={cloth}
        onInput={(value) => change({ cloth: value })}
      />
      <TextField
        label="What it went through"
        hint="“Washed with it at 40 °C for 30 min”, “rubbed wet, ten times”."
        value={done}
        onInput={(value) => change({ done: value })}
      />
      <DryRow legend="Is the cloth dry?" dry={dry} change={(is) => change({ dry: is })} />
    </section>
  )
}

function Missing({ found: { read, faults }, dry }: { found: Cloth; dry: boolean | null }): preact.JSX.Element {
  if (faults !== null) return <Strip tone="warn">{faults}</Strip>
  if (dry === false) {
    return (
      <Strip tone="warn">Damp cloth is deeper than dry cloth, so its stain is not told. Read it when it is dry.</Strip>
    )
  }
  return (
    <p class="soft">
      {read === null
        ? 'Mark, or type, the clean and the stained cloth.'
        : 'Say whether the cloth is dry, and the stain is here.'}
    </p>
  )
}
