// Colour arithmetic against published tables (data/06_colour.json gives the source of each), and against a second library.
import Color from 'colorjs.io'
import { describe, expect, test } from 'vitest'
import { adapt } from '../../src/core/colour/adapt.ts'
import { changeStep, labOfReflectance, matchTo, stainingStep, whites } from '../../src/core/colour/index.ts'
import { labUnder } from '../../src/core/colour/instrument/reflectance.ts'
import { deltaE, type Lab } from '../../src/core/colour/lab.ts'
import { lightOfCode, xyzOf } from '../../src/core/colour/linear.ts'
import { labByCard } from '../../src/core/colour/of-card.ts'
import { d65 } from '../../src/core/colour/white.ts'
import { answered } from '../core/chemistry/answered.ts'
import { photoChance } from '../photo-corpus/chance.ts'
import { taken } from '../photo-corpus/dyebath.ts'
import { dyed, dyes, ksOf, shareOf } from '../photo-corpus/spectra.ts'
import data from './data/06_colour.json' with { type: 'json' }

const labOf = ([l, a, b]: number[]): Lab => ({ l, a, b }) as Lab
const triple = ([x, y, z]: number[]) => ({ x, y, z }) as { x: number; y: number; z: number }
const codesOf = (hex: string): [number, number, number] =>
  [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)) as [number, number, number]
const lightOf = (hex: string) => {
  const [r, g, b] = codesOf(hex).map((code) => lightOfCode[code] as number) as [number, number, number]
  return { r, g, b }
}

describe('CIEDE2000 (Sharma, Wu and Dalal 2005, table 1)', () => {
  // Four decimals are printed. Pairs 10 and 14 have hues that face one another exactly.
  test.each(data.ciede2000_sharma)('pair $n: $de00', ({ lab1, lab2, de00 }) => {
    const found = answered(matchTo({ lab: labOf(lab1), white: 'D65/2' }, { lab: labOf(lab2), white: 'D65/2' }))
    expect(Math.abs(found.de00 - de00)).toBeLessThan(6e-5)
    // The second library works on L*, a* and b* as they stand under 'lab'.
    const other = new Color('lab', lab1 as never).deltaE2000(new Color('lab', lab2 as never))
    expect(Math.abs(other - found.de00)).toBeLessThan(6e-5)
  })
})

describe('sRGB, XYZ and CIELAB (IEC 61966-2-1)', () => {
  // Doubles all the way: 1e-9 is far more than rounding, and far less than any rounded matrix.
  test.each(data.srgb_cases)('$hex', ({ hex, xyz_d65, lab_d65, lab_d50 }) => {
    const xyz = xyzOf(lightOf(hex))
    const lab = labUnder(xyz, d65)
    const byLibrary = new Color(hex)
    for (const [nth, axis] of (['x', 'y', 'z'] as const).entries()) {
      expect(Math.abs(xyz[axis] - (xyz_d65[nth] as number))).toBeLessThan(1e-9)
      expect(Math.abs(xyz[axis] - (byLibrary.to('xyz-d65').coords[nth] as number))).toBeLessThan(1e-9)
    }
    const d50 = triple(data.white_d50_xyz)
    const labInD50 = labUnder(adapt(xyz, d65, d50), d50)
    for (const [nth, axis] of (['l', 'a', 'b'] as const).entries()) {
      expect(Math.abs(lab[axis] - (lab_d65[nth] as number))).toBeLessThan(1e-7)
      expect(Math.abs(labInD50[axis] - (lab_d50[nth] as number))).toBeLessThan(1e-7)
      // The library's matrix to D50 is rounded.
      expect(Math.abs(labInD50[axis] - (byLibrary.to('lab').coords[nth] as number))).toBeLessThan(1e-3)
    }
  })

  test.each(data.srgb_cases)('$hex by a card that is white is the same colour', ({ hex, lab_d65 }) => {
    const lab = labByCard(lightOf(hex), { r: 1, g: 1, b: 1 }, 1)
    for (const [nth, axis] of (['l', 'a', 'b'] as const).entries())
      expect(Math.abs(lab[axis] - (lab_d65[nth] as number))).toBeLessThan(1e-7)
  })
})

describe('Bradford (Lam 1985, ICC)', () => {
  test('D65 to D50 is the published matrix', () => {
    const [from, to] = [triple(data.white_d65_xyz), triple(data.white_d50_xyz)]
    for (const [column, one] of [
      { x: 1, y: 0, z: 0 },
      { x: 0, y: 1, z: 0 },
      { x: 0, y: 0, z: 1 }
    ].entries()) {
      const found = adapt(one, from, to)
      for (const [row, axis] of (['x', 'y', 'z'] as const).entries())
        expect(Math.abs(found[axis] - (data.bradford_D65_to_D50[row]?.[column] ?? Number.NaN))).toBeLessThan(1e-9)
    }
  })
})

