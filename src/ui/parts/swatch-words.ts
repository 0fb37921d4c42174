// What a verdict on a skein says, in the words of the house. The reasons themselves come with the verdict.
import type { Fault, PositionFound } from '../../core/colour/index.ts'
import { markName } from '../../core/colour/index.ts'
import { localClock } from '../../core/record/local-time.ts'
import type { Judgement } from '../../core/record/swatch.ts'

const faultWords: Record<Fault['code'], string> = {
  clipped: 'Too bright or too dark to read',
  'too-dark': 'Too dark',
  'two-lights': 'Two lights, or a shadow',
  'grey-not-neutral': 'The grey card is not neutral',
  'too-small': 'Too small'
}

/** 'Two lights, or a shadow, undyed 2: …'. */
export function faultSay(fault: Fault, name = markName(fault)): string {
  return `${faultWords[fault.code]}, ${name}: ${fault.say}`
}

const leftOutWords: Record<NonNullable<PositionFound['leftOut']>, string> = {
  wicking: 'Above the liquor, never counts',
  'too-pale': 'Too pale to have a hue',
  'outside-series': 'Deeper or paler than the series',
  'bad-patch': 'Can’t be read'
}

export function countsWords({ leftOut }: Pick<PositionFound, 'leftOut'>): string {
  return leftOut === null ? 'Counts' : leftOutWords[leftOut]
}

export function foundBy({ found }: Pick<Judgement, 'found'>): string {
  if (found.type === 'SwatchSeen') {
    return `${found.words}${found.light ? ` Seen in ${found.light}.` : ''} Not measured.`
  }
  const { photos, by, white } = found
  if (by === 'instrument') return `By readings typed from an instrument, ${white}.`
  return `By ${photos.length === 1 ? 'one photo' : `${photos.length} photos`}. Indicative.`
}

/** '2031-06-14 09:05', where it was written. */
export function whenSay({ atMs, tzOffsetMin }: Pick<Judgement, 'atMs' | 'tzOffsetMin'>): string {
  const day = new Date(atMs + tzOffsetMin * 60_000).toISOString().slice(0, 10)
  return `${day} ${localClock(atMs, tzOffsetMin)}`
}

/** '2031-06-14 09:05, Mo'. */
export function whenBy(found: Pick<Judgement, 'atMs' | 'tzOffsetMin' | 'by'>): string {
  return `${whenSay(found)}${found.by ? `, ${found.by}` : ''}`
}
