import { describe, expect, it } from 'vitest'
import { type ClothRead, type Lab, stainOfCloth } from '../../../../src/core/colour/index.ts'
import { answered, problemsOf } from '../../chemistry/answered.ts'

const lab = (l: number, a = 0, b = 4): Lab => ({ l, a, b })
const cloth = (clean: Lab[], stained: Lab[], other: Partial<ClothRead> = {}): ClothRead => ({
  white: 'D65/2',
  clean,
  stained,
  together: false,
  ...other
})

describe('a witness cloth', () => {
  it('that took 8.5 units is stained to step 3, whatever way it went', () => {
    for (const to of [lab(93, 8.5), lab(84.5), lab(93, 0, 12.5)]) {
      const stain = answered(stainOfCloth(cloth([lab(93)], [to])))
      expect(stain).toMatchObject({ greyStep: 3, sd: null, chance: null, white: 'D65/2', clean: lab(93), stained: to })
      expect(stain.deltaE).toBeCloseTo(8.5, 9)
    }
  })

  it('read several times is told by the averages, with how much they stray', () => {
    const stain = answered(stainOfCloth(cloth([lab(92), lab(93), lab(94)], [lab(82), lab(83), lab(84)])))
    expect(stain.deltaE).toBeCloseTo(10, 9)
    // Each mean of three that lie one apart strays by the root of a third.
    expect(stain.sd).toBeCloseTo(Math.sqrt(2 / 3), 9)
    expect(stain.chance).toBe(false)
  })

  it('strays only by what differs within a photo: a light that changes from photo to photo is the same for both', () => {
    const [clean, stained] = [
      [lab(92), lab(93), lab(94)],
      [lab(82), lab(83.1), lab(84)]
    ]
    const sd = (together: boolean) => answered(stainOfCloth(cloth(clean, stained, { together }))).sd as number
    expect(sd(true)).toBeLessThan(0.1 * sd(false))
    expect(sd(true)).toBeGreaterThan(0)
  })

  it('that differs by no more than the readings stray has no stain to be told', () => {
    const stain = answered(stainOfCloth(cloth([lab(92), lab(94)], [lab(92.5), lab(94.5)])))
    expect(stain).toMatchObject({ chance: true, greyStep: 5 })
    const same = answered(stainOfCloth(cloth([lab(92), lab(94)], [lab(92), lab(94)])))
    expect(same).toMatchObject({ deltaE: 0, chance: true })
    expect(same.sd).toBeGreaterThan(0)
  })

  it('of which one side was not read is refused, and it is said which', () => {
    expect(problemsOf(stainOfCloth(cloth([lab(93)], [])))).toMatchObject([{ field: 'stained', code: 'missing' }])
    expect(problemsOf(stainOfCloth(cloth([], [lab(93)])))).toMatchObject([{ field: 'clean' }])
  })
})
