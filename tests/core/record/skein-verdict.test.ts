import { describe, expect, it } from 'vitest'
import { foundSay, foundShort, foundWord, latestByBatch } from '../../../src/core/record/skein-verdict.ts'
import { judgement, seenEvent, splitEvent, T1 } from './judged-skein.ts'

const lighter = splitEvent('moss', { verdict: 'only-lighter', turn: null })

describe('a verdict on a skein in words', () => {
  it.each([
    ['a split', splitEvent('moss'), 'Split. Turns yellower from band 4', 'Split, yellower from 4', 'Split'],
    ['only lighter', lighter, 'Only lighter', 'Only lighter', 'Only lighter'],
    ['what an eye said', seenEvent('moss'), 'By eye: only lighter', 'By eye: only lighter', 'Only lighter']
  ])('says %s in a sentence, on a tag and in a word', (_, found, sentence, short, word) => {
    const one = { found }
    expect([foundSay(one), foundShort(one), foundWord(one)]).toEqual([sentence, short, word])
  })
})

describe('the verdict that holds of a batch', () => {
  it('is the one found last, each batch for itself, and of no batch there is none', () => {
    const all = [
      judgement(lighter, T1 + 2),
      judgement(splitEvent('moss'), T1 + 1),
      judgement(splitEvent(null)),
      judgement(seenEvent('fern'))
    ]
    const latest = latestByBatch(all)
    expect([...latest.keys()]).toEqual(['moss', 'fern'])
    expect(latest.get('moss')?.found).toEqual(lighter)
  })
})
