import type { KitchenCountry } from './kitchen-unit.ts'
import { readMaterialName } from './material-name.ts'
import { type Measured, measure } from './measured.ts'
import { separatorLength } from './range-separator.ts'
import { good, type Read, refuse, within } from './read.ts'
import { readShareInWords } from './share-words.ts'
import type { AmountKind, WrittenAmount } from './written-amount.ts'
import { scanNumber, startsLikeNumber } from './written-number.ts'
import { tidyWritten } from './written-text.ts'

const example = '30 mL of vinegar, 1.5 % owf, 20:1 or 1/2 of acid'
const percentWord = /^(?:%|percent|per cent|pct)(?= |$|[a-z])/i
// One slip of the finger from owf, or its letters in another order.
const nearlyOwf = /^(?:[owf]{2,4}|[a-z]wf|o[a-z]f|ow[a-z]|[a-z]owf|o[a-z]wf|ow[a-z]f|owf[a-z])(?= |$)/i
const owfWords = /^(?:o\.?w\.?f\.?|w\.?o\.?f\.?|on (?:the )?weight of (?:the )?(?:fib(?:re|er)s?|goods))(?= |$)/i
// "2 % of the fibre" means the weight of the goods, but reads like a share of a material of that name.
const goodsWords = /^(?:the )?(?:dry )?(?:weight of (?:the )?)?(?:fib(?:re|er)s?|goods|yarn|wool|skeins?)(?: weight)?$/i

/** Reads an amount of the protocol language: a volume, a mass, % owf, g/L, a liquor ratio, a share, the rest, a count of
 * drops and the like. Refused: numbers without a unit; units nobody agrees on unless `kitchen` says whose they are;
 * negative amounts; ranges; volumes over 1000 L, masses over 1000 kg, % owf and g/L over 1000, ratios outside 0.1 to
 * 1000, shares outside 0 to 1. */
export function readAmount(raw: string, options: { kitchen?: KitchenCountry | null } = {}): Read<WrittenAmount> {
  const written = tidyWritten(raw, example)
  if (!written.ok) return written
  const { text, asEntered, approx } = written.value
  const read = readShareInWords(text) ?? readNumbered(text, options.kitchen ?? undefined)
  return read.ok ? good({ ...read.value, asEntered, approx }) : read
}

function readNumbered(text: string, kitchen: KitchenCountry | undefined): Read<AmountKind> {
  if (!startsLikeNumber(text)) return refuse('not-a-number', text, `Begin with a number, for example ${example}.`)
  const number = scanNumber(text)
  if (!number.ok) return number
  const { value, length } = number.value
  const tail = text.slice(length)
  const rest = tail.trim()
  const ratio = /^ ?: ?(?=\d)/.exec(tail) ?? /^ to (?=\S+$)/i.exec(tail)
  if (ratio) return readRatio(value, tail.slice(ratio[0].length), text)
  const between = separatorLength(tail)
  if (between > 0 && startsLikeNumber(tail.slice(between))) {
    return refuse('one-value-wanted', text, 'Give one amount, not a range, for example 30 mL.')
  }
  if (value < 0) return refuse('out-of-range', text, 'An amount is 0 or more, for example 30 mL.')
  if (startsLikeNumber(rest)) return refuse('not-a-number', text, 'Write one number, for example 1.5 or 1 1/2.')
  if (rest === '') {
    const share = value > 0 && value < 1 ? `, or a share such as ${text} of acid` : ''
    return refuse('unit-missing', text, `Write ${text} % owf, ${text} g or ${text} mL${share}.`)
  }
  if (/^of(?= |$)/i.test(rest)) return readShare(value, rest.slice(2), text)
  const percent = percentWord.exec(rest)
  if (percent) return readPercentAmount(value, rest.slice(percent[0].length).trim(), text)
  return readWithUnit(value, rest, text, kitchen)
}

