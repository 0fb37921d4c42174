import { type KitchenCountry, readKitchenUnit } from './kitchen-unit.ts'
import { type MassUnit, massG } from './mass-units.ts'
import { good, type Read, refuse } from './read.ts'
import { type VolumeUnit, volumeML } from './volume-units.ts'
import { scanNumber, startsLikeNumber } from './written-number.ts'

/** A volume in mL, a mass in g, or things counted. */
export type Measured =
  | { kind: 'volume'; value: number; unit: 'mL' }
  | { kind: 'mass'; value: number; unit: 'g' }
  | { kind: 'count'; value: number; unit: string }

type KnownUnit =
  | { kind: 'volume'; unit: VolumeUnit }
  | { kind: 'mass'; unit: MassUnit }
  | { kind: 'count'; unit: string }

const volumeWords: [RegExp, VolumeUnit][] = [
  [/^(?:ml|cc|cm3|cm³|millilitres?|milliliters?)$/, 'mL'],
  [/^(?:cl|centilitres?|centiliters?)$/, 'cL'],
  [/^(?:dl|decilitres?|deciliters?)$/, 'dL'],
  [/^(?:l|litres?|liters?)$/, 'L']
]
const massWords: [RegExp, MassUnit][] = [
  [/^(?:g|grams?|grammes?)$/, 'g'],
  [/^(?:kg|kilos?|kilograms?|kilogrammes?)$/, 'kg'],
  [/^(?:mg|milligrams?|milligrammes?)$/, 'mg'],
  [/^(?:oz|ounces?)$/, 'oz'],
  [/^(?:lbs?|pounds?)$/, 'lb'],
  [/^troy (?:oz|ounces?)$/, 'troy oz'],
  [/^stones?$/, 'stone']
]
// Only things a dyer can count one by one. An open list would take a misspelt unit for a thing.
const countWords: [RegExp, string][] = [
  [/^drops?$/, 'drops'],
  [/^pieces?$/, 'pieces'],
  [/^tablets?$/, 'tablets'],
  [/^skeins?$/, 'skeins'],
  [/^jars?$/, 'jars']
]

function knownUnit(words: string, kitchen: KitchenCountry | undefined): Read<KnownUnit> | null {
  const plain = words.toLowerCase().replaceAll('.', '').trim()
  // "50 grain" on a vinegar bottle is its strength (5 %), not a mass; "gr" is grain to one writer and gram to another.
  if (/^(?:grains?|gr)$/.test(plain)) {
    const instead = 'For strength write % (50 grain vinegar is 5 %); for mass write grams (one grain is 0.0648 g).'
    return refuse('grain-unclear', words, instead)
  }
  const volume = volumeWords.find(([pattern]) => pattern.test(plain))
  if (volume) return good({ kind: 'volume', unit: volume[1] })
  const mass = massWords.find(([pattern]) => pattern.test(plain))
  if (mass) return good({ kind: 'mass', unit: mass[1] })
  const count = countWords.find(([pattern]) => pattern.test(plain))
  if (count) return good({ kind: 'count', unit: count[1] })
  const cup = readKitchenUnit(plain, kitchen)
  if (!cup) return null
  return cup.ok ? good({ kind: 'volume', unit: cup.value }) : refuse(cup.problem.code, words, cup.problem.instead)
}

/** Turns a number and the unit words after it into mL, g or a count. "1 lb 4 oz" is one mass. */
export function measure(value: number, unitText: string, kitchen: KitchenCountry | undefined): Read<Measured> {
  const whole = knownUnit(unitText, kitchen)
  if (whole) return whole.ok ? good(inCanonicalUnit(value, whole.value)) : whole
  const words = unitText.split(' ')
  for (let taken = words.length - 1; taken > 0; taken--) {
    const head = words.slice(0, taken).join(' ')
    const unit = knownUnit(head, kitchen)
    if (!unit) continue
    return unit.ok ? withRest(value, unit.value, head, words.slice(taken).join(' '), kitchen) : unit
  }
  return refuse('unit-unknown', unitText, unknownHelp(unitText))
}

function inCanonicalUnit(value: number, known: KnownUnit): Measured {
  switch (known.kind) {
    case 'volume':
      return { kind: 'volume', value: volumeML(value, known.unit), unit: 'mL' }
    case 'mass':
      return { kind: 'mass', value: massG(value, known.unit), unit: 'g' }
    case 'count':
      return { kind: 'count', value, unit: known.unit }
  }
}

function withRest(
  value: number,
  unit: KnownUnit,
  head: string,
  rest: string,
  kitchen: KitchenCountry | undefined
): Read<Measured> {
  const name = rest.replace(/^of\b ?/i, '')
  if (!startsLikeNumber(rest)) {
    return refuse('of-missing', rest, `Write "of" before the name: ${value} ${head} of ${name || 'acid'}.`)
  }
  const second = scanNumber(rest)
  if (!second.ok) return second
  const secondUnit = knownUnit(rest.slice(second.value.length).trim(), kitchen)
  if (unit.unit !== 'lb' || !secondUnit?.ok || secondUnit.value.unit !== 'oz') {
    return refuse('two-amounts', rest, `Write one amount, for example 1.5 ${head}.`)
  }
  if (second.value.value < 0 || second.value.value >= 16) {
    return refuse('out-of-range', rest, 'Write pounds and less than 16 ounces, for example 1 lb 4 oz.')
  }
  return good({ kind: 'mass', value: massG(value, 'lb') + massG(second.value.value, 'oz'), unit: 'g' })
}

function unknownHelp(unitText: string): string {
  if (/^[tc]$/i.test(unitText)) return 'Write the measure out with its country, for example 2 US tbsp or 1 metric cup.'
  if (/^%? ?w\/[vw]$/i.test(unitText)) return 'That is a strength; write an amount, for example 30 mL or 2 % owf.'
  return 'Write mL, L, g, kg, oz, lb or a kitchen measure with its country, for example 30 mL; or a share: 1/2 of acid.'
}
