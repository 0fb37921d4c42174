import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { anything, choicesIn, findAmong, foundIn, lookable } from '../../../src/core/record/find.ts'
import { T0 } from '../pot/given.ts'
import { mossFinished } from './moss.ts'

const line = (no: number, protocolTitle = 'Dip gradient') => ({
  batchName: `2031-06-14 Colour ${no}`,
  colourway: `Colour ${no}`,
  protocolTitle,
  startedAtMs: T0 + no
})

function moss() {
  const bench = mossFinished()
  bench.do({ type: 'WriteNote', text: 'Très sombre au début' })
  bench.do({ type: 'TellResult', what: 'verdict', own: false, value: { kind: 'text', text: 'near' } })
  return lookable(line(1), foundIn('pot-a', bench.entries, bench.entries.length), 'Split')
}
const found = (wanted: Partial<typeof anything>, all = [moss(), lookable(line(2, 'Solid'), null)]): number[] =>
  findAmong(all, { ...anything, ...wanted }).map(({ startedAtMs }) => startedAtMs - T0)

describe('finding a batch', () => {
  it.each<[string, Partial<typeof anything>, number[]]>([
    ['nothing asked', {}, [1, 2]],
    ['a word of its name', { words: 'colour' }, [1, 2]],
    ['words in any order, in part', { words: 'grad COL 1' }, [1]],
    ['a word of a note, without its accents', { words: 'tres debut' }, [1]],
    ['a stock', { stock: 'vinegar' }, [1]],
    ['a yarn', { yarn: 'wool' }, [1]],
    ['a protocol', { protocol: 'Solid' }, [2]],
    ['a verdict', { verdict: 'near' }, [1]],
    ['a verdict on its skein', { skein: 'Split' }, [1]],
    ['a verdict on its skein that none has', { skein: 'Only lighter' }, []],
    ['a day and later', { fromMs: T0 + 2 }, [2]],
    ['before a day', { toMs: T0 + 2 }, [1]],
    ['a word that is nowhere', { words: 'lilac' }, []],
    ['parts that fit different batches', { protocol: 'Solid', yarn: 'wool' }, []]
  ])('by %s', (_, wanted, numbers) => {
    expect(found(wanted)).toEqual(numbers)
  })

  it('offers what there is to choose from', () => {
    expect(choicesIn([moss(), lookable(line(2, 'Solid'), null)])).toEqual({
      stock: ['vinegar'],
      yarn: ['wool'],
      protocol: ['Dip gradient', 'Solid'],
      verdict: ['near'],
      skein: ['Split']
    })
  })

  it('finds a corrected value, not the old one', () => {
    const bench = mossFinished()
    const entry = { writerId: 'w', seq: 1 }
    bench.do({ type: 'Correct', entry, field: 'pot.fibre', was: 'wool', now: 'silk', why: 'label' })
    const all = [lookable(line(1), foundIn('pot-a', bench.entries, 1))]
    expect(found({ yarn: 'silk' }, all)).toEqual([1])
    expect(found({ yarn: 'wool' }, all)).toEqual([])
  })

  it('is looked through as nothing where its start can’t be read', () => {
    expect(foundIn('pot-a', [], 3)).toMatchObject({ entries: 3, stocks: [], yarn: '' })
  })

  it('only ever narrows with another word, and keeps the order', () => {
    const all = Array.from({ length: 60 }, (_, no) => lookable(line(no, no % 2 ? 'Solid' : 'Dip gradient'), null))
    fc.assert(
      fc.property(fc.constantFrom('colour', 'dip', '1', 'sol', '2031'), fc.constantFrom('3', 'o', 'x'), (one, two) => {
        const few = found({ words: `${one} ${two}` }, all)
        const many = found({ words: one }, all)
        expect(many).toEqual(expect.arrayContaining(few))
        expect(few).toEqual([...few].sort((a, b) => a - b))
      })
    )
  })
})
