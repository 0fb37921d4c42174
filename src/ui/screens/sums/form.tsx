// The one form, for whatever a sum asks for.
import { useEffect, useState } from 'preact/hooks'
import type { Units } from '../../../core/quantity/index.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { SelectField, TextField } from '../../parts/field.tsx'
import { Pad } from '../../parts/pad.tsx'
import type { Cell, CellField, CellFields, Choice, Quantity, Row, Rows, Typed } from './field.ts'
import { type Answer, echoOf, type Place } from './reading.ts'
import type { Sum } from './sum.ts'
import { freshRow } from './typed.ts'

type Props = { sum: Sum; typed: Typed; units: Units; answer: Answer; change: (typed: Typed) => void }

/** Half a number is no mistake yet: what is wrong with it is told when the fingers rest. */
const REST_MS = 1200

export function Form({ sum, typed, units, answer, change }: Props): preact.JSX.Element {
  const [typing, setTyping] = useState<Place | null>(null)
  useEffect(() => {
    if (typing === null) return
    const rest = setTimeout(() => setTyping(null), REST_MS)
    return () => clearTimeout(rest)
  }, [typing, typed])
  const around: Around = {
    units,
    problem: (place) => (answer.kind === 'wrong' && place !== typing ? (answer.problems.get(place) ?? null) : null),
    typing: setTyping
  }
  return (
    <>
      {Object.entries(sum.fields).map(([id, field]) => {
        if (field.when && !field.when(typed)) return null
        const there = typed[id]
        if (field.form === 'rows') {
          const list = Array.isArray(there) ? there : []
          const set = (next: Row[]): void => change({ ...typed, [id]: next })
          return <RowsOf key={id} id={id} field={field} list={list} set={set} {...around} />
        }
        if (!there || Array.isArray(there)) return null
        const set = (cell: Cell): void => change({ ...typed, [id]: cell })
        return <One key={id} place={id} field={field} cell={there} set={set} {...around} />
      })}
    </>
  )
}

type Around = { units: Units; problem: (place: Place) => string | null; typing: (place: Place | null) => void }

type OneProps = Around & { place: Place; field: CellField; cell: Cell; set: (cell: Cell) => void }

function One(props: OneProps): preact.JSX.Element {
  const { place, field, cell, set } = props
  switch (field.form) {
    case 'quantity':
      return <QuantityOf {...props} field={field} />
    case 'choice':
      return <ChoiceOf {...props} field={field} />
    case 'name':
      return (
        <TextField label={field.label} value={cell.text} id={idOf(place)} onInput={(text) => set({ ...cell, text })} />
      )
  }
}

function QuantityOf(props: OneProps & { field: Quantity<unknown> }): preact.JSX.Element {
  const { place, field, cell, set, units, problem, typing } = props
  const choices = [...new Set([...field.units(units), ...(cell.unit === '' ? [] : [cell.unit])])]
  const echo = echoOf(field, cell, units)
  const inRow = place.includes('.')
  const typedUnit = unitTyped(cell.text, choices)
  return (
    <TextField
      label={field.label}
      hint={[echo, field.hint].filter(Boolean).join(' · ') || undefined}
      kind="decimal"
      value={cell.text}
      id={idOf(place)}
      problem={problem(place)}
      onInput={(text) => {
        typing(place)
        set({ ...cell, text })
      }}
      onDone={() => typing(null)}
      unit={
        choices.length > 1 && (field.pickInRow || !inRow) ? (
          <UnitOf
            label={`Unit of ${field.label}`}
            choices={choices}
            value={typedUnit ?? cell.unit}
            choose={(unit) => set({ text: typedUnit === null ? cell.text : numberOf(cell.text), unit })}
          />
        ) : (
          (field.sign ?? (typedUnit === null ? cell.unit : undefined))
        )
      }
    />
  )
}

type UnitProps = { label: string; choices: readonly string[]; value: string; choose: (unit: string) => void }

/** A phone's keyboard of figures has no letters for a unit. '': a unit was typed all the same. */
function UnitOf({ label, choices, value, choose }: UnitProps): preact.JSX.Element {
  return (
    <select class="sum-unit" aria-label={label} value={value} onChange={(event) => choose(event.currentTarget.value)}>
      {value === '' ? <option value="">as typed</option> : null}
      {choices.map((unit) => (
        <option key={unit} value={unit}>
          {unit}
        </option>
      ))}
    </select>
  )
}

/** The unit that stands in the text: one of the choices, or '' for another; null: none. */
function unitTyped(text: string, choices: readonly string[]): string | null {
  const unit = text.slice(numberOf(text).length).trim().toLowerCase()
  if (unit === '') return null
  return choices.find((each) => each.toLowerCase() === unit) ?? ''
}

function numberOf(text: string): string {
  return /^[\s\d.,/+−-]*/.exec(text)?.[0].trim() ?? ''
}

/** Pads for a few; a list for more, or for long words. */
const PADS_MOST = 3

function ChoiceOf({ place, field, cell, set, problem }: OneProps & { field: Choice<string> }): preact.JSX.Element {
  const { label, options, hint } = field
  const choose = (text: string): void => set({ ...cell, text })
  const inRow = place.includes('.')
  if (options.length > PADS_MOST || inRow) {
    return (
      <SelectField
        label={label}
        hint={hint}
        options={options}
        value={cell.text}
        onChange={choose}
        id={idOf(place)}
        problem={problem(place)}
      />
    )
  }
  return (
    <div class="sum-choice">
      <ChoiceRow legend={label} choices={options} value={cell.text} onChoose={choose} />
      {hint ? <p class="field-hint">{hint}</p> : null}
    </div>
  )
}

type RowsProps = Around & { id: string; field: Rows<CellFields>; list: Row[]; set: (list: Row[]) => void }

function RowsOf({ id, field, list, set, ...around }: RowsProps): preact.JSX.Element {
  const { label, one, hint, most, least } = field
  const problem = around.problem(id)
  const next = Math.max(-1, ...list.map(({ key }) => key)) + 1
  return (
    <fieldset class="sum-rows">
      <legend>{label}</legend>
      {hint ? <p class="field-hint">{hint}</p> : null}
      <ol>
        {list.map((row, i) => (
          <li key={row.key} aria-label={`${one} ${i + 1}`}>
            <div class="sum-row">
              {Object.entries(field.each).map(([key, each]) => (
                <One
                  key={key}
                  place={`${id}.${i}.${key}`}
                  field={each}
                  cell={row.cells[key] ?? { text: '', unit: '' }}
                  set={(cell) =>
                    set(list.map((was) => (was === row ? { ...was, cells: { ...was.cells, [key]: cell } } : was)))
                  }
                  {...around}
                />
              ))}
            </div>
            <Pad
              className="sum-remove"
              label={`Remove ${one.toLowerCase()} ${i + 1}`}
              disabled={list.length <= least}
              onPress={() => set(list.filter((was) => was !== row))}
            >
              ×
            </Pad>
          </li>
        ))}
      </ol>
      {problem ? (
        <p class="field-problem" role="alert">
          {problem}
        </p>
      ) : null}
      <Pad disabled={list.length >= most} onPress={() => set([...list, freshRow(field, next, around.units)])}>
        {`Add: ${one.toLowerCase()} ${list.length + 1}`}
      </Pad>
    </fieldset>
  )
}

function idOf(place: Place): string {
  return `sum-${place.replaceAll('.', '-')}`
}
