import { describe, expect, it } from 'vitest'
import { type Fault, type Photo, type PhotoRead, readPhoto, stainOfCloth } from '../../../src/core/colour/index.ts'
import { stainAboutSay, stainOfSay, stainSay, stainStepSay } from '../../../src/ui/parts/stain-words.ts'
import { clothShape, pixelMarks } from '../../../src/ui/screens/swatches/marks.ts'
import { clothFaultSay, photographedCloth, typedCloth } from '../../../src/ui/screens/swatches/stain/cloth.ts'
import { answered } from '../../core/chemistry/answered.ts'

type Rgb = readonly [number, number, number]

/** Three squares side by side: the card, the clean cloth, the stained one. */
function photo(card: Rgb, clean: Rgb, stained: Rgb): Photo {
  const [width, height] = [300, 100]
  const data = new Uint8ClampedArray(width * height * 4)
  for (let at = 0; at < data.length; at += 4) {
    const column = (at / 4) % width
    data.set([...(column < 100 ? card : column < 200 ? clean : stained), 255], at)
  }
  return { data, width, height }
}
const places = { grey: { x: 1 / 6, y: 0.5 }, 'undyed 0': { x: 0.5, y: 0.5 }, 'skein 0': { x: 5 / 6, y: 0.5 } }

function read(...[card, clean, stained]: [Rgb, Rgb, Rgb]): PhotoRead {
  const marks = pixelMarks({ ...clothShape, spotShare: 0.2 }, places, { widthPx: 300, heightPx: 100 })
  if (marks === null) throw new Error('not marked')
  return answered(readPhoto(photo(card, clean, stained), marks))
}
const grey: Rgb = [118, 118, 118]

describe('a cloth in photos', () => {
  it('is read as clean and stained by the card, whatever light both lie in', () => {
    const found = photographedCloth([read(grey, [220, 220, 210], [220, 170, 180])])
    expect(found).toMatchObject({ faults: null, read: { white: 'D65/2', together: true } })
    const stain = answered(stainOfCloth(found.read ?? never()))
    expect(stain.stained.a).toBeGreaterThan(stain.clean.a + 10)
    expect(stain.greyStep).toBeLessThanOrEqual(2)
  })

  it('is not told while a photo is not read, nor when a fault spoils it', () => {
    expect(photographedCloth([]).read).toBeNull()
    expect(photographedCloth([read(grey, [220, 220, 210], [220, 170, 180]), null]).read).toBeNull()
    const burnt = photographedCloth([read(grey, [255, 255, 255], [220, 170, 180])])
    expect(burnt.read).toBeNull()
    expect(burnt.faults).toMatch(
      /^Too bright or too dark to read, the clean cloth: .*Expose it less\. Take the photos anew\.$/
    )
    // In a skein one burnt band is left out; of the one stained cloth nothing would be left.
    const other = photographedCloth([read(grey, [220, 220, 210], [255, 170, 180])])
    expect(other.read).toBeNull()
    expect(other.faults).toMatch(/^Too bright or too dark to read, the stained cloth: /)
  })

  it('has its faults told in a cloth’s words', () => {
    const fault: Fault = {
      code: 'grey-not-neutral',
      of: 'grey card',
      nth: 0,
      say: 'By this card the undyed yarn has a chroma of 30.'
    }
    expect(clothFaultSay(fault)).toBe(
      'The grey card is not neutral, the grey card: By this card the clean cloth has a chroma of 30.'
    )
  })
})

describe('a cloth typed from an instrument', () => {
  it('is its readings, several parted by semicolons', () => {
    const { read: found } = typedCloth({ white: 'D65/10', clean: '93 0 4; 93.1 0 4', stained: '90 5 3' })
    expect(found).toMatchObject({ white: 'D65/10', together: false, stained: [{ l: 90, a: 5, b: 3 }] })
    expect(found?.clean).toHaveLength(2)
  })

  it('tells a slip at its field, and waits for what is missing', () => {
    const slip = typedCloth({ white: 'D65/2', clean: '93 0', stained: '190 5 3' })
    expect(slip.read).toBeNull()
    expect(slip.problems.clean).toContain('2 figures where three are wanted')
    expect(slip.problems.stained).toMatch(/L\*/)
    expect(typedCloth({ white: 'D65/2', clean: '93 0 4', stained: '' })).toMatchObject({
      read: null,
      problems: { stained: null }
    })
  })
})

describe('a stain', () => {
  it('is told in words, as a step, and as what it is', () => {
    expect(stainSay({ greyStep: 5, chance: null })).toBe('No stain that shows')
    expect(stainSay({ greyStep: 2.5, chance: false })).toBe('Clearly stained')
    expect(stainSay({ greyStep: 4, chance: true })).toBe('No stain that these readings can show')
    expect(stainStepSay({ greyStep: 4.5, deltaE: 2.2, sd: 0.3 })).toBe('Step 4-5, ΔE 2.2 ± 0.3')
    expect(stainAboutSay({ sd: null, white: 'D65/10' })).toMatch(
      /ISO 105-A03.*no grade of any standard.*not known.*D65\/10°\.$/
    )
    expect(stainAboutSay({ sd: 1, white: 'D65/2' })).toContain('one standard deviation')
  })

  it('says of what cloth, after what and by what', () => {
    const stain = answered(
      stainOfCloth({
        white: 'D65/2',
        clean: [{ l: 93, a: 0, b: 4 }],
        stained: [{ l: 90, a: 0, b: 4 }],
        together: false
      })
    )
    const of = { type: 'ClothStained', batchId: null, stain } as const
    expect(stainOfSay({ ...of, by: 'photo', photos: ['a'], cloth: 'White cotton', done: 'washed with it' })).toBe(
      'White cotton, washed with it. By one photo.'
    )
    expect(stainOfSay({ ...of, by: 'instrument', photos: [], cloth: '', done: '' })).toBe(
      'What cloth, and what it went through, is not said. By readings typed from an instrument.'
    )
  })
})

function never(): never {
  throw new Error('nothing was read')
}