function readRatio(left: number, rightText: string, text: string): Read<AmountKind> {
  const right = scanNumber(rightText)
  const help = 'Write the liquor ratio with 1 for the goods, for example 20:1.'
  if (!right.ok || right.value.length !== rightText.length) return refuse('ratio-unclear', text, help)
  if (left !== 1 && right.value.value !== 1) return refuse('ratio-unclear', text, help)
  const ratio = left === 1 ? right.value.value : left
  const limited = within(ratio, 0.1, 1000, text, 'A liquor ratio lies between 0.1:1 and 1000:1, for example 20:1.')
  return limited.ok ? good({ kind: 'liquor', ratio }) : limited
}

function readShare(share: number, nameText: string, text: string): Read<AmountKind> {
  const name = readMaterialName(nameText)
  if (!name.ok) return name
  if (share >= 1) {
    // "1 of acid" may be all of it, or one of some unit left out.
    return refuse('unit-missing', text, `Write all of ${name.value}, a share such as 1/2 of ${name.value}, or a unit.`)
  }
  if (share <= 0) return refuse('out-of-range', text, 'A share lies above 0 and up to all, for example 1/2 of acid.')
  return good({ kind: 'share', share, of: name.value })
}

function readPercentAmount(percent: number, after: string, text: string): Read<AmountKind> {
  const owf = owfWords.exec(after)
  if (owf) {
    const name = readOf(after.slice(owf[0].length).trim())
    return name.ok ? bounded({ kind: 'owf', percent, of: name.value }, percent, text) : name
  }
  const name = /^of (.*)$/i.exec(after)?.[1]
  if (after === '' || name === undefined || goodsWords.test(name)) {
    if (after !== '' && name === undefined && !/^w\/[vw]$/i.test(after)) {
      const slip = nearlyOwf.exec(after)
      if (slip) {
        const of = after.slice(slip[0].length).replace(/^ (?:of )?/i, ' of ')
        return refuse('unit-unknown', slip[0], `Write ${percent} % owf${of}.`)
      }
      return refuse('of-missing', after, `Write ${percent} % of ${after}, or ${percent} % owf of ${after}.`)
    }
    const instead = `Write ${percent} % owf (of the dry goods' weight), or a share such as 50 % of acid.`
    return refuse('percent-of-what', text, instead)
  }
  if (percent <= 0 || percent > 100) {
    return refuse('out-of-range', text, 'A share lies above 0 % and up to 100 %, for example 50 % of acid.')
  }
  const material = readMaterialName(name)
  return material.ok ? good({ kind: 'share', share: percent / 100, of: material.value }) : material
}

function readWithUnit(
  value: number,
  rest: string,
  text: string,
  kitchen: KitchenCountry | undefined
): Read<AmountKind> {
  const cut = rest.search(/ of(?= |$)/i)
  const unitText = cut < 0 ? rest : rest.slice(0, cut)
  const of = readOf(cut < 0 ? '' : rest.slice(cut + 1))
  const perLitre = /^(m?g|grams?) ?(?:\/|per ) ?(?:l|litre|liter)$/i.exec(unitText)
  if (perLitre) {
    const gPerL = perLitre[1]?.toLowerCase() === 'mg' ? value / 1000 : value
    return of.ok ? bounded({ kind: 'gPerL', value: gPerL, of: of.value }, gPerL, text) : of
  }
  const measured = measure(value, unitText, kitchen)
  if (!measured.ok) return measured
  if (!of.ok) return of
  return bounded({ ...measured.value, of: of.value }, measured.value.value, text)
}

function readOf(text: string): Read<string | null> {
  if (text === '') return good(null)
  if (/^of(?= |$)/i.test(text)) return readMaterialName(text.slice(2))
  return refuse('of-missing', text, `Write "of" before the name, for example 1 % owf of ${text}.`)
}

/** Limits against slips of the finger, far beyond any kitchen. Common practice, no source. */
function bounded<T extends { kind: 'owf' | 'gPerL' | Measured['kind'] }>(
  amount: T,
  value: number,
  text: string
): Read<T> {
  const [most, shown] = amountMost[amount.kind]
  const limited = within(value, 0, most, text, `Write at most ${shown}.`)
  return limited.ok ? good(amount) : limited
}

const amountMost = {
  volume: [1e6, '1000 L'],
  mass: [1e6, '1000 kg'],
  count: [1e6, '1000000'],
  owf: [1000, '1000 % owf'],
  gPerL: [1000, '1000 g/L']
} as const
