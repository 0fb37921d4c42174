// The marks on one photo: put by touch or mouse, or moved by the arrow keys.
import type { Signal } from '@preact/signals'
import { useState } from 'preact/hooks'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { Pad } from '../../parts/pad.tsx'
import { type Album, reshape, type Shot, setPlace } from './draft.ts'
import { limits, type MarkId, marksOf, type Shape, stillToMark, whereWords } from './marks.ts'
import { Picture } from './picture.tsx'

type Props = { album: Signal<Album>; shot: Shot }

export function Marking({ album, shot }: Props): preact.JSX.Element | null {
  const { shape } = album.value
  const marks = marksOf(shape)
  const [first] = stillToMark(shape, shot.places)
  const [wanted, choose] = useState<MarkId>(first?.id ?? 'grey')
  const chosen = marks.find(({ id }) => id === wanted) ?? marks[0]
  if (!chosen) return null
  const next = (): void => {
    const still = stillToMark(shape, album.value.shots[album.value.shown]?.places ?? {})
    const nth = marks.indexOf(chosen)
    const after = still.find((mark) => marks.findIndex(({ id }) => id === mark.id) > nth) ?? still[0]
    choose((after ?? marks[(nth + 1) % marks.length] ?? chosen).id)
  }
  const change = (part: Partial<Shape>): void => {
    reshape(album, part)
    // What is new is marked next: a tap must not move what was put before.
    const [missing] = stillToMark(album.value.shape, shot.places)
    if (missing) choose(missing.id)
  }
  return (
    <section class="swatches-part" aria-labelledby="swatches-marks">
      <h2 id="swatches-marks">Mark what lies there</h2>
      <p class="swatches-chosen" role="status">
        <strong>{`${chosen.letter}: ${chosen.label}`}</strong>
        {`, ${whereWords(shot.places[chosen.id])}.`}
      </p>
      <Picture
        shot={shot}
        shape={shape}
        chosen={chosen}
        choose={choose}
        place={(id, at) => setPlace(album, shot.id, id, at)}
        next={next}
      />
      <p class="soft">
        Tap its place in the photo, drag to move it. By keys: the arrows move it, with Shift in larger steps; Enter goes
        to the next.
      </p>
      <ChoiceRow
        legend="Which mark"
        choices={marks.map(({ id, label, letter }) => ({
          value: id,
          label: `${letter} ${label}${shot.places[id] ? ' ✓' : ''}`
        }))}
        value={chosen.id}
        onChoose={choose}
      />
      <AlongRow shape={shape} change={change} />
      <ShapePads shape={shape} change={change} />
    </section>
  )
}

type ShapeProps = { shape: Shape; change: (part: Partial<Shape>) => void }

function AlongRow({ shape, change }: ShapeProps): preact.JSX.Element | null {
  if (shape.of === 'cloth') return null
  return (
    <ChoiceRow
      legend="How the skein is marked"
      choices={[
        { value: 'line', label: 'Along a line' },
        { value: 'spots', label: 'Spot by spot' }
      ]}
      value={shape.along}
      onChoose={(along) => change({ along })}
    />
  )
}

function ShapePads({ shape, change }: ShapeProps): preact.JSX.Element {
  return (
    <details class="swatches-guide">
      <summary>{shape.of === 'cloth' ? 'How large' : 'How many there are, and how large'}</summary>
      {shape.of === 'cloth' ? null : <SkeinPads shape={shape} change={change} />}
      <ChoiceRow
        legend="Size of a spot"
        choices={sizes(0.025, 0.035, 0.06)}
        value={shape.spotShare}
        onChoose={(spotShare) => change({ spotShare })}
      />
      {shape.along === 'spots' ? null : (
        <ChoiceRow
          legend="Width of the skein’s line"
          choices={sizes(0.06, 0.12, 0.2)}
          value={shape.wideShare}
          onChoose={(wideShare) => change({ wideShare })}
        />
      )}
    </details>
  )
}

function SkeinPads({ shape, change }: ShapeProps): preact.JSX.Element {
  return (
    <>
      {shape.tabs === null ? (
        <Count
          label="Swatches of the series"
          value={shape.series}
          within={limits.series}
          set={(series) => change({ series })}
        />
      ) : null}
      <Count
        label="Places of undyed yarn"
        value={shape.undyed}
        within={limits.undyed}
        set={(undyed) => change({ undyed })}
      />
      <Count
        label={shape.along === 'spots' ? 'Spots on the skein' : 'Bands along the skein'}
        value={shape.bands}
        within={limits.bands}
        set={(bands) => change({ bands })}
      />
      <Count
        label="Of these at end B above the liquor, wicking"
        value={shape.wicking}
        within={[0, shape.bands]}
        set={(wicking) => change({ wicking })}
      />
    </>
  )
}

const sizes = (small: number, usual: number, large: number) => [
  { value: small, label: 'Small' },
  { value: usual, label: 'Medium' },
  { value: large, label: 'Large' }
]

type CountProps = { label: string; value: number; within: readonly [number, number]; set: (value: number) => void }

function Count({ label, value, within: [least, most], set }: CountProps): preact.JSX.Element {
  return (
    <div class="swatches-count">
      <span>{label}</span>
      <Pad label={`${label}: one fewer`} disabled={value <= least} onPress={() => set(value - 1)}>
        −
      </Pad>
      <output aria-label={label}>{value}</output>
      <Pad label={`${label}: one more`} disabled={value >= most} onPress={() => set(value + 1)}>
        +
      </Pad>
    </div>
  )
}
