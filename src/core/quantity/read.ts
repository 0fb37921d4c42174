// What reading gives back: a value, or one coded problem that says what stood there and what would be right.

export const quantityProblemCodes = [
  'empty',
  'too-long',
  'not-a-number',
  'comma-ambiguous',
  'digits-grouped',
  'unit-missing',
  'unit-unknown',
  'cup-without-country',
  'tablespoon-without-country',
  'teaspoon-without-country',
  'fluid-ounce-without-country',
  'pint-without-country',
  'quart-without-country',
  'gallon-without-country',
  'grain-unclear',
  'of-missing',
  'name-unclear',
  'percent-of-what',
  'ratio-unclear',
  'one-value-wanted',
  'two-amounts',
  'out-of-range',
  'range-backwards',
  'clock-unclear',
  'not-a-volume',
  'not-a-mass',
  'not-a-percent',
  'not-a-length-of-time',
  'not-a-temperature',
  'not-a-rate',
  'not-a-depth'
] as const
export type QuantityProblemCode = (typeof quantityProblemCodes)[number]

/** `found`: what stood there. `instead`: a short sentence of what would be right, with an example. */
export type QuantityProblem = { code: QuantityProblemCode; found: string; instead: string }

export type Refused = { ok: false; problem: QuantityProblem }
export type Read<T> = { ok: true; value: T } | Refused

export function good<T>(value: T): Read<T> {
  return { ok: true, value }
}

export function refuse(code: QuantityProblemCode, found: string, instead: string): Refused {
  return { ok: false, problem: { code, found, instead } }
}

/** Refuses a value outside least..most; `shown` names the limits as the reader of the message writes them. */
export function within(value: number, least: number, most: number, found: string, shown: string): Read<number> {
  // A limit reached through a conversion (248 °F is 120 °C) may miss it by a rounding error of the last bit.
  const slack = 1e-9
  if (value >= least - slack && value <= most + slack) return good(value)
  return refuse('out-of-range', found, shown)
}
