// The protocol as rows: each says what it is and what is wrong with it, and opens its form.
import { useEffect, useRef, useState } from 'preact/hooks'
import { at, isFields } from '../../../core/protocol/edit/data.ts'
import type { Row } from '../../../core/protocol/edit/rows.ts'
import type { Problem } from '../../../core/protocol/model.ts'
import { Pad } from '../../parts/pad.tsx'
import { dataIn, type Place } from './places.ts'
import { RowForm } from './row-form.tsx'
import { AddSheet, RowPads } from './row-pads.tsx'
import { samePath, sayOf } from './where.ts'
import type { Writing } from './writing.ts'

type Props = { writing: Writing; onLine: (line: number) => void }

const parts = [
  { title: 'What it is', kinds: ['header'], add: null },
  { title: 'What is asked', kinds: ['input'], add: { say: 'Add a question', parent: 'inputs', kind: 'input' } },
  { title: 'Materials', kinds: ['material'], add: { say: 'Add a material', parent: 'materials', kind: 'material' } },
  { title: 'Step by step', kinds: null, add: null },
  { title: 'Gaps between moments', kinds: ['gap'], add: { say: 'Add a gap', parent: 'gaps', kind: 'gap' } }
] as const
const besideSteps: readonly string[] = parts.flatMap(({ kinds }) => kinds ?? [])

/** Stands for the header fields that are not there yet. */
const moreOfHeader: Row = {
  path: [],
  depth: 0,
  kind: 'header',
  name: null,
  summary: 'More about it',
  lines: { from: 1, to: 1 },
  problems: []
}

export function StepsPane({ writing, onLine }: Props): preact.JSX.Element {
  const { outline } = writing
  const oneRow = useRowElements(writing)
  const oneList = useListElements()
  if (outline.rows.length === 0) return <NoRows problems={outline.problems} onLine={onLine} />
  const known = outline.rows.filter(({ name }) => name !== 'strandline')
  return (
    <div class="workshop-steps">
      <Loose problems={outline.problems} onLine={onLine} />
      {parts.map(({ title, kinds, add }) => {
        const mine = known.filter(({ kind }) =>
          kinds === null ? !besideSteps.includes(kind) : (kinds as readonly string[]).includes(kind)
        )
        const rows = title === 'What it is' ? [...mine, moreOfHeader] : mine
        return (
          <section key={title} aria-label={title}>
            <h3>{title}</h3>
            {rows.length === 0 ? null : oneList(title, rows.map(oneRow))}
            {kinds === null ? <AddStep writing={writing} /> : null}
            {add ? <AddPart writing={writing} {...add} /> : null}
          </section>
        )
      })}
    </div>
  )
}

function OneRow({ row, writing }: { row: Row; writing: Writing }): preact.JSX.Element {
  const { open, setOpen, text, edit } = writing
  const isOpen = open !== null && samePath(open, row.path)
  const own = useRef<HTMLLIElement>(null)
  useEffect(() => {
    if (!isOpen) return
    own.current?.scrollIntoView?.({ block: 'nearest' })
    own.current?.querySelector<HTMLElement>('.workshop-row')?.focus({ preventScroll: true })
  }, [isOpen])
  const id = `row-${JSON.stringify(row.path).replace(/[^a-z0-9]+/gi, '-')}`
  return (
    <li
      ref={own}
      style={{ '--depth': String(Math.min(row.depth, 6)) }}
      data-open={isOpen ? '' : undefined}
      data-kind={row.kind}
    >
      <button
        type="button"
        class="workshop-row"
        aria-expanded={isOpen}
        aria-controls={isOpen ? id : undefined}
        data-problem={row.problems.length > 0 ? '' : undefined}
        onClick={() => setOpen(isOpen ? null : row.path)}
      >
        <Said row={row} />
      </button>
      {isOpen ? (
        <div id={id} class="workshop-open">
          <RowForm key={row.kind} row={row} text={text} edit={edit} />
          {row === moreOfHeader || row.name === 'title' || row.name === 'steps' ? null : (
            <RowPads row={row} text={text} edit={edit} />
          )}
        </div>
      ) : null}
    </li>
  )
}

type Drawn = { row: Row; nth: number; element: preact.JSX.Element }

/** A letter changes one row of hundreds. The others are given as they were drawn last, and so are not drawn again: what a
 * closed row does with the writing is to open itself, which is the same for ever. A row is known by its place: one that is
 * named anew stays under the finger that is about to press in it. */
