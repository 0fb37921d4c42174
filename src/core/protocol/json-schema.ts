// The JSON Schema of the language, made from the same schemas that the reader uses, for editors that complete and check.
import * as z from 'zod/mini'
import { stepWords } from './model.ts'
import { constructSchemas } from './schema/construct-schemas.ts'
import { sequences } from './schema/fields.ts'
import { header } from './schema/header.ts'
import type { StepKind } from './schema/step-kind.ts'
import { stepKinds } from './schema/step-kinds.ts'
import { constructWords } from './written.ts'

type Json = Record<string, unknown>

const constructsAbout: Record<(typeof constructWords)[number], string> = {
  repeat: 'Does its steps a number of times.',
  'for each': 'Does its steps once for each band, jar, skein, colour or item.',
  until: 'Asks; while the answer is not good enough, does its steps and asks again, at most a number of times.',
  choice: 'Asks, and goes on with the steps of the answer.',
  alongside: 'Runs branches at the same time; goes on when all of them are done.'
}

/** Draft 2020-12. What it refuses the reader refuses too; what only makes sense in the whole, only the reader can tell. */
export function protocolJsonSchema(): Json {
  const properties: Json = {}
  for (const word of stepWords) properties[word] = formsOf(stepKinds[word])
  for (const word of constructWords) {
    properties[word] = { description: constructsAbout[word], ...json(constructSchemas[word]) }
  }
  const step = {
    description: 'One step: its word and its fields.',
    anyOf: [
      { enum: stepWords.filter((word) => mayStandAlone(stepKinds[word])) },
      { type: 'object', properties, additionalProperties: false, minProperties: 1, maxProperties: 1 }
    ]
  }
  const shared = new SharedFields()
  const root = shared.fold({ ...json(header), $defs: { step } })
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Strandline protocol',
    ...root,
    $defs: { ...(root.$defs as Json), ...shared.defs }
  }
}

/** Fields that many words have are written once, under their name: the file is a sixth of the size. */
class SharedFields {
  readonly defs: Json = {}
  readonly #names = new Map<string, string>()

  fold<T>(node: T): T {
    if (Array.isArray(node)) return node.map((item) => this.fold(item)) as T
    if (typeof node !== 'object' || node === null) return node
    const entries = Object.entries(node).map(([key, value]) => [
      key,
      key === 'properties' ? this.#fields(value as Json) : this.fold(value)
    ])
    return Object.fromEntries(entries) as T
  }

  #fields(fields: Json): Json {
    return Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, this.#field(name, field as Json)]))
  }

  #field(name: string, field: Json): Json {
    const folded = this.fold(field)
    const text = JSON.stringify(folded)
    if (text.length < 120) return folded
    let def = this.#names.get(text)
    if (def === undefined) {
      const base = name.replaceAll(' ', '-')
      def = base
      for (let no = 2; Object.hasOwn(this.defs, def) || def === 'step'; no++) def = `${base}-${no}`
      this.#names.set(text, def)
      this.defs[def] = folded
    }
    return { $ref: `#/$defs/${def}` }
  }
}

/** Fields, or the one value that stands for the word's short field, or nothing where no field is needed. */
function formsOf(kind: StepKind): Json {
  const forms: Json[] = [json(kind.schema)]
  const short = kind.short === null ? undefined : kind.fields[kind.short]
  // A map is always read as the fields of the word.
  if (short) forms.push({ allOf: [json(short), { not: { type: 'object' } }] })
  if (mayStandAlone(kind)) forms.push({ type: 'null' })
  return { description: kind.about, anyOf: forms }
}

function mayStandAlone(kind: StepKind): boolean {
  return z.safeParse(kind.schema, {}).success
}

function json(schema: z.ZodMiniType): Json {
  const made = z.toJSONSchema(schema, {
    io: 'input',
    override: ({ zodSchema, jsonSchema }) => {
      if (sequences.has(zodSchema as unknown as z.ZodMiniType)) jsonSchema.items = { $ref: '#/$defs/step' }
    }
  })
  const { $schema, ...rest } = made as Json
  return rest
}
