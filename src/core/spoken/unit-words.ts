// Units as they are said.
import type { Units } from '../quantity/units.ts'

/** `part`: said in halves ("one and a half grams"), of kitchen measures also in quarters. */
export type SaidUnit = { one: string; many: string; part: 'none' | 'half' | 'quarter' }

const unit = (one: string, part: SaidUnit['part'] = 'half', many = `${one}s`): SaidUnit => ({ one, many, part })
const percent = (of: string): SaidUnit => unit(`percent${of}`, 'none', `percent${of}`)
const perLitre = (one: string): SaidUnit => unit(`${one} per litre`, 'none', `${one}s per litre`)

const kitchenUnits: Record<string, SaidUnit> = {
  tbsp: unit('tablespoon', 'quarter'),
  tsp: unit('teaspoon', 'quarter'),
  cup: unit('cup', 'quarter'),
  'fl oz': unit('fluid ounce'),
  pint: unit('pint'),
  quart: unit('quart'),
  gallon: unit('gallon')
}

const plainUnits: Record<string, SaidUnit> = {
  ...kitchenUnits,
  mL: unit('millilitre'),
  cL: unit('centilitre'),
  dL: unit('decilitre'),
  L: unit('litre'),
  mg: unit('milligram'),
  g: unit('gram'),
  kg: unit('kilogram'),
  oz: unit('ounce'),
  lb: unit('pound'),
  s: unit('second'),
  sec: unit('second'),
  min: unit('minute'),
  h: unit('hour'),
  hr: unit('hour'),
  mm: unit('millimetre'),
  cm: unit('centimetre'),
  'g/L': perLitre('gram'),
  'mg/L': perLitre('milligram'),
  'mL/L': perLitre('millilitre'),
  '%': percent(''),
  '% owf': percent(' of the weight of the goods'),
  '% w/v': percent(' by weight in volume'),
  '% w/w': percent(' by weight')
}

const countries = ['US legal', 'US', 'metric', 'imperial', 'Australian']

/** What is written, with and without the "s" of many and in small letters too, and what is said for it. */
const writings: [string, SaidUnit][] = [
  ...Object.entries(plainUnits),
  ...countries.flatMap((country) =>
    Object.entries(kitchenUnits).map(([written, { one, many, part }]): [string, SaidUnit] => [
      `${country} ${written}`,
      { one: `${country} ${one}`, many: `${country} ${many}`, part }
    ])
  )
].flatMap(([written, said]): [string, SaidUnit][] => {
  const writtens = /[a-z]{2}$/i.test(written) ? [written, `${written}s`] : [written]
  return writtens.flatMap((text): [string, SaidUnit][] => [
    [text, said],
    [text.toLowerCase(), said]
  ])
})
const byWriting = new Map(writings)

/** Units as written after a number, longest first. An inch is none of them: "Acid 2 in" is a call. */
export const unitPattern: string = ['°? ?[CF] ?\\/ ?min', '°? ?[CF]', '°', ...byWriting.keys()]
  .sort((a, b) => b.length - a.length)
  .map((text) => text.replace('% ', '% ?'))
  .join('|')

/** The words of a unit; null: not a unit. Degrees are said without their scale where it is the dyer's own. */
export function unitWords(written: string, units: Units): SaidUnit | null {
  const text = written.trim().replace(/^%(?=\w)/, '% ')
  const degrees = /^°? ?([CF])?( ?\/ ?min)?$/.exec(text)
  if (degrees && text !== '') return degreeWords(degrees[1], degrees[2] !== undefined, units)
  return byWriting.get(text) ?? null
}

function degreeWords(scale: string | undefined, perMinute: boolean, units: Units): SaidUnit {
  const own = scale === undefined || scale === units.temperature
  const end = `${own ? '' : scale === 'C' ? ' Celsius' : ' Fahrenheit'}${perMinute ? ' per minute' : ''}`
  return unit(`degree${end}`, 'none', `degrees${end}`)
}
