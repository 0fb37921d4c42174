// A bath takes the colour of its dye, darkened until white text on it can be read from across the kitchen.

/** WCAG 2.2, 1.4.6 (AAA): contrast of text to its ground. */
export const CONTRAST_LEAST = 7
/** The text on a bath: --bath-ink in tokens.css. */
export const BATH_INK = '#fffdf7'
/** A pot whose colour can't be read is shown as undyed yarn in water. */
const UNDYED = '#6b5f4c'

type Rgb = [number, number, number]

/** The bath's ground for a dye colour "#rrggbb": the same hue, dark enough. What is not such a colour is undyed. */
export function bathColour(colour: string): string {
  const dye = linear(/^#[0-9a-f]{6}$/i.test(colour) ? colour : UNDYED)
  let light = 1
  while (light > 0 && contrast(hex(scaled(dye, light)), BATH_INK) < CONTRAST_LEAST) light -= 0.01
  return hex(scaled(dye, light))
}

/** Contrast of two colours, 1 to 21. WCAG 2.2, "contrast ratio". */
export function contrast(one: string, two: string): number {
  const [a, b] = [luminance(linear(one)), luminance(linear(two))]
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05)
}

/** WCAG 2.2, "relative luminance". */
function luminance([r, g, b]: Rgb): number {
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

function linear(colour: string): Rgb {
  const channel = (at: number): number => {
    const c = Number.parseInt(colour.slice(at, at + 2), 16) / 255
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4
  }
  return [channel(1), channel(3), channel(5)]
}

function scaled(rgb: Rgb, by: number): Rgb {
  return rgb.map((c) => c * Math.max(0, by)) as Rgb
}

function hex(rgb: Rgb): string {
  const channel = (c: number): string => {
    const s = c <= 0.0031308 ? c * 12.92 : 1.055 * c ** (1 / 2.4) - 0.055
    return Math.round(s * 255)
      .toString(16)
      .padStart(2, '0')
  }
  return `#${rgb.map(channel).join('')}`
}
