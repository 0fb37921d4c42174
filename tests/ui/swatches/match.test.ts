import { describe, expect, it } from 'vitest'
import type { KeptReading } from '../../../src/core/record/swatch-readings.ts'
import {
  changeSay,
  deltaSay,
  doubtSay,
  figureSay,
  pairSay,
  sidesSay,
  worstSay
} from '../../../src/ui/parts/match-words.ts'
import { TYPED } from '../../../src/ui/screens/swatches/match/draft.ts'
import { against, ofBatch, sideOf } from '../../../src/ui/screens/swatches/match/side.ts'
import { matchOf } from '../../../src/ui/screens/swatches/match/use-match.ts'

const typed = (text: string) => sideOf({ key: TYPED, text, white: 'D65/2' }, [], new Map())

const kept = (key: string, batchId: string | null, l: number, other: Partial<KeptReading> = {}): KeptReading => ({
  key,
  atMs: Date.UTC(2031, 5, 14, 9, 5),
  tzOffsetMin: 0,
  batchId,
  by: 'photo',
  photos: 3,
  read: { white: 'D65/2', together: true, bands: [{ lab: { l, a: 10, b: 5 }, each: [], counts: true }] },
  refused: null,
  ...other
})
const names = new Map([['moss', '2031-06-14 Moss']])
const choose = (reading: KeptReading) => sideOf({ key: reading.key, text: '', white: 'D65/2' }, [reading], names)

function found(skein: string, target: string) {
  const answer = matchOf({ skein: typed(skein), target: typed(target) }).found
  if (answer === null) throw new Error('no match')
  return answer
}

describe('a match', () => {
  it('is told in a dyer’s words and in figures', () => {
    const { match, skein, target } = found('43 19 -30', '40 20 -30')
    expect(pairSay(match.whole)).toBe('Lighter, bluer, duller')
    expect(deltaSay(match.whole)).toMatch(/^ΔE00 \d\.\d$/)
    expect(changeSay(match.whole)).toMatch(
      /^As large as step 3 of the grey scale .*ISO 105-A02.*no grade of any standard/
    )
    expect(changeSay({ greyStep: 4.5 })).toContain('step 4-5 ')
    expect(doubtSay(match.whole)).toContain('not known')
    expect(sidesSay(match, skein, target)).toBe('Both are told against D65/2°.')
    expect(worstSay(match)).toBeNull()
    expect(skein.name).toBe('typed L*a*b* 43.0 19.0 -30.0')
  })

  it('of three readings a side has its doubt, and claims no more than that', () => {
    const near = found('40.2 20 10; 41 20 10; 40.8 20 10', '40 20 10; 40.9 20 10; 40.5 20 10').match.whole
    expect(pairSay(near)).toBe('No difference that these readings can show')
    expect(deltaSay(near)).toMatch(/ ± \d\.\d$/)
    expect(figureSay(-0.04, null)).toBe('0.0')
    // A doubt that is smaller than what is shown is not shown as none.
    expect(deltaSay({ de00: 2, sd: 0.01 })).toBe('ΔE00 2.0 ± 0.1')
    const far = found('60 20 10; 60.1 20 10; 60 20.1 10', '40 20 10; 40.1 20 10; 40 20 10.1').match.whole
    expect(pairSay(far)).toBe('Lighter')
    expect(doubtSay(far)).toContain('The difference is more than that.')
    const half = found('60 20 10; 60.1 20 10', '40 20 10').match.whole
    expect(doubtSay(half)).toContain('of what it is held against that is not known')
  })

  it('of several bands names the one that differs most', () => {
    const { match } = found('40 20 10\n50 20 10\n65 20 10', '41 20 10\n50 20 10\n60 20 10')
    expect(worstSay(match)).toMatch(/^Band 3 differs most: ΔE00 \d\.\d, lighter\.$/)
  })

  it('says that a camera is rough, and that a photo beside an instrument is', () => {
    const [photo, other] = [choose(kept('a', 'moss', 40)), choose(kept('b', null, 42, { by: 'instrument', photos: 0 }))]
    const say = (skein: typeof photo, target: typeof photo): string => {
      const answer = matchOf({ skein, target }).found
      return answer === null ? '' : sidesSay(answer.match, answer.skein, answer.target)
    }
    expect(say(photo, photo)).toContain('of two cameras')
    expect(say(photo, other)).toContain('One is of a photo')
  })
})

describe('a side of a match', () => {
  it('of a kept reading is called by its batch, when and how it was read', () => {
    expect(choose(kept('a', 'moss', 40)).side?.name).toBe('2031-06-14 Moss, 2031-06-14 09:05, 3 photos, one place')
    const { side } = choose(kept('a', null, 40, { photos: 0, by: 'instrument' }))
    expect(side?.name).toBe('No batch, 2031-06-14 09:05, instrument D65/2°, one place')
  })

  it('tells what is typed wrong, and what stands in the way of a kept one', () => {
    expect(typed('42 30').problem).toBe('Line 1: 2 figures where three are wanted: L*, a* and b*.')
    expect(typed('')).toEqual({ side: null, problem: null })
    expect(choose(kept('a', 'moss', 40, { refused: 'The yarn was damp.' })).problem).toBe('The yarn was damp.')
  })

  it('told against another white is refused at what it is held against', () => {
    const other = sideOf({ key: TYPED, text: '40 20 10', white: 'D50/2' }, [], names)
    const { found: none, refused } = matchOf({ skein: typed('40 20 10'), target: other })
    expect(none).toBeNull()
    expect(refused.skein).toBeNull()
    expect(refused.target).toContain('One colour is told against D50/2, the other against D65/2.')
  })

  it('offers the batch’s own readings, and against them its parents’ first', () => {
    const all = [kept('1', 'moss', 40), kept('2', 'fern', 41), kept('3', null, 42), kept('4', 'bark', 43)]
    expect(ofBatch(all, 'moss').map(({ key }) => key)).toEqual(['1'])
    expect(ofBatch(all, null)).toHaveLength(4)
    expect(against(all, '1', ['bark']).map(({ key }) => key)).toEqual(['4', '2', '3'])
  })
})
