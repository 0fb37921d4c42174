// Valid protocols by chance: every word, every construct, heats that are turned off, shares that stay within the whole.
import fc from 'fast-check'

type Json = null | string | number | boolean | Json[] | { [key: string]: Json }
type Steps = Json[]

const minutes = fc.integer({ min: 1, max: 90 })
const time = fc.oneof(
  minutes.map((n) => `${n} min`),
  minutes.map((n) => `${n}..${n + 5} min`),
  minutes.map((n) => `at least ${n} min`),
  fc.integer({ min: 5, max: 59 }).map((n) => `${n} s`)
)
const tempC = fc.integer({ min: 25, max: 98 })
const late = fc.constantFrom('shift', 'absorb', 'off-protocol')

/** Single steps that stand anywhere, heat on or off. */
const step: fc.Arbitrary<Json> = fc.oneof(
  time.map((t) => ({ hold: t })),
  fc.record({ for: time, late, at: tempC.map((c) => `${c} °C`) }).map((hold) => ({ hold })),
  fc
    .record({ until: fc.constantFrom('full steam', '40 °C', 'at least 10 min and until 60 °C') })
    .map((wait) => ({ wait })),
  fc.constantFrom('rinse', 'spin', 'turn', 'squeeze', 'enter', 'lift', 'photo', 'note', 'sample', 'dry'),
  time.map((t) => ({ soak: t })),
  time.map((t) => ({ air: t })),
  fc.constant({ check: { grade: 'bath' } }),
  fc.constant({ measure: 'pH' }),
  fc.constant({ lower: '1/4 of the skein' }),
  fc.constant({ transfer: 'another pot' }),
  fc
    .record({
      amount: fc.constantFrom('30 mL of acid', '1 % owf of acid', '1 g/L of salt'),
      yarn: fc.constant('lifted')
    })
    .map((add) => ({ add })),
  fc.string({ minLength: 1, maxLength: 20, unit: fc.constantFrom(...'abcdefgh äöü') }).map((t) => ({ do: `x${t}` }))
)

const heated = (inner: Steps, c: number): Steps => [
  { heat: { to: `${c} °C`, rate: '2 °C/min' } },
  ...inner,
  { heat: 'off' }
]

const construct = (inner: fc.Arbitrary<Steps>): fc.Arbitrary<Steps> =>
  fc.oneof(
    fc.record({ times: fc.integer({ min: 1, max: 4 }), steps: inner }).map((repeat): Steps => [{ repeat }]),
    fc
      .record({ band: fc.record({ from: fc.constant(1), to: fc.integer({ min: 1, max: 4 }) }), steps: inner })
      .map((each): Steps => [{ 'for each': each }]),
    fc.record({ jar: fc.constant<Json>(['J1', 'J2']), steps: inner }).map((each): Steps => [{ 'for each': each }]),
    fc
      .record({
        ask: fc.constantFrom<Json>({ grade: 'bath', enough: 'trace' }, { question: 'Enough?' }, { reached: '80 °C' }),
        'at most': fc.integer({ min: 1, max: 3 }),
        steps: inner,
        otherwise: inner
      })
      .map((until): Steps => [{ until }]),
    fc
      .record({
        ask: fc.constant('Which?'),
        answers: fc.record({ one: inner, two: fc.constant([] as Steps), three: inner })
      })
      .map((choice): Steps => [{ choice }]),
    fc.record({ left: inner, right: inner }).map((alongside): Steps => [{ alongside }]),
    fc.tuple(inner, tempC).map(([steps, c]) => heated(steps, c))
  )

/** Loops of one kind can't stand in each other, so nested ones by chance are told and left out by the caller. */
const sequence = fc.letrec<{ steps: Steps }>((tie) => ({
  steps: fc.oneof(
    { maxDepth: 3, depthIdentifier: 'nesting' },
    fc.array(step, { minLength: 1, maxLength: 4 }),
    fc.tuple(construct(tie('steps')), fc.array(step, { maxLength: 2 })).map(([a, b]) => [...a, ...b])
  )
})).steps

/** Shares of the acid that stay within the whole, spread over the steps. */
const shares = fc.constantFrom<Steps>(
  [],
  [{ add: '1/2 of dye' }, { add: '1/2 of dye' }],
  [{ add: '1/3 of dye' }, { add: '1/3 of dye' }, { add: 'the rest of dye' }],
  [{ add: '1/7 of dye' }, { add: '40 % of dye' }, { add: 'the rest of dye' }],
  [{ add: 'all of dye' }]
)

export const anyProtocol = fc
  .record({ before: sequence, shares, after: sequence, percent: fc.integer({ min: 1, max: 40 }) })
  .map(({ before, shares, after, percent }) =>
    JSON.stringify({
      strandline: 1,
      title: 'By chance',
      liquor: '20:1',
      materials: {
        acid: { kind: 'acid', strength: '5 %' },
        salt: 'powder',
        dye: { kind: 'stock', strength: '1 %', amount: `${percent / 10} % owf` }
      },
      steps: [...before, ...shares, ...after]
    })
  )
