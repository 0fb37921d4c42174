// The white that a colour in CIELAB is told against. Two colours told against different whites are not compared.
import type { Xyz } from './adapt.ts'

export const whites = ['D65/2', 'D65/10', 'D50/2', 'D50/10', 'A/2', 'A/10'] as const

/** Illuminant and observer: 'D65/2' is daylight of 6504 K for the observer of 2 degrees. */
export type White = (typeof whites)[number]

/** What photographs are told against: the white of sRGB, of chromaticity 0.3127, 0.3290 (IEC 61966-2-1). */
export const photoWhite = 'D65/2' satisfies White

export const d65: Xyz = { x: 0.3127 / 0.329, y: 1, z: (1 - 0.3127 - 0.329) / 0.329 }
