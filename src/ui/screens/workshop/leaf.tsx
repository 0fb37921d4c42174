// One value that is typed or chosen. What is typed stays, also when it is wrong: it goes into the text as it is, and the
// reader says what would be right.

import { useState } from 'preact/hooks'
import { type Data, same } from '../../../core/protocol/edit/data.ts'
import type { Field } from '../../../core/protocol/edit/form.ts'
import { words } from '../../../core/protocol/edit/summary.ts'
import { valueFrom } from '../../../core/protocol/edit/typed.ts'
import type { Problem } from '../../../core/protocol/model.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { TextField } from '../../parts/field.tsx'
import { sayOf } from './where.ts'

export type EditorProps = {
  field: Field
  value: Data | undefined
  /** The place, as the reader names it. */
  where: string
  problems: readonly Problem[]
  /** Undefined takes it away. Gives the words of a refusal; null: it is done. */
  onSet: (value: Data | undefined) => string | null
}

export function hintOf({ name, help, example, kind }: Field): string {
  // An item of a list has no name: the example stands with the list.
  const shown = kind === 'choice' || kind === 'flag' || name === '' ? '' : words(example)
  return [help, shown === '' ? '' : `For example: ${shown}`].filter((one) => one !== '').join(' ')
}

function textOf(value: Data | undefined): string {
  if (value === undefined || value === null) return ''
  return typeof value === 'object' ? words(value) : String(value)
}

type Typed = { text: string; value: Data | undefined; problem: string | null }

export function Leaf({ field, value, problems, onSet }: EditorProps): preact.JSX.Element {
  const [typed, setTyped] = useState<Typed | null>(null)
  const isMine = typed !== null && (typed.problem !== null || same(typed.value, value))
  const type = (text: string): void => {
    const meant = valueFrom(field, text)
    // What is no such value goes in as it was typed: it must not be lost, and the reader knows best what is wrong.
    const next = text.trim() === '' ? undefined : meant.ok ? meant.value : text.trim()
    setTyped({ text, value: next, problem: onSet(next) })
  }
  const told = (isMine ? typed.problem : null) ?? (problems.map(sayOf).join(' ') || null)
  const isDecimal = field.kind === 'number' && field.or === undefined
  return (
    <TextField
      label={field.label}
      hint={hintOf(field)}
      problem={told}
      kind={isDecimal ? 'decimal' : 'text'}
      lines={field.long ? 4 : undefined}
      required={field.required}
      value={isMine ? typed.text : textOf(value)}
      onInput={type}
    />
  )
}

/** One of a few, yes or no; where it may be left out, also neither. */
export function Choice({ field, value, problems, onSet }: EditorProps): preact.JSX.Element {
  const [refused, setRefused] = useState<string | null>(null)
  const isFlag = field.kind === 'flag'
  const named = isFlag
    ? [
        { value: 'true', label: 'Yes' },
        { value: 'false', label: 'No' }
      ]
    : (field.choices ?? []).map((choice) => ({ value: choice, label: choice }))
  const choices = field.required ? named : [{ value: '', label: 'Not said' }, ...named]
  const said = textOf(value)
  const choose = (chosen: string): void =>
    setRefused(onSet(chosen === '' ? undefined : isFlag ? chosen === 'true' : chosen))
  const told = [...(refused === null ? [] : [refused]), ...problems.map(sayOf)]
  const isOther = said !== '' && !named.some((choice) => choice.value === said)
  return (
    <Told hint={hintOf(field)} told={told}>
      <ChoiceRow legend={field.label} choices={choices} value={said} onChoose={choose} />
      {isOther ? <p class="soft">{`Written: ${said}`}</p> : null}
    </Told>
  )
}

type ToldProps = { hint: string; told: readonly string[]; children: preact.ComponentChildren }

/** A thing that has no field of the browser's own, with its help and what is wrong with it. */
export function Told({ hint, told, children }: ToldProps): preact.JSX.Element {
  return (
    <div class="workshop-told field" data-problem={told.length > 0 ? '' : undefined}>
      {children}
      {hint === '' ? null : <p class="field-hint">{hint}</p>}
      {told.length === 0 ? null : (
        <p class="field-problem" role="alert">
          {told.join(' ')}
        </p>
      )}
    </div>
  )
}
