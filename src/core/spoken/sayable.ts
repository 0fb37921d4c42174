// Text as it is said: figures, units and signs become words, letters stay as they were written.
import type { Units } from '../quantity/units.ts'
import { figureWords, oneByOne, ordinalWords } from './number-words.ts'
import { type SaidUnit, unitPattern, unitWords } from './unit-words.ts'

const NUMBER = String.raw`(?:\d+ )?\d+ ?\/ ?\d+|\d{1,3}(?:,\d{3})+(?:\.\d+)?(?!\d)|\d+(?:[.,]\d+)?`
const quantity = new RegExp(
  String.raw`(?<![\p{L}\d])([−-](?=\d))?(${NUMBER})(?:( ?(?:–|—|\.{2,3}|-) ?)(${NUMBER}))?(?: ?(${unitPattern})(?![\p{L}\d]))?`,
  'gu'
)

const signs: [RegExp, string][] = [
  [/([\p{L}]) ?\/ ?(?=[\p{L}])/gu, '$1 or '],
  [/&/g, ' and '],
  [/\+/g, ' plus '],
  [/±/g, ' plus or minus '],
  [/=/g, ' equals '],
  [/×/g, ' times '],
  [/[<≪]/g, ' less than '],
  [/[>≫]/g, ' more than '],
  [/≤/g, ' at most '],
  [/≥/g, ' at least '],
  [/[~≈]/g, ' about '],
  [/→/g, ' to '],
  [/#/g, ' number '],
  [/@/g, ' at '],
  [/%/g, ' percent '],
  [/°/g, ' degrees '],
  [/[:;…|]| [–—-] /g, ', '],
  // What is left is no word and no pause: brackets, quotes, stars, pictures.
  [/[^\p{L}\p{M}\d\s.,?!'’-]/gu, ' '],
  [/(?<![\p{L}\p{M}\d])-|-(?![\p{L}\p{M}\d])/gu, ' '],
  [/\.(?=\S)/g, '. '],
  [/\s+(?=[,.?!])/g, ''],
  [/([,.])[,.]+/g, '$1'],
  [/\s+/g, ' ']
]

/** What a dyer or a protocol wrote, in words: no figure and no sign is left. "1/3 of 30 mL at 80–85 °C" is "a third of
 * thirty millilitres at eighty to eighty-five degrees". A comma before three figures parts thousands, else decimals. */
export function sayable(text: string, units: Units): string {
  const plain = text
    .replace(/\p{No}/gu, (sign) => ` ${sign.normalize('NFKC').replace('⁄', '/')}`)
    .replace(/[\p{Zs}\s]+/gu, ' ')
    .replace(/\d{4}-\d\d-\d\d/g, (date) => date.split('-').map(oneByOne).join(', '))
    .replace(/([\p{L}\p{M}])(?=\d)/gu, '$1 ')
    .replace(/\b(\d+)(?:st|nd|rd|th)\b/g, (_, figures: string) => ordinalWords(Number(figures)))
    .replace(/(\d+) ?: ?(\d+)/g, (_, left: string, right: string) =>
      left === '1' || right === '1' ? `${left} to ${right}` : `${left} ${right}`
    )
  const said = plain.replace(
    quantity,
    (_, minus: string | undefined, first: string, between: string | undefined, second = '', written = '') =>
      ` ${minus ? 'minus ' : ''}${quantityWords(first, between === undefined ? null : second, written, units)} `
  )
  // A figure that stood in no number of ours (of another script, say) is still no word.
  const spelt = said.replace(/\d/g, (figure) => ` ${oneByOne(figure)} `).replace(/\p{N}/gu, ' ')
  return signs.reduce((soFar, [sign, word]) => soFar.replace(sign, word), spelt).trim()
}

function quantityWords(first: string, second: string | null, written: string, units: Units): string {
  const unit = written === '' ? null : unitWords(written, units)
  if (second === null) return unit === null ? bareWords(first, units) : measuredWords(first, unit, units)
  const last = unit === null ? bareWords(second, units) : `${bareWords(second, units)} ${unit.many}`
  return `${bareWords(first, units)} to ${last}`
}

/** A number without a unit: "one point five", "a third", "one and a half". */
function bareWords(figures: string, units: Units): string {
  const part = partOf(figures)
  if (part === null) return figureWords(pointed(figures, units))
  const { whole, upper, lower } = part
  const words = partWords(upper, lower)
  return whole === null ? words : `${figureWords(whole)} and ${words}`
}

function measuredWords(figures: string, unit: SaidUnit, units: Units): string {
  const part = partOf(figures) ?? partOfDecimal(pointed(figures, units), unit)
  if (part === null) {
    const plain = pointed(figures, units)
    return `${figureWords(plain)} ${Number(plain) === 1 ? unit.one : unit.many}`
  }
  const words = partWords(part.upper, part.lower)
  if (part.whole !== null && Number(part.whole) > 0) return `${figureWords(part.whole)} and ${words} ${unit.many}`
  const article = /^(?:[aei]|o|hour)/i.test(unit.one) ? 'an' : 'a'
  return words === 'a half' ? `half ${article} ${unit.one}` : `${words} of ${article} ${unit.one}`
}

type Part = { whole: string | null; upper: number; lower: number }

function partOf(figures: string): Part | null {
  const match = /^(?:(\d+) )?(\d+) ?\/ ?(\d+)$/.exec(figures)
  return match === null ? null : { whole: match[1] ?? null, upper: Number(match[2]), lower: Number(match[3]) }
}

/** "1.5 g" is said as one and a half; the quarters only of spoons and cups, which there are. */
function partOfDecimal(figures: string, { part }: SaidUnit): Part | null {
  const match = /^(\d+)\.(5|25|75)$/.exec(figures)
  if (match === null || part === 'none') return null
  const [, whole = '0', rest = ''] = match
  if (rest === '5') return { whole, upper: 1, lower: 2 }
  return part === 'quarter' ? { whole, upper: rest === '25' ? 1 : 3, lower: 4 } : null
}

function partWords(upper: number, lower: number): string {
  const names: Record<number, string> = { 2: 'half', 4: 'quarter' }
  if (lower < 2 || lower > 12) return `${figureWords(String(upper))} over ${figureWords(String(lower))}`
  const name = names[lower] ?? ordinalWords(lower)
  if (upper === 1) return name === 'eighth' || name === 'eleventh' ? `an ${name}` : `a ${name}`
  return `${figureWords(String(upper))} ${name === 'half' ? 'halves' : `${name}s`}`
}

/** With a decimal point and nothing else between the figures. */
function pointed(figures: string, units: Units): string {
  const thousands = units.decimal !== 'comma' && /^[1-9]\d{0,2}(?:,\d{3})+/.test(figures)
  return thousands ? figures.replaceAll(',', '') : figures.replace(',', '.')
}
