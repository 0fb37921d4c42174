export type CannotTellCode = 'bad-input' | 'too-few' | 'not-one-curve' | 'steady' | 'may-level-off' | 'moves-away'

export type ReachedAt = {
  kind: 'reached-at'
  /** On the clock of the readings; before the last reading: it was reached then. Never before the first. */
  min: number
  lowMin: number
  /** Null: it may also be that it is never reached, or only after a day. */
  highMin: number | null
}

export type CannotTell = {
  kind: 'cannot-tell'
  code: CannotTellCode
  /** A sentence with °C and minutes as given; a screen in other units words the code itself. */
  why: string
  /** Of 'not-one-curve', where it is so: the readings from this minute on follow one curve. */
  fitsFromMin?: number
  /** Of 'steady' and 'may-level-off': not before this minute. */
  lowMin?: number
}

export type TimeToTemperature = ReachedAt | { kind: 'never' } | CannotTell

export function cannotTell(code: CannotTellCode, why: string): CannotTell {
  return { kind: 'cannot-tell', code, why }
}

/** A figure in a sentence, to the tenth. */
export function shown(value: number): string {
  return `${Math.round(value * 10) / 10}`.replace('-', '−')
}
