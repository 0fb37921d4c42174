// How iCalendar writes a line: RFC 5545, 3.1 (lines and folding) and 3.3.11 (TEXT).

/** 75 octets a line at most, its CRLF not counted; the space that begins a continuation is. */
const OCTETS_MOST = 75

/** Whatever a dyer or a protocol wrote, as a TEXT value: no sign in it can end the line or the value. Signs that
 * iCalendar forbids (controls) become a space, half a character becomes U+FFFD. */
export function textValue(text: string): string {
  return [...text.replace(/\r\n?|[\n\u0085\u2028\u2029]/g, '\n')].map(valueSign).join('')
}

function valueSign(sign: string): string {
  if (sign === '\n') return '\\n'
  if (sign === '\\' || sign === ';' || sign === ',') return `\\${sign}`
  const code = sign.codePointAt(0) ?? 0
  if (code < 0x20 || (code >= 0x7f && code < 0xa0)) return ' '
  return code >= 0xd800 && code <= 0xdfff ? '\ufffd' : sign
}

/** One content line, folded where it is longer than 75 octets of UTF-8, never inside a character, with its CRLF. */
export function contentLine(line: string): string {
  const rows: string[] = []
  let row = ''
  let octets = 0
  for (const sign of line) {
    const more = octetsOf(sign)
    if (octets + more > OCTETS_MOST) {
      rows.push(row)
      row = ' '
      octets = 1
    }
    row += sign
    octets += more
  }
  return `${[...rows, row].join('\r\n')}\r\n`
}

/** UTF-8 octets of one character. */
function octetsOf(sign: string): number {
  const code = sign.codePointAt(0) ?? 0
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4
}

/** "20310614T093000Z". Whole seconds, rounded down: a call may come early by a moment, never late. */
export function utcStamp(atMs: number): string {
  return `${new Date(atMs).toISOString().slice(0, 19).replace(/[-:]/g, '')}Z`
}

/** "PT1H30M", "PT45S", "-PT5M", "PT0S". */
export function durationValue(ms: number): string {
  const sec = Math.ceil(Math.abs(ms) / 1000)
  if (sec === 0) return 'PT0S'
  const [h, m, s] = [Math.floor(sec / 3600), Math.floor((sec % 3600) / 60), sec % 60]
  // The grammar lets no part be left out between two others: hours and seconds need their minutes.
  const minutes = m > 0 || (h > 0 && s > 0) ? `${m}M` : ''
  return `${ms < 0 ? '-' : ''}PT${h > 0 ? `${h}H` : ''}${minutes}${s > 0 ? `${s}S` : ''}`
}

/** A part of a UID: letters, figures and a few signs that need no escaping anywhere; all else as its code. Two different
 * texts never give the same part. */
export function uidPart(text: string): string {
  return [...text].map((sign) => (/[A-Za-z0-9.-]/.test(sign) ? sign : `_${hex(sign)}_`)).join('')
}

function hex(sign: string): string {
  return (sign.codePointAt(0) ?? 0).toString(16)
}
