// A reflectance curve from an instrument -> XYZ and CIELAB for a stated light and observer.
import { type Answer, type Problem, refuse } from '../../chemistry/answer.ts'
import { outside, unknownWord } from '../../chemistry/limits.ts'
import type { Xyz } from '../adapt.ts'
import type { Lab } from '../lab.ts'
import { type White, whites } from '../white.ts'
import { firstNm, stepNm, type Table, tablesOf } from './observers.ts'

export type Curve = {
  /** Wavelength of the first value, in nm, a multiple of 10. */
  firstNm: number
  /** From one value to the next: 10 or 20 nm. */
  everyNm: number
  /** Share of the light given back, 0 to 1; fluorescent yarn may give more, up to 1.5. */
  shares: readonly number[]
  white: White
}

export type Measured = { xyz: Xyz; lab: Lab; white: White }

/** The sums must hold what the eye sees of light. */
const mustBeginNm = 420
const mustEndNm = 680

/**
 * XYZ (Y of white 1) and CIELAB by summing over 380 to 780 nm in steps of 10. Values at 20 nm are joined by straight
 * lines; beyond the ends the last value stands (ASTM E308, 7.3; from memory). The white is the sum of the light itself, so
 * that a share of 1 throughout is exactly white. Formula: CIE 15; ISO/CIE 11664-4.
 */
export function labOfReflectance(curve: Curve): Answer<Measured> {
  const problems = problemsOf(curve)
  if (problems.length > 0) return refuse(...problems)
  const { light, observer } = tablesOf(curve.white)
  const shares = light.map((_, nth) => shareAt(curve, firstNm + nth * stepNm))
  const sum = (sensitive: Table, of: Table): number =>
    sensitive.reduce((all, value, nth) => all + value * (light[nth] as number) * (of[nth] as number), 0)
  const full = light.map(() => 1)
  const whole = sum(observer.y, full)
  const xyz = {
    x: sum(observer.x, shares) / whole,
    y: sum(observer.y, shares) / whole,
    z: sum(observer.z, shares) / whole
  }
  const white = { x: sum(observer.x, full) / whole, y: 1, z: sum(observer.z, full) / whole }
  return { xyz, lab: labUnder(xyz, white), white: curve.white }
}

/** CIELAB of a colour under any white (ISO/CIE 11664-4). */
export function labUnder({ x, y, z }: Xyz, white: Xyz): Lab {
  const f = (ratio: number): number => (ratio > (6 / 29) ** 3 ? Math.cbrt(ratio) : (ratio * (29 / 6) ** 2) / 3 + 4 / 29)
  const [fx, fy, fz] = [f(x / white.x), f(y / white.y), f(z / white.z)]
  return { l: 116 * fy - 16, a: 500 * (fx - fy), b: 200 * (fy - fz) }
}

function shareAt({ firstNm: first, everyNm, shares }: Curve, nm: number): number {
  const place = Math.min(shares.length - 1, Math.max(0, (nm - first) / everyNm))
  const before = Math.floor(place)
  const [one, other] = [shares[before] as number, shares[Math.min(shares.length - 1, before + 1)] as number]
  return one + (other - one) * (place - before)
}

function problemsOf({ firstNm: first, everyNm, shares, white }: Curve): Problem[] {
  const problems = [
    unknownWord(white, 'white', 'the light and observer', whites),
    outside(first, { field: 'firstNm', name: 'the first wavelength', unit: 'nm', least: 300, most: mustBeginNm }),
    everyNm === 10 || everyNm === 20
      ? null
      : wrong('outside', 'everyNm', `The step can't be ${everyNm} nm.`, 'Give 10 or 20 nm.'),
    first % 10 === 0 ? null : wrong('outside', 'firstNm', `It begins at ${first} nm.`, 'Begin at a multiple of 10 nm.')
  ].filter((problem) => problem !== null)
  if (problems.length > 0) return problems
  const lastNm = first + everyNm * (shares.length - 1)
  if (lastNm < mustEndNm || lastNm > 1100) {
    const what = `${shares.length} values from ${first} nm end at ${lastNm} nm.`
    return [
      wrong('does-not-fit', 'shares', what, `Give values up to at least ${mustEndNm} nm (and no further than 1100).`)
    ]
  }
  const percent = shares.some((share) => share > 1.5)
  return shares.flatMap((share, nth) => {
    if (Number.isFinite(share) && share >= 0 && share <= 1.5) return []
    const instead = percent ? 'Give shares of 1, not %: 0.25 for 25 %.' : 'Give 0 to 1 (up to 1.5 where it glows).'
    return [wrong('outside', 'shares', `At ${first + nth * everyNm} nm the share can't be ${share}.`, instead)]
  })
}

const wrong = (code: Problem['code'], field: string, what: string, instead: string): Problem => ({
  code,
  field,
  what,
  instead
})
