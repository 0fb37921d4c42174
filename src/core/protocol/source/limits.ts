// What a protocol may measure. A protocol is untrusted text: these bounds are looked at before anything reads it.

export const bytesMost = 256 * 1024
export const linesMost = 6000
/** Brackets, commas, colons, dashes, quotes: each may become a value. 500 steps of ten fields need half of this. */
export const signsMost = 10_000
export const depthMost = 24
export const writtenStepsMost = 500
export const stepsMost = 2000
export const timesMost = 60
/** 60 days: weeks in a jar in the sun are a method, half a year is a mistake. */
export const longestDays = 60
export const longestMs = longestDays * 24 * 60 * 60_000

/** Far more than `depthMost`, so that a bracket in a sentence does no harm; the exact depth is counted later. */
const roughDepthMost = 100
/** Spaces before a line: far more than the deepest text needs. */
const indentMost = 400

export type RoughProblem =
  | { code: 'too-large'; of: 'bytes' | 'lines' | 'signs'; offset: number }
  | { code: 'nested-too-deep' | 'empty-file'; offset: number }

/** UTF-8 bytes of a text; stops counting at the limit. */
function overBytes(text: string): boolean {
  if (text.length > bytesMost) return true
  let bytes = 0
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i)
    bytes += unit < 0x80 ? 1 : unit < 0x800 ? 2 : unit >= 0xd800 && unit <= 0xdfff ? 2 : 3
  }
  return bytes > bytesMost
}

const lineEnd = 0x0a
const space = 0x20
/** What a sign can do to the depth, by its code: it is asked of each sign of a text with each letter typed into it. */
const [noSign, otherSign, opens, closes, begins] = [0, 1, 2, 3, 4]
const kindOf = new Uint8Array(0x80)
for (const [signs, kind] of [
  [',:&*!"\'|>%', otherSign],
  ['[{', opens],
  [']}', closes],
  ['-?', begins]
] as const) {
  for (const sign of signs) kindOf[sign.charCodeAt(0)] = kind
}

/** One pass over the text, before any parser: null where a parser may safely have it.
 * The parser's time grows with signs and lines, and its stack with the depth; all three are hostile ground. */
export function roughProblem(text: string): RoughProblem | null {
  if (overBytes(text)) return { code: 'too-large', of: 'bytes', offset: 0 }
  let lines = 1
  let signs = 0
  let depth = 0
  let dashes = 0
  let indent = 0
  let atStart = true
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i)
    if (unit === lineEnd) {
      dashes = 0
      indent = 0
      atStart = true
      if (++lines > linesMost) return { code: 'too-large', of: 'lines', offset: i }
    } else if (unit === space) {
      if (atStart && ++indent > indentMost) return { code: 'nested-too-deep', offset: i }
    } else {
      atStart = false
      const sign = kindOf[unit] ?? noSign
      if (sign === noSign) continue
      if (++signs > signsMost) return { code: 'too-large', of: 'signs', offset: i }
      if (sign === opens) depth++
      else if (sign === closes) depth = Math.max(0, depth - 1)
      // A ruler of dashes in a comment nests nothing.
      else if (sign === begins && text.charAt(i + 1) <= ' ') dashes++
      if (depth > roughDepthMost || dashes > roughDepthMost) return { code: 'nested-too-deep', offset: i }
    }
  }
  return text.trim() === '' ? { code: 'empty-file', offset: 0 } : null
}
