// What can be done with a row as a whole.
import { useMemo, useRef, useState } from 'preact/hooks'
import type { Edit } from '../../../core/protocol/edit/edit.ts'
import { aboutOf } from '../../../core/protocol/edit/form.ts'
import type { Row } from '../../../core/protocol/edit/rows.ts'
import { stepWords } from '../../../core/protocol/model.ts'
import { constructWords } from '../../../core/protocol/written.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { Pad } from '../../parts/pad.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import { isConstructWord } from './kinds.ts'
import { dataIn, furtherParts, isStep, moveOf, type Place, placeAfter, placeInside, stepsFrom } from './places.ts'
import type { DoEdit } from './writing.ts'

type Props = { row: Row; text: string; edit: DoEdit }

/** A letter in a form changes nothing that can be done with its row: then the pads are not drawn again. */
export function RowPads({ row, text, edit }: Props): preact.JSX.Element {
  const data = dataIn(text)
  const can: Can = {
    up: moveOf(data, row, -1),
    down: moveOf(data, row, 1),
    parts: furtherParts(data, row),
    most: stepsFrom(data, row)
  }
  return useMemo(() => <Pads row={row} can={can} edit={edit} />, [JSON.stringify([row.path, row.kind, can])])
}

type Can = {
  up: Edit | null
  down: Edit | null
  parts: ReturnType<typeof furtherParts>
  /** How many steps can be wrapped, from this one on. */
  most: number
}
type PadsProps = { row: Row; can: Can; edit: DoEdit }

function Pads({ row, can, edit }: PadsProps): preact.JSX.Element {
  const [place, setPlace] = useState<Place | null>(null)
  const [wrapping, setWrapping] = useState(false)
  const [refused, setRefused] = useState<string | null>(null)
  const own = useRef<HTMLDivElement>(null)
  const tell = (problem: string | null): void => setRefused(problem)
  const inside = placeInside(row)
  const step = isStep(row)
  const remove = (): void => {
    const next = neighbourOf(own.current)
    const problem = edit({ type: 'remove', path: row.path })
    setRefused(problem)
    // What was pressed is gone: the keyboard goes on at the row beside it.
    if (problem === null) next?.focus()
  }
  return (
    <div ref={own} class="workshop-row-pads">
      {refused === null ? null : <p role="alert">{refused}</p>}
      <div class="workshop-pads">
        {step ? <Pad onPress={() => setPlace(placeAfter(row))}>Add a step after</Pad> : null}
        {inside ? <Pad onPress={() => setPlace(inside)}>Add a step inside</Pad> : null}
        {can.parts.map((part) => (
          <Pad key={part.say} onPress={() => (part.edit ? tell(edit(part.edit)) : setPlace(part.place))}>
            {part.say}
          </Pad>
        ))}
        <Moves up={can.up} down={can.down} shown={row.kind !== 'header'} edit={(move) => tell(edit(move))} />
        {row.kind === 'header' || row.kind === 'otherwise' ? null : (
          <Pad onPress={() => tell(edit({ type: 'duplicate', path: row.path }))}>Duplicate</Pad>
        )}
        {step ? <Pad onPress={() => setWrapping(true)}>Wrap in</Pad> : null}
        {isConstructWord(row.kind) ? (
          <Pad onPress={() => tell(edit({ type: 'unwrap', path: row.path }))}>Unwrap</Pad>
        ) : null}
        <Pad onPress={remove}>Remove</Pad>
      </div>
      {place ? <AddSheet place={place} edit={edit} onClose={() => setPlace(null)} /> : null}
      {wrapping ? <WrapSheet row={row} most={can.most} edit={edit} onClose={() => setWrapping(false)} /> : null}
    </div>
  )
}

function neighbourOf(inside: HTMLElement | null): HTMLElement | null {
  const item = inside?.closest('li')
  const beside = item?.previousElementSibling ?? item?.nextElementSibling
  return beside?.querySelector<HTMLElement>('.workshop-row') ?? null
}

type MovesProps = {
  up: ReturnType<typeof moveOf>
  down: ReturnType<typeof moveOf>
  shown: boolean
  edit: (move: NonNullable<ReturnType<typeof moveOf>>) => void
}

function Moves({ up, down, shown, edit }: MovesProps): preact.JSX.Element | null {
  if (!shown || (up === null && down === null)) return null
  return (
    <>
      <Pad disabled={up === null} onPress={() => up && edit(up)}>
        Move up
      </Pad>
      <Pad disabled={down === null} onPress={() => down && edit(down)}>
        Move down
      </Pad>
    </>
  )
}

type AddProps = { place: Place; edit: DoEdit; onClose: () => void }

/** Every word of the language, with a line of what it does. */
export function AddSheet({ place, edit, onClose }: AddProps): preact.JSX.Element {
  const [refused, setRefused] = useState<string | null>(null)
  const add = (kind: string): void => {
    const problem = edit({ type: 'add', parent: place.parent, index: place.index, kind })
    setRefused(problem)
    if (problem === null) onClose()
  }
  const kindsOf = (title: string, kinds: readonly ((typeof stepWords)[number] | (typeof constructWords)[number])[]) => (
    <>
      <h3>{title}</h3>
      <ul class="workshop-kinds">
        {kinds.map((kind) => (
          <li key={kind}>
            <Pad onPress={() => add(kind)}>
              <strong>{kind}</strong>
              <span class="workshop-about">{aboutOf(kind)}</span>
            </Pad>
          </li>
        ))}
      </ul>
    </>
  )
  return (
    <Sheet title="Add a step" onClose={onClose}>
      {refused === null ? null : <p role="alert">{refused}</p>}
      {kindsOf('Steps', stepWords)}
      {kindsOf('Steps that hold others', constructWords)}
    </Sheet>
  )
}

/** As many as fit on a row of pads. */
const WRAPPED_MOST = 8

function WrapSheet({ row, most, edit, onClose }: WrapProps): preact.JSX.Element {
  const [count, setCount] = useState(1)
  const [refused, setRefused] = useState<string | null>(null)
  const counts = Array.from({ length: Math.min(most, WRAPPED_MOST) }, (_, i) => i + 1)
  const wrap = (word: string): void => {
    const problem = edit({ type: 'wrap', path: row.path, count, in: word })
    setRefused(problem)
    if (problem === null) onClose()
  }
  return (
    <Sheet title="Wrap in" onClose={onClose}>
      {refused === null ? null : <p role="alert">{refused}</p>}
      {counts.length > 1 ? (
        <ChoiceRow
          legend="How many steps, from this one on"
          choices={counts.map((n) => ({ value: n, label: String(n) }))}
          value={count}
          onChoose={setCount}
        />
      ) : null}
      <ul class="workshop-kinds">
        {constructWords.map((word) => (
          <li key={word}>
            <Pad onPress={() => wrap(word)}>
              <strong>{word}</strong>
              <span class="workshop-about">{aboutOf(word)}</span>
            </Pad>
          </li>
        ))}
      </ul>
    </Sheet>
  )
}

type WrapProps = { row: Row; most: number; edit: DoEdit; onClose: () => void }
