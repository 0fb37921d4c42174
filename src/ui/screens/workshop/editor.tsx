// Any field of a form, whatever its shape: typed, chosen, a list, or a thing with fields of its own.
import { type Data, type Fields, isFields } from '../../../core/protocol/edit/data.ts'
import type { Field } from '../../../core/protocol/edit/form.ts'
import { Pad } from '../../parts/pad.tsx'
import { Choice, type EditorProps, hintOf, Leaf, Told } from './leaf.tsx'
import { NameField } from './name-field.tsx'
import { further, problemsBeside, problemsWithin, sayOf } from './where.ts'

export function Editor(props: EditorProps): preact.JSX.Element {
  const field = shapeFor(props.field, props.value)
  const own = { ...props, field, problems: problemsWithin(props.problems, props.where) }
  switch (field.kind) {
    case 'choice':
    case 'flag':
      return <Choice {...own} />
    case 'list':
      return field.of?.kind === 'choice' ? <Several {...own} /> : <List {...own} />
    case 'record':
      return <Record {...own} />
    case 'text':
    case 'number':
    case 'quantity':
      return <Leaf {...own} />
  }
}

/** Of the ways in which a field may be written, the one that it is written in. */
function shapeFor(field: Field, value: Data | undefined): Field {
  if (value === undefined || value === null) return field
  const { name, label, required, help } = field
  const ways = [field, ...(field.or ?? []).map((way) => ({ ...way, name, label, required, help: way.help || help }))]
  const kinds = Array.isArray(value) ? ['list'] : isFields(value) ? ['record'] : []
  const fitting = ways.find((way) =>
    kinds.length === 0 ? way.kind !== 'record' && (way.kind !== 'list' || way.alone) : kinds.includes(way.kind)
  )
  if (fitting) return fitting
  // One thing with fields, in place of a list of such: the list shows it.
  return field.alone ? field : { ...field, kind: 'text' }
}

/** Some of a few, each on or off. */
function Several({ field, value, problems, onSet }: EditorProps): preact.JSX.Element {
  const items = itemsOf(value)
  const turn = (choice: string): void => {
    const without = items.filter((item) => item !== choice)
    onSet(listOf(field, without.length < items.length ? without : [...items, choice]))
  }
  return (
    <Told hint={hintOf(field)} told={problems.map(sayOf)}>
      <fieldset class="choice-row" aria-label={field.label}>
        <legend>{field.label}</legend>
        <div class="choice-row-pads">
          {field.of?.choices?.map((choice) => (
            <Pad key={choice} selected={items.includes(choice)} onPress={() => turn(choice)}>
              {choice}
            </Pad>
          ))}
        </div>
      </fieldset>
    </Told>
  )
}

function itemsOf(value: Data | undefined): Data[] {
  if (value === undefined || value === null) return []
  return Array.isArray(value) ? value : [value]
}

function listOf(field: Field, items: Data[]): Data | undefined {
  if (items.length === 0) return undefined
  return field.alone && items.length === 1 ? items[0] : items
}

function List({ field, value, where, problems, onSet }: EditorProps): preact.JSX.Element {
  const items = itemsOf(value)
  const of = field.of ?? { ...field, kind: 'text', or: undefined }
  const asFields = of.or?.find(({ kind }) => kind === 'record')
  const isTyped = of.kind === 'text' || of.kind === 'quantity'
  const add = (item: Data): string | null => onSet(items.length === 0 ? [item] : listOf(field, [...items, item]))
  return (
    <Group field={field} told={items.length === 0 ? problems.map(sayOf) : []}>
      {items.map((item, i) => (
        <div key={i} class="workshop-item">
          <Editor
            field={{ ...of, label: `${field.label} ${i + 1}`, help: '', required: true }}
            value={item}
            where={Array.isArray(value) ? further(where, i) : where}
            problems={problems}
            // An emptied item stays, so that it can be typed anew.
            onSet={(next) => onSet(listOf(field, items.toSpliced(i, 1, next ?? '')))}
          />
          <Pad label={`Take away ${field.label} ${i + 1}`} onPress={() => onSet(listOf(field, items.toSpliced(i, 1)))}>
            Take away
          </Pad>
        </div>
      ))}
      <div class="workshop-pads">
        <Pad label={`${field.label}: add one`} onPress={() => add(isTyped ? '' : of.example)}>
          Add one
        </Pad>
        {asFields ? (
          <Pad label={`${field.label}: add one with fields`} onPress={() => add(asFields.example)}>
            Add one with fields
          </Pad>
        ) : null}
      </div>
    </Group>
  )
}

