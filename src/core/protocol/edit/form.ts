// Forms made from the JSON Schema that the reader's own schemas give, so that a new word or field has its form at once.
import { parse } from 'yaml'
import { protocolJsonSchema } from '../json-schema.ts'
import { type StepWord, stepWords } from '../model.ts'
import { emptyScope } from '../read/header.ts'
import { Reading } from '../reading.ts'
import { stepKinds } from '../schema/step-kinds.ts'
import { capital } from '../words.ts'
import { type ConstructWord, constructWords } from '../written.ts'
import { type Data, type Fields, isFields } from './data.ts'

export type FormKind = StepWord | ConstructWord | 'header' | 'input' | 'material' | 'gap'
export const formKinds: readonly FormKind[] = ['header', 'input', 'material', 'gap', ...stepWords, ...constructWords]

export type FieldKind = 'text' | 'number' | 'quantity' | 'choice' | 'flag' | 'list' | 'record'

export type Field = {
  /** As it is written in the text; '' for the items of a list, and for names that are free to choose. */
  name: string
  label: string
  kind: FieldKind
  choices?: string[]
  required: boolean
  /** A value that the reader takes. */
  example: Data
  /** One or two sentences; '' where the name says it all. */
  help: string
  /** A text of several lines. */
  long?: true
  /** Of a record: its own fields. */
  fields?: Field[]
  /** Of a list: its items. Of a record with names that are free to choose: the value under each name. */
  of?: Field
  /** A list of one may be written as the one thing. */
  alone?: true
  /** A list of steps: shown as rows, not as a field. */
  steps?: true
  /** Other kinds of value it takes too, for example the name of an input in place of a number. */
  or?: Field[]
}

type Json = { [key: string]: Json } & {
  $ref?: string
  type?: string
  description?: string
  enum?: string[]
  const?: Data
  anyOf?: Json[]
  items?: Json
  required?: string[]
  minimum?: number
}

const schema = JSON.parse(JSON.stringify(protocolJsonSchema())) as Json & { properties: Json; $defs: Json }
const forms = new Map<FormKind, Field[]>()

/** The fields of a step word, a construct, the header, an input, a material or a gap, in the order in which they are
 * best written. The same list each time: not to be changed. */
export function formOf(kind: FormKind): Field[] {
  const known = forms.get(kind)
  if (known) return known
  const fields = fieldsOf(objectOf(schemaOf(kind)))
  // A name stands first, as people write it.
  const made = [...fields.filter(({ name }) => name === 'id'), ...fields.filter(({ name }) => name !== 'id')]
  forms.set(kind, made)
  return made
}

/** One line for a list of what can be added; '' for the header and its parts. */
export function aboutOf(kind: FormKind): string {
  return schemaOf(kind).description ?? ''
}

/** The field that a bare value stands for: `hold: 6 min`, `salt: powder`. Null: there is none. */
export function shortOf(kind: string): string | null {
  if (kind === 'material') return 'kind'
  return Object.hasOwn(stepKinds, kind) ? stepKinds[kind as StepWord].short : null
}

/** What a new one begins with: each required field at its example; a step that requires none has its short field. */
export function startingValues(kind: FormKind): Fields {
  const form = formOf(kind)
  const needed = form.filter(({ required }) => required)
  const short = form.find(({ name }) => name === shortOf(kind))
  // Without an answer of its own a question asks nothing, and a wait waits for nothing.
  const wanted = needed.length === 0 && short && !standsAlone(kind) ? [short] : needed
  const one = ({ alone, of, example }: Field): Data => (alone && of ? of.example : example)
  const values: Fields = Object.fromEntries(wanted.map((field) => [field.name, one(field)]))
  if (kind === 'for each') values.band = { from: 1, to: 5 }
  if (kind === 'gap') values['at most'] = '2 h'
  if (kind === 'alongside') return { ...values, first: [{ do: 'Stir the bath' }] }
  return values
}

function standsAlone(kind: FormKind): boolean {
  if (!(stepWords as readonly string[]).includes(kind)) return true
  const reading = new Reading(emptyScope)
  stepKinds[kind as StepWord].draft({}, reading)
  return reading.problems.length === 0
}

function schemaOf(kind: FormKind): Json {
  const steps = (schema.$defs.step as Json).anyOf?.[1]?.properties ?? ({} as Json)
  switch (kind) {
    case 'header':
      return schema
    case 'input':
      return resolved(resolved(schema.properties.inputs as Json).additionalProperties as Json)
    case 'material':
      return resolved(resolved(schema.properties.materials as Json).additionalProperties as Json)
    case 'gap':
      return resolved(resolved(schema.properties.gaps as Json).items as Json)
    default:
      return resolved(steps[kind] as Json)
  }
}

