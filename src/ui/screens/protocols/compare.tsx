// Two versions side by side, step by step; on a phone one under the other.
import { useMemo, useState } from 'preact/hooks'
import { type CompareRow, compareProtocols } from '../../../core/protocol/edit/compare.ts'
import type { Row } from '../../../core/protocol/edit/rows.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'

type Props = { was: string; now: string }

const said: Record<CompareRow['what'], string> = {
  same: 'The same',
  changed: 'Changed',
  added: 'New',
  removed: 'Gone',
  moved: 'Moved'
}

export function Compare({ was, now }: Props): preact.JSX.Element {
  const [all, setAll] = useState<'changes' | 'all'>('changes')
  const { rows, readable } = useMemo(() => compareProtocols(was, now), [was, now])
  if (!readable.left || !readable.right) return <p>One of the two can’t be read as a protocol any more.</p>
  const changes = rows.filter(({ what }) => what !== 'same')
  const shown = all === 'all' ? rows : changes
  return (
    <section class="protocols-part" aria-label="What changed">
      <ChoiceRow
        legend="Shown"
        quiet
        choices={[
          { value: 'changes', label: 'Only changes' },
          { value: 'all', label: 'All steps' }
        ]}
        value={all}
        onChoose={setAll}
      />
      {changes.length === 0 ? <p>They say the same.</p> : null}
      {shown.length === 0 ? null : (
        <ol class="protocols-compare">
          {shown.map((row) => (
            <li key={JSON.stringify([row.left?.path, row.right?.path])} data-what={row.what}>
              <p class="protocols-what">{said[row.what]}</p>
              <Side word="Was" row={row.left} />
              <Side word="Now" row={row.right} />
              <Fields row={row} />
            </li>
          ))}
        </ol>
      )}
    </section>
  )
}

function Side({ word, row }: { word: string; row: Row | null }): preact.JSX.Element {
  const name = row?.kind === 'header' ? `${row.name}: ` : ''
  return (
    <p class="protocols-side">
      <span class="soft">{`${word} `}</span>
      {row === null ? <span class="soft">not there</span> : `${name}${row.summary}`}
    </p>
  )
}

/** Of what is on both sides: field by field. Of the rest the row says it all. */
function Fields({ row }: { row: CompareRow }): preact.JSX.Element | null {
  const fields = row.left && row.right ? row.fields.filter(({ same }) => !same) : []
  if (fields.length === 0 || row.right?.kind === 'header') return null
  return (
    <ul class="protocols-changes">
      {fields.map(({ name, was, now }) => (
        <li key={name}>{`${name}: was ${was ?? 'not said'}, now ${now ?? 'not said'}`}</li>
      ))}
    </ul>
  )
}
