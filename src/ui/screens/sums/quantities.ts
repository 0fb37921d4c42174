// The kinds of quantity that sums ask for: in which units, how they are read, how they are shown.
import {
  type BenchUnit,
  type Read,
  readAmount,
  readDuration,
  readIn,
  readMass,
  readNumber,
  readPercent,
  readRate,
  readTemperature,
  readVolume,
  showDuration,
  showMass,
  showNumber,
  showPercent,
  showRate,
  showTemperature,
  showVolume,
  type Units,
  unitsIn
} from '../../../core/quantity/index.ts'
import type { Quantity, Typed } from './field.ts'

type More = Pick<Quantity<unknown>, 'pickInRow'> & {
  hint?: string
  when?: (typed: Typed) => boolean
  start?: string | ((units: Units) => string)
}

type Kind<T> = Pick<Quantity<T>, 'units' | 'read' | 'show' | 'sign'>

function quantity<T>(label: string, kind: Kind<T>, { start = '', ...more }: More): Quantity<T> {
  const begin = typeof start === 'string' ? () => start : start
  return { form: 'quantity', label, optional: false, start: begin, ...kind, ...more }
}

const firstOf =
  (list: readonly string[], own: (units: Units) => string) =>
  (units: Units): string[] => [own(units), ...list.filter((unit) => unit !== own(units))]

/** Goods and whatever else a kitchen scale weighs, in g. */
export const mass = (label: string, more: More = {}): Quantity<number> =>
  quantity(
    label,
    {
      units: firstOf(['g', 'kg', 'oz', 'lb'], ({ mass }) => (mass === 'us' ? 'oz' : 'g')),
      read: (text) => readMass(text),
      show: showMass
    },
    more
  )

export const goods = (more: More = {}): Quantity<number> => mass('Dry weight of the goods', more)

/** Powder and acid in g: a fine scale is marked in grams everywhere. */
export const powder = (label: string, more: More = {}): Quantity<number> =>
  quantity(label, { units: () => ['g', 'mg', 'oz'], read: (text) => readMass(text), show: showMass }, more)

const liquorUnits = ['mL', 'L', 'US cup', 'US quart', 'US gallon', 'metric cup', 'imperial pint', 'imperial gallon']
const ownLiquor = { metric: 'mL', us: 'US quart', imperial: 'imperial pint' } as const

/** What a pot or a jug holds, in mL. */
export const liquor = (label: string, more: More = {}): Quantity<number> =>
  quantity(
    label,
    {
      units: firstOf(liquorUnits, ({ volume }) => ownLiquor[volume]),
      read: (text) => readVolume(text),
      show: showVolume
    },
    more
  )

const doseUnits = ['mL', 'L', 'US tsp', 'US tbsp', 'US fl oz', 'US cup', 'metric tsp', 'metric tbsp', 'imperial fl oz']

/** A dose in mL: a syringe is marked in mL everywhere. */
export const dose = (label: string, more: More = {}): Quantity<number> =>
  quantity(label, { units: () => doseUnits, read: (text) => readVolume(text), show: showVolume }, more)

export type PlainDose = { value: number; unit: 'mL' | 'g' }

/** Whatever a recipe gives, in mL or g. */
export const portion = (label: string, more: More = {}): Quantity<PlainDose> =>
  quantity(
    label,
    {
      units: () => ['mL', 'g', 'L', 'oz', 'US tsp', 'US tbsp', 'metric tsp', 'metric tbsp'],
      read: (text): Read<PlainDose> => {
        const read = readAmount(text)
        if (!read.ok && read.problem.code !== 'unit-missing') return read
        const amount = read.ok ? read.value : null
        if (amount?.kind === 'volume') return { ok: true, value: { value: amount.value, unit: 'mL' } }
        if (amount?.kind === 'mass') return { ok: true, value: { value: amount.value, unit: 'g' } }
        const instead = 'Write a volume or a mass, for example 30 mL or 2 g.'
        return { ok: false, problem: { code: 'not-a-volume', found: text, instead } }
      },
      show: ({ value, unit }, units) => (unit === 'mL' ? showVolume(value, units) : showMass(value, units))
    },
    { pickInRow: true, ...more }
  )

/** A percentage whose field says what it is of; the same words may be typed behind it. */
function percent(sign: string, words: RegExp, example: string): Kind<number> {
  return {
    units: () => [],
    sign,
    read: (text) => {
      const read = readPercent(text.replace(words, ''), { bare: true })
      if (read.ok || read.problem.code !== 'not-a-percent') return read
      return { ok: false, problem: { ...read.problem, instead: `Write the number alone, for example ${example}.` } }
    },
    show: (value, units) => showPercent(value, units)
  }
}

/** % on the weight of the fibre. */
export const owf = (label: string, more: More = {}): Quantity<number> =>
  quantity(label, percent('% owf', / *(?:%? *(?:o\.?w\.?f\.?|w\.?o\.?f\.?))$/i, '0.8 (% owf)'), more)