function useRowElements(writing: Writing): (row: Row, nth: number) => preact.JSX.Element {
  const drawn = useRef(new Map<string, Drawn>())
  const before = drawn.current
  const now = new Map<string, Drawn>()
  drawn.current = now
  return (row, nth) => {
    const key = JSON.stringify(row.path)
    const known = before.get(key)
    if (writing.open !== null && samePath(writing.open, row.path)) {
      return <OneRow key={nth} row={row} writing={writing} />
    }
    const same = known?.nth === nth && lookAlike(known.row, row) ? known : null
    const kept = same ?? { row, nth, element: <OneRow key={nth} row={row} writing={writing} /> }
    now.set(key, kept)
    return kept.element
  }
}

type DrawnList = { rows: preact.JSX.Element[]; element: preact.JSX.Element }

/** A list of which every row is given as it was drawn last is given so itself: then nobody looks through its rows. */
function useListElements(): (title: string, rows: preact.JSX.Element[]) => preact.JSX.Element {
  const drawn = useRef(new Map<string, DrawnList>())
  return (title, rows) => {
    const known = drawn.current.get(title)
    if (known?.rows.length === rows.length && known.rows.every((row, i) => row === rows[i])) return known.element
    const element = <Rows rows={rows} />
    drawn.current.set(title, { rows, element })
    return element
  }
}

/** A component, because an element of the page is gone into though it is the same. */
function Rows({ rows }: { rows: preact.JSX.Element[] }): preact.JSX.Element {
  return <ul class="workshop-rows">{rows}</ul>
}

/** As far as a closed row shows it. */
function lookAlike(a: Row, b: Row): boolean {
  if (a === b) return true
  const known = a.kind === b.kind && a.name === b.name && a.depth === b.depth && a.summary === b.summary
  if (!known || a.problems.length !== b.problems.length || !samePath(a.path, b.path)) return false
  return a.problems.every((problem, i) => {
    const other = b.problems[i]
    return other !== undefined && problem.where === other.where && sayOf(problem) === sayOf(other)
  })
}

/** What a row is, in one line, and what is wrong with it. */
function Said({ row }: { row: Row }): preact.JSX.Element {
  const title = row.kind === 'header' ? row.name : null
  return (
    <>
      <span class="workshop-summary">
        {title === null ? null : <span class="soft">{`${title} `}</span>}
        {wordBefore(row)}
        {row.summary || 'nothing yet'}
      </span>
      {row.problems.map((problem) => (
        <span key={`${problem.code} ${problem.where}`} class="workshop-problem">
          {sayOf(problem)}
        </span>
      ))}
    </>
  )
}

/** The names of answers and branches say little alone. */
function wordBefore({ kind }: Row): preact.JSX.Element | null {
  const word = { answer: 'If ', branch: 'Meanwhile ', otherwise: 'If still not: ' }[kind]
  return word === undefined ? null : <span class="soft">{word}</span>
}

/** At the end of all steps: also the way to the first one. */
function AddStep({ writing }: { writing: Writing }): preact.JSX.Element {
  const [place, setPlace] = useState<Place | null>(null)
  const begin = (): void => {
    const steps = at(dataIn(writing.text), ['steps'])
    setPlace({ parent: ['steps'], index: Array.isArray(steps) ? steps.length : 0 })
  }
  return (
    <>
      <Pad look="solid" className="workshop-begin" onPress={begin}>
        Add a step at the end
      </Pad>
      {place ? <AddSheet place={place} edit={writing.edit} onClose={() => setPlace(null)} /> : null}
    </>
  )
}

type AddPartProps = { writing: Writing; say: string; parent: string; kind: string }

function AddPart({ writing, say, parent, kind }: AddPartProps): preact.JSX.Element {
  const [refused, setRefused] = useState<string | null>(null)
  const add = (): void => {
    const group = at(dataIn(writing.text), [parent])
    const index = Array.isArray(group) ? group.length : isFields(group) ? Object.keys(group).length : 0
    setRefused(writing.edit({ type: 'add', parent: [parent], index, kind }))
  }
  return (
    <>
      <Pad className="workshop-begin" onPress={add}>
        {say}
      </Pad>
      {refused === null ? null : <p role="alert">{refused}</p>}
    </>
  )
}

function NoRows({ problems, onLine }: { problems: readonly Problem[]; onLine: Props['onLine'] }): preact.JSX.Element {
  return (
    <div class="workshop-steps">
      <p>The steps can’t be shown while the text has this mistake. Nothing is lost: mend it in the text.</p>
      <Loose problems={problems} onLine={onLine} />
    </div>
  )
}

function Loose({
  problems,
  onLine
}: {
  problems: readonly Problem[]
  onLine: Props['onLine']
}): preact.JSX.Element | null {
  if (problems.length === 0) return null
  return (
    <ul class="workshop-loose">
      {problems.map((problem) => (
        <li key={`${problem.line}:${problem.column} ${problem.code}`}>
          <p>{sayOf(problem)}</p>
          <Pad onPress={() => onLine(problem.line)}>{`Go to line ${problem.line}`}</Pad>
        </li>
      ))}
    </ul>
  )
}
