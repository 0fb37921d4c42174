// What stands above the steps.
import * as z from 'zod/mini'
import { flag, idPattern, line, name, oneOf, paragraph, quantity, sequence, some } from './fields.ts'
import { lateRules } from './shared.ts'

export const inputKinds = [
  'number',
  'count',
  'mass',
  'volume',
  'temperature',
  'time',
  'percent',
  'choice',
  'text'
] as const
export const materialKinds = ['stock', 'acid', 'water', 'powder', 'other'] as const

const input = z.strictObject(
  {
    ask: line(80, 'The question. For example: How many bands are tied off?'),
    kind: oneOf(inputKinds, 'What is asked for.'),
    default: z.optional(quantity('5', 'What stands there before the dyer types.')),
    least: z.optional(quantity('1', 'The lowest that is taken.')),
    most: z.optional(quantity('12', 'The highest that is taken.')),
    choices: z.optional(
      z
        .array(line(40, 'A choice. For example: plain'))
        .check(z.minLength(2), z.maxLength(12))
        .register(z.globalRegistry, { description: 'What can be chosen. For example: [plain, treated]' })
    )
  },
  { error: 'write fields such as {ask: How many bands?, kind: count, default: 5}' }
)

const materialName = z.string().check(z.regex(/^[\p{L}\p{N}][\p{L}\p{N} ._'’-]{0,39}$/u))
const kindOnly = z.enum(materialKinds)
const materialFields = z.strictObject({
  kind: oneOf(materialKinds, 'What it is.'),
  label: z.optional(line(40, 'What it is called; without it, its name. For example: vinegar')),
  strength: z.optional(quantity('5 %', 'How strong it is: % w/v, or % w/w with a density.')),
  density: z.optional(
    z
      .number({ error: 'write grams for a millilitre, for example 1.06' })
      .check(z.gte(0.5), z.lte(2))
      .register(z.globalRegistry, { description: 'Its density, g/mL. For example: 1.06' })
  ),
  amount: z.optional(quantity('2 % owf', 'The whole, of which steps take shares.')),
  parts: z.optional(
    z
      .record(materialName, z.number({ error: 'write a number of parts' }).check(z.gt(0), z.lte(1000)))
      .register(z.globalRegistry, {
        description: 'A mixed stock: the stocks it is mixed from, in parts. For example: {stock Y: 3, stock B: 1}'
      })
  )
})
const material = z.union([kindOnly, materialFields], {
  error: `write ${materialKinds.join(', ')}, or fields such as {kind: acid, strength: 5 %}`
})

const gap = z.strictObject(
  {
    from: name('The moment it begins. For example: A1'),
    to: name('The moment it ends. For example: A2'),
    'at least': z.optional(quantity('10 min', 'The shortest it may be.')),
    'at most': z.optional(quantity('2 h', 'The longest it may be.')),
    late: z.optional(oneOf(lateRules, 'What it means when it was too long. Without it, the batch is marked.'))
  },
  { error: 'write fields such as {from: A1, to: A2, at most: 2 h}' }
)

/** Keys that are free to choose are checked by a pattern, so that both the reader and the JSON Schema refuse the same. */
function named<T extends z.ZodMiniType>(
  key: z.ZodMiniString,
  value: T,
  error: string
): z.ZodMiniRecord<z.ZodMiniString, T> {
  return z.record(key, value, { error })
}

export const header = z.strictObject(
  {
    strandline: z
      .literal(1, { error: 'write strandline: 1' })
      .register(z.globalRegistry, { description: 'The version of the language. For example: 1' }),
    title: line(80, 'What the protocol is called. For example: Dip gradient'),
    about: z.optional(paragraph(2000, 'What it does. For example: A skein goes into a hot bath band by band')),
    use: z.optional(paragraph(2000, 'When to use it. For example: To shade a skein along its length')),
    trouble: z.optional(paragraph(2000, 'What usually goes wrong. For example: A cold bath makes the next band paler')),
    demo: z.optional(flag('The values are invented for a demonstration.')),
    kitchen: z.optional(oneOf(['us', 'metric', 'imperial'], 'Whose cups and spoons a bare cup or tbsp means.')),
    late: z.optional(oneOf(lateRules, 'What lateness means where a step does not say it.')),
    liquor: z.optional(quantity('30:1', 'The liquor ratio, mL of bath for each g of goods.')),
    start: z.optional(quantity('20 °C', 'How warm the bath is at the beginning.')),
    room: z.optional(quantity('20 °C', 'How warm the room is.')),
    parent: z.optional(oneOf(['none', 'batch', 'bath'], 'Whether it starts from an earlier batch or bath.')),
    cautions: z.optional(
      some(line(200, 'A caution. For example: Keep the fan on'), 20, 'Cautions for the whole of it.')
    ),
    inputs: z.optional(
      named(z.string().check(z.regex(idPattern)), input, 'write names, each with its question').register(
        z.globalRegistry,
        {
          description:
            'What is asked when a pot is started. For example: {bands: {ask: How many bands?, kind: count, default: 5}}'
        }
      )
    ),
    materials: z.optional(
      named(materialName, material, 'write names, each with its kind').register(z.globalRegistry, {
        description: 'What steps add. For example: {acid: {kind: acid, strength: 5 %}, salt: powder}'
      })
    ),
    steps: sequence('The steps, in their order.'),
    gaps: z.optional(
      z.array(gap, { error: 'write a list such as [{from: A1, to: A2, at most: 2 h}]' }).register(z.globalRegistry, {
        description:
          'The time between two moments: not before, not after. For example: [{from: A1, to: A2, at most: 2 h}]'
      })
    )
  },
  { error: 'begin with strandline: 1, a title and steps' }
)

export type Header = z.output<typeof header>