describe('the grey scales', () => {
  // Each pair within its tolerance is graded as its own step: half a tolerance, since the tolerances of the finest steps touch
  // the middle between two.
  test.each(data.iso105_a02_change)('change in colour (ISO 105-A02:1993): grade $grade at $dE_cielab', (row) => {
    for (const share of [-0.5, 0, 0.5])
      expect(changeStep(Math.max(0, row.dE_cielab + share * row.tolerance))).toBe(row.grade)
  })

  test.each(data.iso105_a03_staining)('staining (ISO 105-A03:1993, from memory): grade $grade at $dE_cielab', (row) => {
    for (const share of [-1, 0, 1])
      expect(stainingStep(Math.max(0, row.dE_cielab + share * row.tolerance))).toBe(row.grade)
  })

  test('the limits of the steps are those of ISO 105-A05 (from memory): halfway between two pairs', () => {
    for (const [step, limit] of Object.entries(data.iso105_a05.grade_step_limits_dEF)) {
      const grade = step.includes('-') ? Number(step.slice(0, 1)) + 0.5 : Number(step)
      expect(changeStep(limit - 1e-6)).toBe(grade)
      expect(changeStep(limit + 1e-6)).toBe(grade - 0.5)
    }
  })
})

describe('reflectance curves', () => {
  const flat = (share: number) => ({ firstNm: 380, everyNm: 10, shares: new Array(41).fill(share) })

  // ASTM E308, table 5 (from memory). A plain sum every 10 nm differs from the sum of the standard, every 1 nm, by under 0.1 %.
  test.each([
    ['D65/2', 0.95047, 1.08883],
    ['D65/10', 0.94811, 1.07304],
    ['D50/2', 0.96422, 0.82521],
    ['D50/10', 0.9672, 0.81427],
    ['A/2', 1.0985, 0.35585],
    ['A/10', 1.11144, 0.352]
  ] as const)('the white of %s is X %d, Z %d', (white, x, z) => {
    const { xyz } = answered(labOfReflectance({ ...flat(1), white }))
    expect(Math.abs(xyz.x - x)).toBeLessThan(0.001 * x)
    expect(Math.abs(xyz.z - z)).toBeLessThan(0.0012 * z)
    expect(xyz.y).toBeCloseTo(1, 12)
  })

  test.each(whites)('a curve that gives back 18 % throughout is neutral under %s, of L* 49.496', (white) => {
    // L* = 116 · cube root of 0.18 - 16 (ISO/CIE 11664-4).
    const { lab } = answered(labOfReflectance({ ...flat(0.18), white }))
    expect(lab.l).toBeCloseTo(49.4961, 3)
    expect(Math.hypot(lab.a, lab.b)).toBeLessThan(1e-9)
  })
})

describe('what the made-up photographs stand on', () => {
  test.each(data.kubelka_munk.R_to_KS)('Kubelka and Munk: R $R is K/S $K_over_S, and back', ({ R, K_over_S }) => {
    expect(ksOf(R)).toBeCloseTo(K_over_S, 10)
    expect(shareOf(K_over_S)).toBeCloseTo(R, 10)
  })

  test('the worked mix', () => {
    const { substrate_R, dye_unit_KS_per_percent, depth_percent, R_mix } = data.kubelka_munk.worked_mix
    const dye = { one: [dye_unit_KS_per_percent], other: [0], base: [substrate_R] }
    expect(dyed(dye, depth_percent, 0)[0]).toBeCloseTo(R_mix, 9)
  })

  // The trade notes' simulated split: five bands at 0, 6, 12, 18 and 24 min, to 60 min. Two decimals and whole % are printed.
  test.each([
    [6, [0.5, 0.5, 0.5, 0.5, 0.5], 0],
    [9, [0.54, 0.52, 0.49, 0.45, 0.4], 2],
    [18, [0.62, 0.57, 0.51, 0.43, 0.34], 16]
  ] as const)('half-times of 6 and %d min: share of the first dye by band %j, left %d %', (half, shares, left) => {
    const found = taken({ entersMin: [0, 6, 12, 18, 24], endMin: 60, halfTimeMin: [6, half] })
    const each = found.bands.map(({ one, other }) => one / (one + other))
    for (const [nth, share] of shares.entries()) expect(Math.abs((each[nth] as number) - share)).toBeLessThan(0.0051)
    expect(Math.abs(100 * found.left.other - left)).toBeLessThan(0.6)
    expect(found.left.one).toBeLessThan(0.005)
  })

  test('yarn of chance is white to cream: far from any limit that calls a card wrong', () => {
    for (let seed = 0; seed < 200; seed++) {
      const { base } = dyes(photoChance(seed))
      const { lab } = answered(labOfReflectance({ firstNm: 400, everyNm: 10, shares: base, white: 'D65/2' }))
      expect(deltaE({ l: 92, a: 0, b: 12 }, lab)).toBeLessThan(16)
    }
  })
})
