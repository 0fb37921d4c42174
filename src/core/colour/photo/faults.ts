// What is wrong with a photograph, in coded form.
import { chromaOf, type Lab } from '../lab.ts'
import { type Linear, xyzOf } from '../linear.ts'
import { d65 } from '../white.ts'
import { furthestUndyed, type Marks } from './marks.ts'
import type { PatchReading } from './patch-reading.ts'

export type FaultCode = 'clipped' | 'too-dark' | 'two-lights' | 'grey-not-neutral' | 'too-small'

/** Which of the marks: the `nth` of its kind, from 0. */
export type Marked = { of: 'grey card' | 'undyed' | 'series' | 'skein'; nth: number }

/** `say`: what is wrong and what would be right. A fault of the light is told of the second of the two undyed places. */
export type Fault = Marked & { code: FaultCode; say: string }

/** 'skein 3', as a dyer counts. */
export const markName = ({ of, nth }: Marked): string => (of === 'grey card' ? of : `${of} ${nth + 1}`)

/** A fault of one swatch or one place of the skein, which can be left out; any other spoils the whole photo. */
export const spoilsOne = ({ of, code }: Fault): boolean =>
  (of === 'series' || of === 'skein') && (code === 'clipped' || code === 'too-small')

// Limits of this room: none is published; the photographs made by the generator in tests were used to set them.
/** Fewer pixels of yarn than this make no average. */
const leastPixels = 200
/** So much of a patch may lie at the top or the bottom of the scale. */
const mostClipped = 0.03
/** The card gives back a fifth of white: far less light than that, and the noise of the dark takes over. */
const leastCardLight = 0.03
/** Two places of the same undyed yarn, in CIELAB units of a* and b*, over the lightness that they share. */
const mostLightTurn = 3
/** And in L*: a shadow. */
const mostLightDrop = 8
/** A card that pulls the picture so far from white lay in a light of its own, or is no grey card. */
const mostCardCast = 0.6
/** Undyed yarn is white to cream: a chroma of 10 to 15. More, and what it was told by was not grey. */
const mostUndyedChroma = 28

export type Patches = { grey: PatchReading; undyed: PatchReading[]; series: PatchReading[]; skein: PatchReading[] }

/** `undyed`: the colours of the undyed places, told by the card. */
export function faultsOf(marks: Marks, patches: Patches, undyed: Lab[]): Fault[] {
  const each = (of: Marked['of'], all: PatchReading[]): Fault[] =>
    all.flatMap((patch, nth) => ofPatch({ of, nth }, patch))
  return [
    ...each('grey card', [patches.grey]),
    ...each('undyed', patches.undyed),
    ...each('series', patches.series),
    ...each('skein', patches.skein),
    ...ofCard(patches.grey.mean, undyed),
    ...ofLight(marks, undyed)
  ]
}

function ofPatch(mark: Marked, { count, leftOut, clippedHigh, clippedLow }: PatchReading): Fault[] {
  const faults: Fault[] = []
  const left = Math.round(count * (1 - leftOut))
  if (left < leastPixels) {
    const say = `Only ${left} pixels of it can be read; ${leastPixels} are needed. Come nearer, or mark more of it.`
    faults.push({ ...mark, code: 'too-small', say })
  }
  const [high, low] = [Math.round(100 * clippedHigh), Math.round(100 * clippedLow)]
  if (clippedHigh > mostClipped) {
    faults.push({
      ...mark,
      code: 'clipped',
      say: `${high} % of it is as bright as the picture can tell. Expose it less.`
    })
  }
  if (clippedLow > mostClipped) {
    const say = `${low} % of it has a colour that is as dark as the picture can tell. Expose it more, or it is too deep for a photo.`
    faults.push({ ...mark, code: 'clipped', say })
  }
  return faults
}

function ofCard(card: Linear, undyed: Lab[]): Fault[] {
  const mark: Marked = { of: 'grey card', nth: 0 }
  const { y } = xyzOf(card)
  if (y < leastCardLight) {
    const say = `The card reads ${(100 * y).toFixed(1)} % of white, where some 18 % are usual. Take it in more light.`
    return [{ ...mark, code: 'too-dark', say }]
  }
  const { x, z } = xyzOf(card)
  const cast = Math.max(Math.abs(Math.log(x / (y * d65.x))), Math.abs(Math.log(z / (y * d65.z))))
  if (cast > mostCardCast) {
    const say = 'The card is far from grey in the picture. Use a grey card, in the light the yarn lies in.'
    return [{ ...mark, code: 'grey-not-neutral', say }]
  }
  const coloured = Math.max(0, ...undyed.map(chromaOf))
  if (coloured <= mostUndyedChroma) return []
  const say = `By this card the undyed yarn has a chroma of ${coloured.toFixed(0)}, where white to cream has up to ${mostUndyedChroma}. Is it a grey card, in the same light?`
  return [{ ...mark, code: 'grey-not-neutral', say }]
}

function ofLight(marks: Marks, undyed: Lab[]): Fault[] {
  const pair = furthestUndyed(marks)
  if (!pair) return []
  const [one, other] = [undyed[pair[0]] as Lab, undyed[pair[1]] as Lab]
  const turn = Math.hypot(one.a - other.a, one.b - other.b)
  const drop = Math.abs(one.l - other.l)
  const mark: Marked = { of: 'undyed', nth: pair[1] }
  if (turn > mostLightTurn) {
    const say = `The same undyed yarn differs by ${turn.toFixed(1)} in colour across the picture: two lights. Use one.`
    return [{ ...mark, code: 'two-lights', say }]
  }
  if (drop <= mostLightDrop) return []
  const say = `The same undyed yarn differs by ${drop.toFixed(0)} in lightness across the picture. Lay it in even light.`
  return [{ ...mark, code: 'two-lights', say }]
}
