import { describe, expect, it } from 'vitest'
import type { BatchRecord } from '../../../src/core/record/record.ts'
import { recordOf } from '../../../src/core/record/record-of.ts'
import { cardTextFrom, skeinCards } from '../../../src/core/record/skein-card.ts'
import { Bench, identity } from '../pot/given.ts'
import { act, dose, programme, ramp, wait } from '../pot/programmes.ts'
import { mossFinished } from './moss.ts'

const text = { fibre: '75 % wool, 25 % nylon', metres: '400 m', care: 'Hand wash, cool', bleed: 'trace' }

/** A batch whose every secret is a word or a figure that stands nowhere else. */
function secretive(): BatchRecord {
  const bench = new Bench()
  const steps = [
    dose('Q1', 37.25, 'stock Zebra', { knot: 'Quagga dye', call: 'Pour Zebra' }),
    ramp('warm', 20, 83, 2, { knot: 'Warmish' }),
    dose('Q2', 41.75, 'acid Xylo', { knot: 'Xylo acid' }),
    wait('Tarry', 53 * 60_000, { knot: 'Long tarry' }),
    act('off', { word: 'heat', heat: 'off', knot: 'Heat off' })
  ]
  bench.do({
    type: 'Start',
    pot: {
      ...identity(),
      skeins: [
        { tag: 'S1', massG: 101 },
        { tag: 'S2', massG: 99 }
      ],
      by: 'dyer A'
    },
    protocol: { title: 'Hidden Method', text: 'strandline: 1 # Okapi', version: 'v9', from: 'file' },
    programme: programme(steps, [], {
      title: 'Hidden Method',
      inputs: [{ id: 'i', label: 'Bongo depth', shown: '1.7 %' }]
    }),
    checks: [],
    cautionsShown: []
  })
  bench.pass(1)
  bench.do({ type: 'MarkDone', path: 'Q1' })
  bench.pass(32)
  bench.do({ type: 'ReadTemperature', tempC: 83 })
  bench.do({ type: 'MarkDone', path: 'Q2' })
  bench.do({ type: 'WriteNote', text: 'Gnu note' })
  return recordOf(bench.entries) as BatchRecord
}

/** All words and figures by which somebody could dye it again. */
function recipeOf(record: BatchRecord): string[] {
  const { protocol, programme: plan, steps, amounts, notes } = record
  return [
    protocol.title,
    protocol.text,
    protocol.version,
    plan.title,
    ...plan.inputs.flatMap((input) => [input.label, input.shown]),
    ...steps.flatMap((step) => [step.label, step.call, step.sentence, step.said.at.slice(11, 16)]),
    ...amounts.flatMap((amount) => [amount.of, String(amount.planned?.value), amount.planned?.asEntered ?? amount.of]),
    ...notes.map((note) => note.text),
    '53 min',
    '83',
    'acid',
    'stock'
  ]
}

describe('a skein card', () => {
  it('never tells the recipe: no stock, acid, amount, heat, time, note or method of the batch is on it', () => {
    const record = secretive()
    const secrets = recipeOf(record)
    expect(secrets).toContain('stock Zebra')
    expect(secrets).toContain('37.25')
    for (const card of skeinCards(record, text)) {
      const shown = JSON.stringify(card)
      for (const secret of secrets) expect(shown, secret).not.toContain(secret)
    }
  })

  it('has what the record knows and what the dyer wrote, one card for each skein', () => {
    const cards = skeinCards(secretive(), text)
    expect(cards.map((card) => card.skein)).toEqual([
      { tag: 'S1', massG: 101 },
      { tag: 'S2', massG: 99 }
    ])
    expect(cards[0]).toMatchObject({
      colourway: 'Moss',
      dyeLot: '2031-06-14 Moss',
      day: '2031-06-14',
      dyer: 'dyer A',
      ...text
    })
  })

  it('begins with the fibre as it was told, and with a bleed test only where one was judged', () => {
    const record = recordOf(mossFinished().entries) as BatchRecord
    expect(cardTextFrom(record)).toEqual({ fibre: 'wool', metres: '', care: '', bleed: '' })
    const [first] = record.judgements
    if (!first) throw new Error('nothing was judged')
    const judgements = [
      { ...first, of: 'bleed test', grade: 'trace' },
      { ...first, of: 'bath', grade: 'strong' }
    ]
    expect(cardTextFrom({ ...record, judgements })).toMatchObject({ bleed: 'trace' })
  })
})
