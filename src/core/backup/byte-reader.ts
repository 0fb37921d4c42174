// Lines and runs of bytes out of pieces of any length, as a file or a socket hands them over.

/** `null`: the pieces ended before. */
export type ByteReader = {
  /** The bytes up to the next line end, which is taken too; null also where none comes within `most` bytes. */
  line(most: number): Promise<Uint8Array | null>
  take(length: number): Promise<Uint8Array | null>
  /** Nothing is left. */
  atEnd(): Promise<boolean>
}

const LINE_END = 0x0a

export function byteReader(pieces: AsyncIterable<Uint8Array>): ByteReader {
  const more = pieces[Symbol.asyncIterator]()
  let held: Uint8Array = new Uint8Array(0)
  const next = async (): Promise<Uint8Array | null> => {
    for (;;) {
      const { done, value } = await more.next()
      if (done) return null
      if (value.length > 0) return value
    }
  }
  return {
    async line(most) {
      let from = 0
      for (;;) {
        const end = held.indexOf(LINE_END, from)
        if (end >= 0 && end < most) {
          const line = held.slice(0, end)
          held = held.subarray(end + 1)
          return line
        }
        if (held.length >= most) return null
        const piece = await next()
        if (piece === null) return null
        from = held.length
        held = joined([held, piece])
      }
    },
    async take(length) {
      // Gathered first and joined once: a long run in short pieces would else be copied again with each of them.
      const parts = [held]
      let have = held.length
      while (have < length) {
        const piece = await next()
        if (piece === null) return null
        parts.push(piece)
        have += piece.length
      }
      const all = parts.length === 1 ? held : joined(parts)
      held = all.subarray(length)
      return all.slice(0, length)
    },
    async atEnd() {
      if (held.length > 0) return false
      const piece = await next()
      if (piece === null) return true
      held = piece
      return false
    }
  }
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0))
  let at = 0
  for (const part of parts) {
    whole.set(part, at)
    at += part.length
  }
  return whole
}
