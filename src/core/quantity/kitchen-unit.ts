// Kitchen measures have one name and several sizes: a cup is 236.6, 240, 250 or 284 mL. Without a country the choice
// is named and left to the writer, because a wrong guess changes the bath.
import { good, type QuantityProblemCode, type Read, refuse } from './read.ts'
import { type VolumeUnit, volumeML } from './volume-units.ts'

/** Whose cups and spoons a bare "cup" means. */
export type KitchenCountry = 'us' | 'metric' | 'imperial'

type Country = KitchenCountry | 'uk' | 'us legal' | 'australian'
type Measure = 'cup' | 'tbsp' | 'tsp' | 'fl oz' | 'pint' | 'quart' | 'gallon'
type Sizes = Partial<Record<Country, VolumeUnit>>

// There is no imperial spoon that sources agree on, so an imperial kitchen must say which spoon it means; and "UK cup"
// is refused, because it is 250 mL on one measure and 284 mL on another.
const sizes: Record<Measure, Sizes> = {
  cup: { us: 'US cup', metric: 'metric cup', imperial: 'imperial cup', 'us legal': 'US legal cup' },
  tbsp: { us: 'US tbsp', metric: 'metric tbsp', australian: 'Australian tbsp', 'us legal': 'US legal tbsp' },
  tsp: { us: 'US tsp', metric: 'metric tsp', 'us legal': 'US legal tsp' },
  'fl oz': { us: 'US fl oz', imperial: 'imperial fl oz', uk: 'imperial fl oz', 'us legal': 'US legal fl oz' },
  pint: { us: 'US pint', imperial: 'imperial pint', uk: 'imperial pint' },
  quart: { us: 'US quart', imperial: 'imperial quart', uk: 'imperial quart' },
  gallon: { us: 'US gallon', imperial: 'imperial gallon', uk: 'imperial gallon' }
}

const without: Record<Measure, QuantityProblemCode> = {
  cup: 'cup-without-country',
  tbsp: 'tablespoon-without-country',
  tsp: 'teaspoon-without-country',
  'fl oz': 'fluid-ounce-without-country',
  pint: 'pint-without-country',
  quart: 'quart-without-country',
  gallon: 'gallon-without-country'
}

const measureWords: [RegExp, Measure][] = [
  [/^cups?$/, 'cup'],
  [/^(?:tbsps?|tbs|tablespoons?|tablespoonfuls?)$/, 'tbsp'],
  [/^(?:tsps?|teaspoons?|teaspoonfuls?)$/, 'tsp'],
  [/^(?:fl ?oz|fluid (?:oz|ounces?))$/, 'fl oz'],
  [/^(?:pints?|pts?)$/, 'pint'],
  [/^(?:quarts?|qts?)$/, 'quart'],
  [/^(?:gallons?|gals?)$/, 'gallon']
]
const countryWords: [RegExp, Country][] = [
  [/^us legal /, 'us legal'],
  [/^(?:us|usa|american) /, 'us'],
  [/^metric /, 'metric'],
  [/^(?:imperial|imp) /, 'imperial'],
  [/^(?:uk|british) /, 'uk'],
  [/^(?:australian|aus|au) /, 'australian']
]

/** Reads a kitchen measure from unit words in lower case without dots; null where it is none. */
export function readKitchenUnit(words: string, kitchen: KitchenCountry | undefined): Read<VolumeUnit> | null {
  const country = countryWords.find(([pattern]) => pattern.test(words))
  const measureWord = country ? words.replace(country[0], '') : words
  const measure = measureWords.find(([pattern]) => pattern.test(measureWord))?.[1]
  if (!measure) return null
  const unit = country ? sizes[measure][country[1]] : kitchen && sizes[measure][kitchen]
  if (unit) return good(unit)
  if (country) return refuse('unit-unknown', words, `Write ${choices(measure)}.`)
  return refuse(without[measure], words, `Say which: ${choices(measure)}.`)
}

function choices(measure: Measure): string {
  const named = [...new Set(Object.values(sizes[measure]))].filter((unit) => !unit.startsWith('US legal'))
  return named.map((unit) => `${unit} (${Number(volumeML(1, unit).toFixed(1))} mL)`).join(' or ')
}
