import { good, type Read, refuse } from './read.ts'

/** Longest text that is read as a quantity, in characters. Every pattern in this folder relies on this bound. */
export const writtenLengthMost = 64

/** One quantity as written. `text` is what is read: single spaces, no "about"; `asEntered` is what stood there. */
export type Written = { text: string; asEntered: string; approx: boolean }

const about = /^(?:about|approximately|approx\.?|around|roughly|circa|ca\.?|[~≈]) ?(?=\S)/i

/** Trims, evens out spaces (thin and no-break ones too) and takes off "about". Refuses empty and overlong text. */
export function tidyWritten(raw: string, example: string): Read<Written> {
  if (raw.length > 4 * writtenLengthMost) return tooLong(raw, example)
  const asEntered = raw.trim()
  if (asEntered === '') return refuse('empty', '', `Write a value, for example ${example}.`)
  if (asEntered.length > writtenLengthMost) return tooLong(asEntered, example)
  const even = asEntered.replace(/\s+/g, ' ')
  const text = even.replace(about, '')
  return good({ text, asEntered, approx: text !== even })
}

function tooLong(raw: string, example: string): Read<never> {
  return refuse(
    'too-long',
    `${raw.slice(0, 24)}…`,
    `Write it in ${writtenLengthMost} characters or fewer, for example ${example}.`
  )
}
