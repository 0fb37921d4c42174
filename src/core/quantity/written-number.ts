import { good, type Read, type Refused, refuse } from './read.ts'

/** A number at the start of a text and how many characters it took. */
export type Scanned = { value: number; length: number }

const vulgar = new Map(
  Object.entries({
    '½': 1 / 2,
    '⅓': 1 / 3,
    '⅔': 2 / 3,
    '¼': 1 / 4,
    '¾': 3 / 4,
    '⅕': 1 / 5,
    '⅖': 2 / 5,
    '⅗': 3 / 5,
    '⅘': 4 / 5,
    '⅙': 1 / 6,
    '⅚': 5 / 6,
    '⅛': 1 / 8,
    '⅜': 3 / 8,
    '⅝': 5 / 8,
    '⅞': 7 / 8
  })
)
const vulgarSigns = [...vulgar.keys()].join('')
const numberStart = new RegExp(`^[+−–-]? ?[\\d.,${vulgarSigns}]`)
const unsignedStart = new RegExp(`^[\\d${vulgarSigns}]`)
const vulgarNumber = new RegExp(`^(?:(\\d+) ?)?([${vulgarSigns}])`)
const fraction = /^(?:(\d+) )?(\d+) ?[/⁄∕] ?(\d+)/
const spaced = /^[1-9]\d{0,2}(?: \d{3})+(?![\d/⁄∕])/
const marked = /^\d+(?:[.,]\d+)*|^[.,]\d+/

export function startsLikeNumber(text: string): boolean {
  return numberStart.test(text)
}

/** Does a digit or a fraction sign come first? Neither a sign nor a bare point counts. */
export function startsUnsigned(text: string): boolean {
  return unsignedStart.test(text)
}

/** Reads the number at the start of a text: 1.5, 1,5, 1/2, 1 1/2, 1½, 1 500, with a sign (+, -, − or –).
 * A point is always a decimal point. A comma is a decimal comma, and is refused where it could part thousands (1,500).
 * No exponents, no words. What follows the number is left to the caller. */
export function scanNumber(text: string): Read<Scanned> {
  const sign = /^[+−–-] ?/.exec(text)?.[0] ?? ''
  const unsigned = scanUnsigned(text.slice(sign.length))
  if (!unsigned.ok) return unsigned
  const length = sign.length + unsigned.value.length
  const next = text.slice(length)
  if (/^e[+-]?\d/i.test(next)) return notANumber(text, 'Write the number out, without an exponent: 1500')
  if (/^(?:\d| ?[/⁄∕] ?\d|[.,]\d)/.test(next)) return notANumber(text, plainNumbers)
  const negative = sign !== '' && !sign.startsWith('+')
  const value = negative && unsigned.value.value !== 0 ? -unsigned.value.value : unsigned.value.value
  return good({ value, length })
}

const plainNumbers = 'Write a number such as 3, 1.5, 1/2 or 1 1/2'

function scanUnsigned(text: string): Read<Scanned> {
  const sign = vulgarNumber.exec(text)
  if (sign) {
    return good({ value: Number(sign[1] ?? 0) + (vulgar.get(sign[2] ?? '') ?? 0), length: sign[0].length })
  }
  const parts = fraction.exec(text)
  if (parts) return scanFraction(parts)
  const groups = spaced.exec(text)?.[0] ?? ''
  const token =
    groups + (groups === '' ? (marked.exec(text)?.[0] ?? '') : (/^[.,]\d+/.exec(text.slice(groups.length))?.[0] ?? ''))
  if (token === '') return notANumber(text, plainNumbers)
  return readMarks(token)
}

function scanFraction(parts: RegExpExecArray): Read<Scanned> {
  const whole = Number(parts[1] ?? 0)
  const upper = Number(parts[2])
  const lower = Number(parts[3])
  if (lower === 0) return notANumber(parts[0], 'The lower number of a fraction is at least 1, as in 1/2')
  // "1 3/2" is more likely a slip of the finger than two and a half.
  if (parts[1] !== undefined && upper >= lower) return notANumber(parts[0], 'Write 1 1/2, or the fraction alone: 3/2')
  return good({ value: whole + upper / lower, length: parts[0].length })
}

function readMarks(token: string): Read<Scanned> {
  const digits = token.replaceAll(' ', '')
  const marks = digits.replace(/\d/g, '')
  if (marks.length > 1) {
    const bothKinds = marks.includes(',') && marks.includes('.')
    if (!bothKinds && marks.includes('.')) return notANumber(token, plainNumbers)
    return refuse('digits-grouped', token, 'Write thousands without marks between them, for example 1500 or 1500.5.')
  }
  const grouped = token.includes(' ')
  if (!grouped && /^[1-9]\d{0,2},\d{3}$/.test(digits)) {
    const asDecimal = Number(digits.replace(',', '.'))
    const asThousands = digits.replace(',', '')
    return refuse('comma-ambiguous', token, `Write ${asDecimal} or ${asThousands}: this comma could mean either.`)
  }
  return good({ value: Number(digits.replace(',', '.')), length: token.length })
}

function notANumber(text: string, instead: string): Refused {
  return refuse('not-a-number', text, `${instead}.`)
}