/** g in 100 mL. */
export const wv = (label: string, more: More = {}): Quantity<number> =>
  quantity(label, percent('% w/v', / *%? *w\/v$/i, '1 (% w/v: g in 100 mL)'), more)

export const percentage = (label: string, more: More = {}): Quantity<number> =>
  quantity(label, percent('%', /(?!)/, '16 %'), more)

/** mL of liquor for each g of goods: 30:1, or 30. */
export const ratio = (label: string, more: More = {}): Quantity<number> =>
  quantity(
    label,
    {
      units: () => [],
      sign: ': 1',
      read: (text) => {
        if (!/:|\bto\b/.test(text)) return readNumber(text)
        const read = readAmount(text)
        if (!read.ok) return read
        if (read.value.kind === 'liquor') return { ok: true, value: read.value.ratio }
        return { ok: false, problem: { code: 'ratio-unclear', found: text, instead: 'Write it like 30:1, or 30.' } }
      },
      show: (value, units) => `${showNumber(value, 2, units)}:1`
    },
    more
  )

/** A number without a unit, or with a sign that is shown only. */
export const number = (label: string, more: More & { sign?: string } = {}): Quantity<number> =>
  quantity(
    label,
    {
      units: () => [],
      sign: more.sign,
      read: (text) => readNumber(text),
      show: (value, units) => showNumber(value, 3, units)
    },
    more
  )

/** How many. */
export const count = (label: string, more: More = {}): Quantity<number> => {
  const plain = number(label, more)
  return {
    ...plain,
    read: (text) => {
      const read = plain.read(text)
      if (!read.ok || Number.isInteger(read.value)) return read
      return {
        ok: false,
        problem: { code: 'not-a-number', found: text, instead: 'Write a whole number, for example 6.' }
      }
    }
  }
}

const byScale = <T extends string>(c: T, f: T): ((units: Units) => T) => {
  return ({ temperature }) => (temperature === 'C' ? c : f)
}

/** In °C. `startC` and `startF`: what it begins with, round in either scale. */
export const temperature = (
  label: string,
  more: More & { startC?: string; startF?: string } = {}
): Quantity<number> => {
  const { startC = '', startF = '', ...rest } = more
  return quantity(
    label,
    {
      units: firstOf(['°C', '°F'], byScale('°C', '°F')),
      read: (text) => {
        const read = readTemperature(text)
        return read.ok ? { ok: true, value: read.value.tempC } : read
      },
      show: (value, units) => showTemperature(value, units, { digits: 1 })
    },
    { start: byScale(startC, startF), ...rest }
  )
}

/** In °C per minute. */
export const rate = (label: string, more: More = {}): Quantity<number> =>
  quantity(
    label,
    {
      units: firstOf(['°C/min', '°F/min', '°C/h', '°F/h'], byScale('°C/min', '°F/min')),
      read: (text) => {
        const read = readRate(text)
        return read.ok ? { ok: true, value: read.value.cPerMin } : read
      },
      show: showRate
    },
    more
  )

/** A length of time, in minutes. */
export const minutes = (label: string, more: More = {}): Quantity<number> =>
  quantity(
    label,
    {
      units: () => ['min', 's', 'h', 'days'],
      read: (text) => {
        const read = readDuration(text)
        if (!read.ok) return read
        const { lowMs, highMs } = read.value
        if (lowMs === highMs) return { ok: true, value: lowMs / 60_000 }
        return {
          ok: false,
          problem: { code: 'one-value-wanted', found: text, instead: 'Write one time, for example 20 min.' }
        }
      },
      show: (value) => (value === 0 ? '' : showDuration(value * 60_000))
    },
    more
  )

const bench = (label: string, kind: BenchUnit, own: (units: Units) => string, more: More): Quantity<number> => {
  const plain = unitsIn(kind)[0] ?? ''
  return quantity(
    label,
    {
      units: firstOf(unitsIn(kind), own),
      read: (text) => readIn(text, kind),
      show: (value, units) => `${showNumber(value, 2, units)}\u00a0${plain}`
    },
    more
  )
}

/** In m. Who measures in US units has a map in feet. */
export const altitude = (label: string, more: More = {}): Quantity<number> =>
  bench(label, 'altitude', ({ volume }) => (volume === 'us' ? 'ft' : 'm'), more)
/** In hPa. */
export const pressure = (label: string, more: More = {}): Quantity<number> =>
  bench(label, 'pressure', ({ volume }) => (volume === 'us' ? 'inHg' : 'hPa'), more)
/** In kW. */
export const power = (label: string, more: More = {}): Quantity<number> => bench(label, 'power', () => 'kW', more)
/** In mg/L as CaCO3. */
export const alkalinity = (label: string, more: More = {}): Quantity<number> =>
  bench(label, 'alkalinity', () => 'mg/L', more)
/** A difference of temperatures, in °C. */
export const difference = (label: string, more: More = {}): Quantity<number> =>
  bench(label, 'difference', byScale('°C', '°F'), more)
