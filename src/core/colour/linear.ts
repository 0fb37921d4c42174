// From the code values of a picture to amounts of light.
import { convertLrgbToRgb, convertRgbToLrgb, convertRgbToXyz65 } from 'culori/fn'
import type { Xyz } from './adapt.ts'

/** Linear light in the three primaries of sRGB, 0 to 1. */
export type Linear = { r: number; g: number; b: number }

/** Linear light of each of the 256 code values of sRGB (IEC 61966-2-1). */
export const lightOfCode: Float64Array = Float64Array.from({ length: 256 }, (_, code) => {
  const value = code / 255
  return convertRgbToLrgb({ r: value, g: value, b: value }).r
})

/** XYZ under D65 (2°), Y of white 1. */
export function xyzOf({ r, g, b }: Linear): Xyz {
  const { x, y, z } = convertRgbToXyz65(convertLrgbToRgb({ r, g, b }))
  return { x, y, z }
}
