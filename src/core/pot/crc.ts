// CRC-32 as in IEEE 802.3: reflected polynomial EDB88320, start and end value FFFFFFFF. Four bytes are taken at a time
// through four tables: reopening a day of pots checks every entry, and this is half of what that costs.
const tables = [new Int32Array(256), new Int32Array(256), new Int32Array(256), new Int32Array(256)] as const
const [one, two, three, four] = tables
for (let byte = 0; byte < 256; byte++) {
  let rest = byte
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1
  one[byte] = rest
}
for (let byte = 0; byte < 256; byte++) {
  two[byte] = step(one[byte] as number, 0)
  three[byte] = step(two[byte] as number, 0)
  four[byte] = step(three[byte] as number, 0)
}

/** CRC-32 of the UTF-8 bytes of a text, as 8 lower-case hex digits. A lone surrogate counts as U+FFFD, as every
 * encoder writes it. `end` and `tail`: of the first `end` UTF-16 units and then the tail, without joining the two. */
export function crc32(text: string, end = text.length, tail = ''): string {
  return (~over(over(-1, text, end), tail, tail.length) >>> 0).toString(16).padStart(8, '0')
}

function over(start: number, text: string, end: number): number {
  let crc = start
  let at = 0
  const fours = end - 3
  while (at < end) {
    while (at < fours) {
      const a = text.charCodeAt(at)
      const b = text.charCodeAt(at + 1)
      const c = text.charCodeAt(at + 2)
      const d = text.charCodeAt(at + 3)
      if ((a | b | c | d) > 0x7f) break
      const word = crc ^ (a | (b << 8) | (c << 16) | (d << 24))
      crc =
        (four[word & 0xff] as number) ^
        (three[(word >>> 8) & 0xff] as number) ^
        (two[(word >>> 16) & 0xff] as number) ^
        (one[word >>> 24] as number)
      at += 4
    }
    if (at >= end) break
    const point = text.codePointAt(at) as number
    crc = point < 0x80 ? step(crc, point) : wide(crc, point >= 0xd800 && point <= 0xdfff ? 0xfffd : point)
    at += point > 0xffff ? 2 : 1
  }
  return crc
}

function step(crc: number, byte: number): number {
  return (crc >>> 8) ^ (one[(crc ^ byte) & 0xff] as number)
}

/** The two to four bytes of a code point beyond ASCII. */
function wide(crc: number, point: number): number {
  const tail = (shift: number): number => 0x80 | ((point >> shift) & 0x3f)
  if (point < 0x800) return step(step(crc, 0xc0 | (point >> 6)), tail(0))
  if (point < 0x10000) return step(step(step(crc, 0xe0 | (point >> 12)), tail(6)), tail(0))
  return step(step(step(step(crc, 0xf0 | (point >> 18)), tail(12)), tail(6)), tail(0))
}
