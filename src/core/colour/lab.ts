// A colour in CIELAB, and what is asked of two of them.

/** CIELAB (CIE 15): `l` 0 to 100, `a` towards red, `b` towards yellow. The white it is told against is stated by whoever
 * gives it; see `White`. */
export type Lab = { l: number; a: number; b: number }

/** Chroma C*: the distance from grey. */
export function chromaOf({ a, b }: Lab): number {
  return Math.hypot(a, b)
}

/** Hue angle h in degrees, 0 up to 360. Says nothing near grey. */
export function hueDegOf({ a, b }: Lab): number {
  const deg = (Math.atan2(b, a) * 180) / Math.PI
  return deg < 0 ? deg + 360 : deg
}

/** The CIE 1976 difference of two colours, in CIELAB units. */
export function deltaE(one: Lab, other: Lab): number {
  return Math.hypot(other.l - one.l, other.a - one.a, other.b - one.b)
}

/** The hue difference ΔH* = 2 √(C1 C2) sin(Δh / 2) in CIELAB units, with its sign: more than nothing where the hue angle
 * goes up (red to yellow to green to blue). Worked out without angles, so that nothing jumps at 360 degrees.
 * Source: R. Sève, Color Res. Appl. 16 (1991) 217 (from memory); it is the part of ΔE* that is neither ΔL* nor ΔC*. */
export function deltaHue(from: Lab, to: Lab): number {
  const chromas = chromaOf(from) * chromaOf(to)
  const along = from.a * to.a + from.b * to.b
  const across = from.a * to.b - to.a * from.b
  // Both say the same; each loses its figures where the other keeps them: at hues that face one another, or that are alike.
  if (along < 0) return (across < 0 ? -1 : 1) * Math.sqrt(2 * (chromas - along))
  const half = Math.sqrt((chromas + along) / 2)
  return half === 0 ? 0 : across / half
}
