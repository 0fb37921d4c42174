// The form of one row: its name where it has one, its fields, and what is wrong with the row as a whole.
import { useMemo, useState } from 'preact/hooks'
import { aboutOf, type Field, type FormKind } from '../../../core/protocol/edit/form.ts'
import { ownerAt } from '../../../core/protocol/edit/places.ts'
import type { Row } from '../../../core/protocol/edit/rows.ts'
import { dataOf, parse } from '../../../core/protocol/edit/tree.ts'
import { Editor } from './editor.tsx'
import { inTwo, isFormKind } from './kinds.ts'
import { type EditorProps, hintOf } from './leaf.tsx'
import { NameField } from './name-field.tsx'
import { further, problemsBeside, problemsWithin, sayOf, whereOf } from './where.ts'
import type { DoEdit } from './writing.ts'

/** The row of a header field has that field; the one without a name those of the header that are not there yet. */
type Props = { row: Row; text: string; edit: DoEdit }

const named = ['input', 'material', 'answer', 'branch']

export function RowForm({ row, text, edit }: Props): preact.JSX.Element {
  const kind = isFormKind(row.kind) ? row.kind : null
  const others = kind === null ? row.problems : []
  return (
    <div class="workshop-form">
      {named.includes(row.kind) ? (
        <NameField
          label="Name"
          hint={row.kind === 'answer' ? 'What is answered.' : 'What refers to it by the old name is left as it is.'}
          value={row.name ?? ''}
          onName={(to) => edit({ type: 'rename', path: row.path, to })}
        />
      ) : null}
      {row.kind === 'unknown' ? <p>This is no step of the language. Mend it in the text, or take it away.</p> : null}
      {others.map((problem) => (
        <p key={`${problem.code} ${problem.where}`} class="field-problem" role="alert">
          {sayOf(problem)}
        </p>
      ))}
      {kind === null ? null : <Fields kind={kind} row={row} text={text} edit={edit} />}
    </div>
  )
}

function Fields({ kind, row, text, edit }: Props & { kind: FormKind }): preact.JSX.Element {
  const path = kind === 'header' ? [] : row.path
  const { root } = parse(text)
  const values = ownerAt(root ? dataOf(root) : null, path)?.fields ?? {}
  // As they were when the form was opened: a field must not jump away from under the hand that types into it.
  const [{ first, more }] = useState(() => {
    const two = inTwo(kind, (name) => values[name] !== undefined)
    if (kind !== 'header') return two
    const all = [...two.first, ...two.more]
    const wanted = ({ name }: Field): boolean => (row.name === null ? values[name] === undefined : name === row.name)
    return { first: all.filter(wanted), more: [] }
  })
  const where = whereOf(row)
  const names = [...first, ...more].map(({ name }) => name)
  const beside = problemsBeside(row.problems, where, names)
  const id = typeof values.id === 'string' ? values.id : ''
  const shown = (field: Field): preact.JSX.Element =>
    field.name === 'id' && (values.id === undefined || id !== '') ? (
      <NameField
        key={field.name}
        label={field.label}
        hint={hintOf({ ...field, help: `${field.help} What refers to it goes along.` })}
        problem={problemsWithin(row.problems, further(where, 'id')).map(sayOf).join(' ') || null}
        value={id}
        optional
        onName={(to) => edit(to === '' ? { type: 'unset', path, field: 'id' } : { type: 'name', path, to }, 'id')}
      />
    ) : (
      <OneField
        key={field.name}
        field={field}
        value={values[field.name]}
        where={further(where, field.name)}
        problems={row.problems}
        onSet={(value) =>
          edit(
            value === undefined
              ? { type: 'unset', path, field: field.name }
              : { type: 'set', path, field: field.name, value },
            field.name
          )
        }
      />
    )
  return (
    <>
      {aboutOf(kind) === '' ? null : <p class="soft">{aboutOf(kind)}</p>}
      {beside.map((problem) => (
        <p key={`${problem.code} ${problem.where}`} class="field-problem" role="alert">
          {sayOf(problem)}
        </p>
      ))}
      {first.map(shown)}
      {more.length === 0 ? null : (
        <details class="workshop-more">
          <summary>{`More to say (${more.length})`}</summary>
          <div class="workshop-form">{more.map(shown)}</div>
        </details>
      )}
    </>
  )
}

/** A letter changes one field of a form: the others are not drawn again. */
function OneField(props: EditorProps): preact.JSX.Element {
  const { value, where, problems } = props
  const told = problemsWithin(problems, where).map((problem) => `${problem.where} ${sayOf(problem)}`)
  return useMemo(() => <Editor {...props} />, [where, JSON.stringify(value), told.join('\n')])
}
