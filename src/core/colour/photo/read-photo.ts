// One photograph with its marks -> colours told by its own grey card, and what is wrong with it.
import { type Answer, isRefused, type Problem, refuse } from '../../chemistry/answer.ts'
import type { Lab } from '../lab.ts'
import { usualCardShare } from '../of-card.ts'
import { type Fault, faultsOf, type Patches } from './faults.ts'
import { furthestUndyed, type Marks, type SkeinMark } from './marks.ts'
import type { Patch, Photo, Spot } from './patch.ts'
import { type PatchReading, readPatch } from './patch-reading.ts'
import { type Reading, readingOf } from './reading.ts'

/** `lightAt`: where it lay between the two undyed places furthest apart, 0 at the first and 1 at the second; null where
 * there were no two. */
export type Placed = Reading & { lightAt: number | null }

export type PhotoRead = {
  undyed: Placed[]
  series: Placed[]
  skein: (Placed & Omit<SkeinMark, 'patch'>)[]
  /** How the second undyed place differs from the first: only the light can make it. */
  light: Lab | null
  faults: Fault[]
}

/** Refuses marks that lie outside the picture, a card without any light, and a share of the card out of 0.01 to 1. */
export function readPhoto(photo: Photo, marks: Marks): Answer<PhotoRead> {
  const { cardShare = usualCardShare } = marks
  const patches = patchesOf(photo, marks)
  if (isRefused(patches)) return patches
  const card = patches.grey.mean
  const problems = ofCard(card.g, cardShare)
  if (problems.length > 0) return refuse(...problems)
  const lightAt = alongLight(marks)
  const placed = (reading: PatchReading, patch: Patch): Placed => ({
    ...readingOf(reading, card, cardShare),
    lightAt: lightAt(patch)
  })
  const each = (readings: PatchReading[], at: Patch[]): Placed[] =>
    readings.map((reading, nth) => placed(reading, at[nth] as Patch))
  const undyed = each(patches.undyed, marks.undyed)
  const skein = patches.skein.map((reading, nth) => {
    const { patch, ...mark } = marks.skein[nth] as SkeinMark
    return { ...placed(reading, patch), ...mark }
  })
  const labs = undyed.map(({ lab }) => lab)
  return {
    undyed,
    series: each(patches.series, marks.series),
    skein,
    light: lightOf(marks, labs),
    faults: faultsOf(marks, patches, labs)
  }
}

function patchesOf(photo: Photo, marks: Marks): Answer<Patches> {
  const problems: Problem[] = []
  const read = (patch: Patch, field: string): PatchReading => {
    const reading = readPatch(photo, patch)
    if (reading) return reading
    const what = `The mark "${field}" lies outside the picture.`
    problems.push({
      code: 'outside',
      field,
      what,
      instead: `Mark a place within ${photo.width} x ${photo.height} pixels.`
    })
    return { mean: { r: 0, g: 0, b: 0 }, pieces: [], count: 0, leftOut: 0, clippedHigh: 0, clippedLow: 0 }
  }
  const patches = {
    grey: read(marks.grey, 'grey'),
    undyed: marks.undyed.map((patch, nth) => read(patch, `undyed ${nth + 1}`)),
    series: marks.series.map((patch, nth) => read(patch, `series ${nth + 1}`)),
    skein: marks.skein.map(({ patch }, nth) => read(patch, `skein ${nth + 1}`))
  }
  return problems.length > 0 ? refuse(...problems) : patches
}

function ofCard(light: number, cardShare: number): Problem[] {
  const problems: Problem[] = []
  if (!(light > 0)) {
    const what = 'The grey card is black in the picture.'
    problems.push({ code: 'outside', field: 'grey', what, instead: 'Mark a grey card that the light falls on.' })
  }
  if (!(cardShare >= 0.01 && cardShare <= 1)) {
    const what = `A card can't give back a share of ${cardShare}.`
    problems.push({ code: 'outside', field: 'cardShare', what, instead: 'Give 0.01 to 1; the usual card has 0.18.' })
  }
  return problems
}

function alongLight(marks: Marks): (spot: Spot) => number | null {
  const pair = furthestUndyed(marks)
  if (!pair) return () => null
  const [from, to] = [marks.undyed[pair[0]] as Patch, marks.undyed[pair[1]] as Patch]
  const [dx, dy] = [to.x - from.x, to.y - from.y]
  return ({ x, y }) => ((x - from.x) * dx + (y - from.y) * dy) / (dx * dx + dy * dy)
}

function lightOf(marks: Marks, undyed: Lab[]): Lab | null {
  const pair = furthestUndyed(marks)
  if (!pair) return null
  const [one, other] = [undyed[pair[0]] as Lab, undyed[pair[1]] as Lab]
  return { l: other.l - one.l, a: other.a - one.a, b: other.b - one.b }
}
