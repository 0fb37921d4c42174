// Steps as YAML text. What people wrote is made fit for it: one line, no signs that show nothing, no braces (they stand
// for inputs), not too long.
import { forbiddenAt } from '../../protocol/source/characters.ts'

export type Value = string | number | boolean | readonly string[]
export type Fields = Readonly<Record<string, Value>>

/** A step, a comment, or two branches that run alongside. */
export type Written =
  | { kind: 'step'; word: string; fields: Fields; short: string | null }
  | { kind: 'comment'; say: string }
  | { kind: 'alongside'; heat: Written[]; hands: Written[] }

const COMMENT_MOST = 160

/** At most `most` letters on one line; `usual` where nothing is left. */
export function clean(text: string, most: number, usual = ''): string {
  const plain = [...text.replace(/[\s\u00a0]+/gu, ' ')].filter((sign) => forbiddenAt(sign) < 0).join('')
  const braced = plain.replaceAll('{', '(').replaceAll('}', ')').trim()
  const cut = [...braced].slice(0, most).join('').slice(0, most).trim()
  // A cut may fall between the halves of one sign.
  const whole = forbiddenAt(cut.slice(-1)) < 0 ? cut : cut.slice(0, -1).trim()
  return whole === '' ? usual : whole
}

export function step(word: string, fields: Fields = {}, short: string | null = null): Written {
  return { kind: 'step', word, fields, short }
}

export function comment(say: string): Written {
  return { kind: 'comment', say }
}

export function stepsIn(written: readonly Written[]): number {
  return written.reduce((sum, one) => {
    if (one.kind === 'comment') return sum
    return sum + (one.kind === 'step' ? 1 : stepsIn(one.heat) + stepsIn(one.hands) + 1)
  }, 0)
}

/** The lines of a list of steps, indented by `indent` spaces. */
export function linesOf(written: readonly Written[], indent: number): string[] {
  const before = ' '.repeat(indent)
  return written.flatMap((one) => lineOf(one, before, indent))
}

function lineOf(one: Written, before: string, indent: number): string[] {
  switch (one.kind) {
    case 'comment':
      return commentLines(one.say, before)
    case 'step':
      return [`${before}- ${stepText(one.word, one.fields, one.short)}`]
    case 'alongside':
      return [
        `${before}- alongside:`,
        `${before}    heat:`,
        ...linesOf(one.heat, indent + 6),
        `${before}    hands:`,
        ...linesOf(one.hands, indent + 6)
      ]
  }
}

function commentLines(say: string, before: string): string[] {
  const text = clean(say, COMMENT_MOST)
  return text === '' ? [] : [`${before}# ${text}`]
}

function stepText(word: string, fields: Fields, short: string | null): string {
  const all = Object.entries(fields)
  if (all.length === 0) return word
  const [only] = all
  if (all.length === 1 && only && only[0] === short) return `${word}: ${valueText(only[1], false)}`
  return `${word}: {${all.map(([name, value]) => `${name}: ${valueText(value, true)}`).join(', ')}}`
}

export function valueText(value: Value, flow: boolean): string {
  if (typeof value === 'number' || typeof value === 'boolean') return String(value)
  if (typeof value !== 'string') return `[${value.map((one) => valueText(one, true)).join(', ')}]`
  return isPlain(value, flow) ? value : JSON.stringify(value)
}

/** Words that YAML would read as something else than text. */
const other = /^(?:true|false|yes|no|on|null|~|y|n|\.inf|\.nan)$/i

/** May it stand without quotes? Narrower than YAML itself: what is doubtful is quoted. */
function isPlain(text: string, flow: boolean): boolean {
  if (other.test(text) || /^[\d.+-]+(?:e\d+)?$/i.test(text)) return false
  return (
    flow ? /^[\p{L}\d](?:[\p{L}\d .°/%+-]*[\p{L}\d%.])?$/u : /^[\p{L}\d](?:[\p{L}\d .°/%+,-]*[\p{L}\d%.])?$/u
  ).test(text)
}
