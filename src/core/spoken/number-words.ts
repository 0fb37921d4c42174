// Numbers as they are said in English, with "and" before the tens: "one hundred and five".

/** From here on figures are said one by one: nobody weighs out a million. */
const MOST = 999_999

const small = [
  ...['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'],
  ...['thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen']
]
const tens = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety']
const oddOrdinals: Record<string, string> = {
  one: 'first',
  two: 'second',
  three: 'third',
  five: 'fifth',
  eight: 'eighth',
  nine: 'ninth',
  twelve: 'twelfth'
}

/** A number in words, to the thousandth: "one hundred and five", "one point five", "minus three". Beyond 999 999 figure
 * by figure; what is no number is "not known". */
export function numberWords(value: number): string {
  if (!Number.isFinite(value)) return 'not known'
  const size = Math.abs(value)
  const rounded = size < 1e21 ? size.toFixed(3).replace(/\.?0+$/, '') : BigInt(size).toString()
  return `${value < 0 && /[1-9]/.test(rounded) ? 'minus ' : ''}${figureWords(rounded)}`
}

/** The same for written figures with a decimal point; kept as written, zeros at either end and all: "zero five". */
export function figureWords(figures: string): string {
  const [whole = '', part] = figures.split('.')
  const before = whole === '' ? 'zero' : wholeWords(whole)
  return part === undefined || part === '' ? before : `${before} point ${oneByOne(part)}`
}

/** "first", "second", "twenty-third". */
export function ordinalWords(value: number): string {
  const words = numberWords(value)
  const last = /[a-z]+$/.exec(words)?.[0] ?? ''
  const ordinal = oddOrdinals[last] ?? (last.endsWith('y') ? `${last.slice(0, -1)}ieth` : `${last}th`)
  return words.slice(0, words.length - last.length) + ordinal
}

export function oneByOne(figures: string): string {
  return [...figures].map((figure) => small[Number(figure)]).join(' ')
}

function wholeWords(figures: string): string {
  const value = Number(figures)
  if (value > MOST || (figures.length > 1 && figures.startsWith('0'))) return oneByOne(figures)
  return belowMillion(value)
}

function belowMillion(value: number): string {
  if (value < 1_000) return belowThousand(value)
  const rest = value % 1_000
  const thousands = `${belowThousand(Math.floor(value / 1_000))} thousand`
  if (rest === 0) return thousands
  return `${thousands}${rest < 100 ? ' and ' : ' '}${belowThousand(rest)}`
}

function belowThousand(value: number): string {
  if (value < 100) return belowHundred(value)
  const rest = value % 100
  const hundreds = `${small[Math.floor(value / 100)]} hundred`
  return rest === 0 ? hundreds : `${hundreds} and ${belowHundred(rest)}`
}

function belowHundred(value: number): string {
  if (value < 20) return small[value] ?? ''
  const one = value % 10
  const ten = tens[Math.floor(value / 10)] ?? ''
  return one === 0 ? ten : `${ten}-${small[one]}`
}
