// What a match says, in a dyer's words and in figures.
import type { GreyStep, Pair, SkeinMatch } from '../../core/colour/index.ts'
import type { MatchedSide } from '../../core/record/swatch.ts'

/** 'Lighter, yellower', the largest difference first. */
export function pairSay({ words, chance }: Pick<Pair, 'words' | 'chance'>): string {
  if (chance === true) return 'No difference that these readings can show'
  const said = words.join(', ')
  return said === '' ? 'No difference that needs a word' : said[0]?.toUpperCase() + said.slice(1)
}

/** '3.2 ± 0.5'. A doubt is never shown as none. */
export function figureSay(value: number, sd: number | null): string {
  // No -0.0.
  const shown = (Math.round(10 * value) / 10 || 0).toFixed(1)
  return `${shown}${sd === null ? '' : ` ± ${Math.max(0.1, sd).toFixed(1)}`}`
}

/** 'ΔE00 3.2 ± 0.5'. */
export function deltaSay({ de00, sd }: Pick<Pair, 'de00' | 'sd'>): string {
  return `ΔE00 ${figureSay(de00, sd)}`
}

const sdWords: Record<NonNullable<Pair['sdOf']>, string> = {
  both: '±: one standard deviation, by how the readings stray.',
  skein: '±: one standard deviation, by how the skein’s readings stray; of what it is held against that is not known.',
  target:
    '±: one standard deviation, by how the readings of what it is held against stray; of the skein’s that is not known.'
}

export function doubtSay({ sdOf, chance }: Pick<Pair, 'sdOf' | 'chance'>): string {
  if (sdOf === null) {
    return 'How much these readings stray is not known: three photos or more, or readings typed several times, show it.'
  }
  return sdOf === 'both' && chance === false ? `${sdWords.both} The difference is more than that.` : sdWords[sdOf]
}

/** Steps between two whole ones are written as both: '3-4'. */
export const stepWords = (step: GreyStep): string =>
  Number.isInteger(step) ? String(step) : `${step - 0.5}-${step + 0.5}`

export function changeSay({ greyStep }: Pick<Pair, 'greyStep'>): string {
  return `As large as step ${stepWords(greyStep)} of the grey scale for change in colour (ISO 105-A02). Indicative: no grade of any standard.`
}

/** What to know of how the two were read. */
export function sidesSay({ white }: Pick<SkeinMatch, 'white'>, skein: MatchedSide, target: MatchedSide): string {
  const told = `Both are told against ${white}°.`
  const photos = [skein, target].filter(({ by }) => by === 'photo').length
  if (photos === 0) return told
  return photos === 2
    ? `${told} A camera sees colours in a way of its own: of two cameras, or two kinds of light, this is a rough figure.`
    : `${told} One is of a photo, and a camera sees colours in a way of its own: this is a rough figure.`
}

/** Which band differs most; null where there are none to compare. */
export function worstSay({ bands }: Pick<SkeinMatch, 'bands'>): string | null {
  const told = (bands ?? []).flatMap(({ band, pair }) => (pair === null ? [] : [{ band, pair }]))
  if (told.length < 2) return null
  const { band, pair } = told.reduce((worst, one) => (one.pair.de00 > worst.pair.de00 ? one : worst))
  return `Band ${band} differs most: ${deltaSay(pair)}, ${pairSay(pair).toLowerCase()}.`
}
