import { good, type Read, refuse } from './read.ts'
import { scanNumber, startsLikeNumber } from './written-number.ts'
import { tidyWritten } from './written-text.ts'

/** How deep a skein goes, or how long something is: cm, or a part (0 to 1) of the skein's length. */
export type Depth =
  | { kind: 'length'; cm: number; approx: boolean; asEntered: string }
  | { kind: 'fraction'; value: number; approx: boolean; asEntered: string }

// The inch is 2.54 cm exactly (international yard and pound, 1959; NIST SP 811 App. B).
const lengthWords: [RegExp, number][] = [
  [/^(?:cm|centimet(?:re|er)s?)$/i, 1],
  [/^(?:mm|millimet(?:re|er)s?)$/i, 0.1],
  [/^(?:m|met(?:re|er)s?)$/i, 100],
  [/^(?:in\.?|inch(?:es)?|"|″|”)$/i, 2.54]
]
const skein = '(?:the )?(?:skein|hank|yarn)'
const wholeOrHalf: [RegExp, number][] = [
  [new RegExp(`^(?:all of ${skein}|all ${skein}|the whole skein|whole skein)$`, 'i'), 1],
  [new RegExp(`^(?:a )?half (?:of )?${skein}$`, 'i'), 1 / 2],
  [new RegExp(`^(?:a|one) third of ${skein}$`, 'i'), 1 / 3],
  [new RegExp(`^two thirds of ${skein}$`, 'i'), 2 / 3],
  [new RegExp(`^(?:a|one) quarter of ${skein}$`, 'i'), 1 / 4],
  [new RegExp(`^three quarters of ${skein}$`, 'i'), 3 / 4]
]
const ofSkein = new RegExp(`^(%|percent|per cent)? ?of ${skein}$`, 'i')
const deepestCm = 500

/** Reads a depth: 12 cm, 120 mm, 5 in (0 to 500 cm), 1/4 of the skein, 25 % of the skein, half the skein. */
export function readDepth(raw: string): Read<Depth> {
  const written = tidyWritten(raw, '12 cm')
  if (!written.ok) return written
  const { text, asEntered, approx } = written.value
  const worded = wholeOrHalf.find(([pattern]) => pattern.test(text))
  if (worded) return good({ kind: 'fraction', value: worded[1], approx, asEntered })
  const help = 'Write a length or a part of the skein, for example 12 cm, 5 in or 1/4 of the skein.'
  if (!startsLikeNumber(text)) return refuse('not-a-depth', asEntered, help)
  const number = scanNumber(text)
  if (!number.ok) return number
  const { value, length } = number.value
  const rest = text.slice(length).trim()
  if (rest === '') return refuse('unit-missing', asEntered, `Write ${value} cm, ${value} in or a part of the skein.`)
  const part = ofSkein.exec(rest)
  if (part) {
    const fraction = part[1] === undefined ? value : value / 100
    if (fraction >= 0 && fraction <= 1) return good({ kind: 'fraction', value: fraction, approx, asEntered })
    return refuse('out-of-range', asEntered, 'A part of the skein lies between 0 and 1, for example 1/4 of the skein.')
  }
  const unit = lengthWords.find(([pattern]) => pattern.test(rest))
  if (!unit) return refuse('unit-unknown', rest, help)
  const cm = value * unit[1]
  if (cm >= 0 && cm <= deepestCm) return good({ kind: 'length', cm, approx, asEntered })
  return refuse('out-of-range', asEntered, `Write 0 to ${deepestCm} cm, for example 12 cm.`)
}
