// Where an offset stands in a text. Counted here and not by the parser: in text that is broken enough the parser takes
// several lines for one token and loses count of them.
import type { Place } from './located.ts'

export class Lines {
  /** Offsets at which lines begin, lowest first. A line ends with \n, \r\n or a lone \r, as YAML and editors have it. */
  readonly #starts: number[] = [0]
  readonly #length: number

  constructor(text: string) {
    this.#length = text.length
    for (let i = 0; i < text.length; i++) {
      const unit = text.charCodeAt(i)
      if (unit === 10 || (unit === 13 && text.charCodeAt(i + 1) !== 10)) this.#starts.push(i + 1)
    }
  }

  /** Lines and columns count from 1. An offset outside the text is taken for its nearest end. */
  place(offset: number): Place {
    const at = Math.min(Math.max(0, offset), this.#length)
    let low = 0
    let high = this.#starts.length - 1
    while (low < high) {
      const middle = Math.ceil((low + high) / 2)
      if ((this.#starts[middle] ?? 0) <= at) low = middle
      else high = middle - 1
    }
    return { line: low + 1, column: at - (this.#starts[low] ?? 0) + 1 }
  }
}