function Record(props: EditorProps): preact.JSX.Element {
  const { field, value, where, problems, onSet } = props
  if (value === undefined) {
    return (
      <Group field={field} told={problems.map(sayOf)}>
        <Ways {...props} />
      </Group>
    )
  }
  const fields = isFields(value) ? value : {}
  const names = field.fields?.map(({ name }) => name) ?? Object.keys(fields)
  const told = problemsBeside(problems, where, names).map(sayOf)
  return (
    <Group field={field} told={told}>
      {field.fields?.map((inner) => (
        <Editor
          key={inner.name}
          field={inner}
          value={fields[inner.name]}
          where={further(where, inner.name)}
          problems={problems}
          onSet={(next) => onSet(withField(fields, inner.name, next))}
        />
      ))}
      {field.of ? <Named {...props} of={field.of} fields={fields} /> : null}
      {field.required ? null : <Ways {...props} />}
    </Group>
  )
}

function withField(fields: Fields, name: string, value: Data | undefined): Fields {
  if (value !== undefined) return { ...fields, [name]: value }
  return Object.fromEntries(Object.entries(fields).filter(([other]) => other !== name))
}

/** To begin a thing with fields of its own, in one of its ways, or to take it away. */
function Ways({ field, value, onSet }: EditorProps): preact.JSX.Element {
  const list = field.or?.find(({ kind }) => kind === 'list')
  if (value !== undefined) {
    return (
      <Pad label={`Take away ${field.label}`} onPress={() => onSet(undefined)}>
        Take away
      </Pad>
    )
  }
  return (
    <div class="workshop-pads">
      <Pad label={`${field.label}: say it`} onPress={() => onSet(field.example)}>
        Say it
      </Pad>
      {list ? (
        <Pad label={`${field.label}: name them`} onPress={() => onSet(list.example)}>
          Name them
        </Pad>
      ) : null}
    </div>
  )
}

/** Values under names that are free to choose. */
function Named({
  of,
  fields,
  where,
  problems,
  onSet
}: EditorProps & { of: Field; fields: Fields }): preact.JSX.Element {
  const names = Object.keys(fields)
  const rename = (was: string, name: string): string | null => {
    if (names.includes(name)) return `${name} is there already.`
    return onSet(Object.fromEntries(Object.entries(fields).map(([key, one]) => [key === was ? name : key, one])))
  }
  const fresh = (): string => {
    let n = names.length + 1
    while (names.includes(`name ${n}`)) n++
    return `name ${n}`
  }
  return (
    <>
      {names.map((name) => (
        <div key={name} class="workshop-item">
          <NameField label="Name" value={name} onName={(next) => rename(name, next)} />
          <Editor
            field={{ ...of, label: `For ${name}`, required: true }}
            value={fields[name]}
            where={further(where, name)}
            problems={problems}
            onSet={(next) => onSet({ ...fields, [name]: next ?? '' })}
          />
          <Pad label={`Take away ${name}`} onPress={() => onSet(withField(fields, name, undefined))}>
            Take away
          </Pad>
        </div>
      ))}
      <Pad onPress={() => onSet({ ...fields, [fresh()]: of.example })}>Add one</Pad>
    </>
  )
}

type GroupProps = { field: Field; told: readonly string[]; children: preact.ComponentChildren }

function Group({ field, told, children }: GroupProps): preact.JSX.Element {
  return (
    <fieldset class="workshop-group" data-problem={told.length > 0 ? '' : undefined}>
      <legend>{field.label}</legend>
      {field.help === '' ? null : <p class="field-hint">{hintOf(field)}</p>}
      {told.length === 0 ? null : (
        <p class="field-problem" role="alert">
          {told.join(' ')}
        </p>
      )}
      {children}
    </fieldset>
  )
}
