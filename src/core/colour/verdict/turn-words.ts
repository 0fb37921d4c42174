// Which way a hue turned, in the words of a dyer.

/** The pure hues and their angles in CIELAB (from memory, to some 5 degrees): red, yellow, green, blue. */
const pure = [
  { word: 'redder', deg: 25 },
  { word: 'yellower', deg: 92 },
  { word: 'greener', deg: 163 },
  { word: 'bluer', deg: 246 }
] as const

export type TurnWord = (typeof pure)[number]['word']

/** A colour at `hueDeg` that turns: towards the next pure hue that way. `turn` above 0: the angle goes up. */
export function turnWord(hueDeg: number, turn: number): TurnWord {
  const away = (deg: number): number => ((turn > 0 ? deg - hueDeg : hueDeg - deg) + 720) % 360
  // At a pure hue itself it turns towards the next one.
  const ahead = pure.map(({ word, deg }) => ({ word, far: away(deg) || 360 })).sort((a, b) => a.far - b.far)
  return ahead[0]?.word ?? 'redder'
}
