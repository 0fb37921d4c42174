// Sentences that can be heard out: under ten seconds even from a slow voice, because some voices are cut soon after.
import { capital } from '../protocol/words.ts'

/** A slow voice. Common practice, no source: voices speak at 150 to 200 words a minute. */
const WORDS_PER_SECOND = 2.5
const LONGEST_SECONDS = 9.6
const NAME_WORDS_MOST = 6

/** How long a slow voice takes over a text, seconds; "eighty-five" is two words. */
export function slowSeconds(text: string): number {
  return text.split(/[\s-]+/).filter((word) => /\p{L}/u.test(word)).length / WORDS_PER_SECOND
}

export function fits(text: string): boolean {
  return slowSeconds(text) <= LONGEST_SECONDS
}

/** "Plum. Acid two." from what is to be said one after the other. */
export function phrase(parts: readonly string[]): string {
  return parts
    .map((part) => capital(part.trim()).replace(/[.,]+$/, ''))
    .filter((part) => part !== '')
    .map((part) => (/[?!]$/.test(part) ? part : `${part}.`))
    .join(' ')
}

/** The first wording that can be heard out. Nothing is ever cut short in the middle: half an amount is a wrong one. */
export function firstThatFits(wordings: readonly (readonly string[])[]): string {
  const phrases = wordings.map(phrase)
  return phrases.find(fits) ?? phrases.at(-1) ?? ''
}

/** What a pot is called out by: its colourway where that is short, else its letter. */
export function calledPot(colourway: string, letter: string): string {
  const short = slowSeconds(colourway) * WORDS_PER_SECOND <= NAME_WORDS_MOST && /\p{L}/u.test(colourway)
  return short ? colourway : `Pot ${letter}`
}
