// The reasons of a verdict, in words.
import type { AlongSkein } from './along-skein.ts'
import type { Why, WhyCode } from './answer.ts'
import type { Noise } from './given.ts'
import type { TurnWord } from './turn-words.ts'

const reasons = {
  wet: ['The yarn is wet: wet yarn is deeper, and of another hue.', 'Dry it and take the photos again.'],
  'two-fibres': [
    'Two fibres, cannot tell: each takes the dyes in its own way, so that one dye alone can look like two.',
    'Dye a skein of one fibre by the same programme.'
  ],
  'bad-photo': ['The photos have a fault.', 'Mend it and take the photos again.'],
  'no-control': [
    'There is no dilution series to compare with: dilution alone turns some dyes by many degrees.',
    'Dye a series in the same ratio on the same yarn, at least three depths from the deepest of the skein to the palest, each until the bath is clear; mark the undyed yarn too.'
  ],
  'flat-series': [
    'The series, from its deepest to the undyed yarn, differs by less than 10 L*: too little to compare at equal depth. Yellows are like that.',
    'Dye the series deeper, or judge such a dye by an instrument at one wavelength.'
  ],
  'no-repeats': [
    'How much the readings stray is not known.',
    'Take three or more photos of the same things, each laid anew.'
  ],
  'too-pale': [
    'Too much of the skein is too pale, or too grey, to have a hue of its own.',
    'Dye a skein deeper by the same programme.'
  ],
  'outside-series': [
    'Too much of the skein is deeper or paler than the series.',
    'Add swatches to the series until it reaches past both ends of the skein.'
  ],
  'bad-patch': [
    "Too much of the skein can't be read in the photos: too bright, too dark or too small.",
    'See what is said of each place, and take the photos again.'
  ],
  'too-few': ['Fewer than three positions along the skein count.', 'Mark more positions, from end to end.'],
  'not-one-way': [
    'The hue turns and turns back along the skein: uneven dyeing, or more than one cause.',
    'Look whether ties, folds or a shadow lie where it turns back; dye it again with more movement.'
  ],
  'uneven-light': [
    'The light differs too much from end to end.',
    'Lay everything in even light, and undyed yarn at both ends of the skein.'
  ],
  'thin-series': [
    'The series is too thin: between its swatches the control is not known well enough.',
    'Add swatches of depths between.'
  ],
  'too-noisy': ['The readings stray too much.', 'Take more photos, and mark larger patches.']
} as const satisfies Partial<Record<WhyCode, readonly [string, string]>>

export function settled(code: keyof typeof reasons): Why {
  const [say, settle] = reasons[code]
  return { code, say, settle }
}

export function splitWhy({ size, sd, limit }: AlongSkein, turn: { word: TurnWord; fromBand: number }): Why {
  const say = `It turns ${turn.word} from band ${turn.fromBand}: by ${figure(Math.abs(size))} ΔH* at equal depth, ${figure(Math.abs(size) / sd)} standard deviations where ${figure(limit)} are asked, and all one way.`
  return { code: 'runs-one-way', say, settle: 'The residue in the bath and each dye on its own would support it.' }
}

export function onlyLighter(along: AlongSkein, lighterBy: number, off: number | null): Why {
  const seen = `At equal depth the hue stays within ${figure(along.limit * along.sd)} ΔH* of the series' from end to end; a split of ${figure(along.smallestVisible)} would have been seen.`
  const lighter = `It gets lighter by ${figure(lighterBy)} L*.`
  const beside = `All of the skein lies ${figure(Math.abs(off ?? 0))} ΔH* beside the series, evenly: another ratio, or another yarn.`
  const say = off === null ? `${seen} ${lighter}` : `${seen} ${lighter} ${beside}`
  return { code: 'would-have-been-seen', say, settle: 'A smaller split needs more photos and a denser series.' }
}

/** Nothing passed, and a split of the size asked for could have been missed: what weighs most in that? */
export function cannotSee(along: AlongSkein, wanted: number, { light }: Noise): Why {
  const { own, series, curve, uneven } = along.parts
  const most = Math.max(own, series, curve, uneven)
  const code = most === uneven ? 'uneven-light' : most === curve ? 'thin-series' : 'too-noisy'
  const { say, settle } = settled(code)
  const unseen = code === 'uneven-light' && light === null ? 'Whether the light is even is not known.' : say
  const size = `A split under ${figure(along.smallestVisible)} ΔH* could not have been seen; ${figure(wanted)} is asked.`
  return { code, say: `${unseen} ${size}`, settle }
}

const figure = (value: number): string => value.toFixed(1)
