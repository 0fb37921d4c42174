// From what is typed into a field of a form to the value in the text, and back.
import type { Data } from './data.ts'
import type { Field } from './form.ts'
import { words } from './summary.ts'

export type Typed = { ok: true; value: Data } | { ok: false; problem: string }

/** The value that some typed text means in a field: a number where the field holds numbers, true or false in a flag, one
 * of its choices. A list takes one item here, a record none: they have fields of their own. Refuses in words what the
 * field can't hold; whether a quantity has the right unit, only the reader can tell. */
export function valueFrom(field: Field, typed: string): Typed {
  const text = field.long ? typed.replace(/\r\n?/g, '\n') : typed.trim()
  if (text.trim() === '') return { ok: false, problem: `${field.label} is empty.` }
  switch (field.kind) {
    case 'text':
      return { ok: true, value: text }
    case 'quantity':
      // A bare number is written without quotes; what its unit is, the reader asks.
      return { ok: true, value: numberIn(text) ?? text }
    case 'number': {
      const number = numberIn(text)
      if (number !== null) return { ok: true, value: number }
      return elsewhere(field, text, `${field.label} is a number, for example ${words(field.example)}.`)
    }
    case 'choice':
      if (field.choices?.includes(text)) return { ok: true, value: text }
      return elsewhere(field, text, `${field.label} is one of ${field.choices?.join(', ')}.`)
    case 'flag':
      if (text === 'true' || text === 'false') return { ok: true, value: text === 'true' }
      return { ok: false, problem: `${field.label} is true or false.` }
    case 'list':
      if (field.of && !field.steps) return valueFrom({ ...field.of, label: field.label }, text)
      return { ok: false, problem: `${field.label} is a list of steps.` }
    case 'record':
      return elsewhere(field, text, `${field.label} has fields of its own.`)
  }
}

/** What the field takes beside its usual kind: the name of an input in place of a number. */
function elsewhere(field: Field, text: string, problem: string): Typed {
  const other = field.or?.find(({ kind }) => kind === 'text' || kind === 'choice')
  return other ? valueFrom({ ...other, label: field.label }, text) : { ok: false, problem }
}

/** A number as JSON writes it, which is how YAML reads it too; null: it is something else. */
function numberIn(text: string): number | null {
  return /^-?(?:0|[1-9]\d{0,14})(?:\.\d{1,15})?$/.test(text) ? Number(text) : null
}