function resolved(json: Json): Json {
  if (json.$ref === undefined) return json
  return schema.$defs[json.$ref.replace('#/$defs/', '')] as Json
}

/** Of the ways in which a thing can be written, the one with named fields. */
function objectOf(json: Json): Json {
  if (json.type === 'object') return json
  return (json.anyOf ?? []).map(resolved).find(({ type }) => type === 'object') ?? json
}

function fieldsOf(object: Json): Field[] {
  const named = Object.entries(object.properties ?? {}).map(([name, json]) =>
    fieldOf(name, json as Json, object.required?.includes(name) === true)
  )
  const free = object.additionalProperties as Json | undefined | boolean
  return isFields(free as Data) ? [...named, fieldOf('', free as Json, false)] : named
}

function fieldOf(name: string, given: Json, required: boolean): Field {
  const json = resolved(given)
  const [help, example] = helpAndExample(json.description ?? '')
  const label = name === 'ph' ? 'pH' : capital(name)
  const { example: inner, help: innerHelp = '', ...shape } = shapeOf(json, example)
  const field = { name, label, required, help: help === '' ? innerHelp : help, ...shape }
  return { ...field, example: example ?? inner ?? exampleOf(field, json) }
}

/** What the kind of a value says of its field; in a union, that of the way that comes first. */
type Shape = Omit<Field, 'name' | 'label' | 'required' | 'help' | 'example'> & { help?: string; example?: Data }

function shapeOf(json: Json, example: Data | undefined): Shape {
  if (json.anyOf) return unionOf(json.anyOf.map(resolved), example)
  if (json.enum) return { kind: 'choice', choices: json.enum }
  switch (json.type) {
    case 'boolean':
      return { kind: 'flag' }
    case 'number':
    case 'integer':
      return { kind: 'number' }
    case 'array':
      if (isStepList(json)) return { kind: 'list', steps: true }
      return { kind: 'list', of: fieldOf('', json.items ?? ({} as Json), false) }
    case 'object': {
      const free = json.additionalProperties as Json | undefined
      if (json.properties === undefined && isFields(free as Data)) {
        return { kind: 'record', of: fieldOf('', free as Json, false) }
      }
      return { kind: 'record', fields: fieldsOf(json) }
    }
    default:
      // What may hold a line end has a pattern that says so, and is long.
      return Number(json.maxLength) >= 1000 ? { kind: 'text', long: true } : { kind: 'text' }
  }
}

function isStepList({ items }: Json): boolean {
  return items?.$ref === '#/$defs/step'
}

function unionOf(options: Json[], example: Data | undefined): Shape {
  const [first, second] = options
  if (options.length === 2 && first && second) {
    if (first.type === 'string' && second.type === 'number') return { kind: 'quantity' }
    if (second.type === 'array' && JSON.stringify(resolved(second.items as Json)) === JSON.stringify(first)) {
      return { kind: 'list', alone: true, of: fieldOf('', first, false) }
    }
  }
  const fields = options.map((option) => fieldOf('', option, false))
  const fitting = fields.find((field) => example !== undefined && fits(field, example)) ?? fields[0]
  if (!fitting) return { kind: 'text' }
  const { name, label, required, ...shape } = fitting
  return { ...shape, or: fields.filter((field) => field !== fitting) }
}

function fits({ kind }: Field, example: Data): boolean {
  if (Array.isArray(example)) return kind === 'list'
  if (isFields(example)) return kind === 'record'
  return typeof example === 'number' ? kind === 'number' : kind === 'text' || kind === 'choice'
}

/** "How long. For example: 6 min" is both a help and an example; the example is read as it would be in a file. */
function helpAndExample(description: string): [string, Data | undefined] {
  const cut = description.lastIndexOf('For example: ')
  if (cut < 0) return [description, undefined]
  return [description.slice(0, cut).trim(), parse(description.slice(cut + 'For example: '.length)) as Data]
}

/** Where the schema gives no example: what its shape gives. */
function exampleOf(shape: Shape, json: Json): Data {
  if (json.const !== undefined) return json.const
  switch (shape.kind) {
    case 'choice':
      return shape.choices?.[0] ?? ''
    case 'flag':
      return true
    case 'number':
      return json.minimum ?? 1
    case 'list':
      return shape.of ? [shape.of.example] : []
    case 'record':
      return Object.fromEntries((shape.fields ?? []).filter((f) => f.required).map((f) => [f.name, f.example]))
    case 'text':
    case 'quantity':
      return 'text'
  }
}
