// What was found of a skein, as its journal has it: a photo, a verdict of the real sums, and an eye's.
import { matchSkeins, type SkeinRead, splitVerdict, stainOfCloth } from '../../../src/core/colour/index.ts'
import type { PhotoMedia } from '../../../src/core/pot/media.ts'
import type { SwatchEvent, ThingRead } from '../../../src/core/record/swatch.ts'
import type { SwatchEntry } from '../../../src/session/ports.ts'
import { sealAll } from '../../../src/session/seal-all.ts'
import { handClock } from '../../../src/shell/clock/hand-clock.ts'
import { answered } from '../chemistry/answered.ts'
import { given, rising } from '../colour/made.ts'
import { PERSON, T0 } from '../pot/given.ts'

export const shot: PhotoMedia = {
  sha256: 'c'.repeat(64),
  mime: 'image/jpeg',
  bytes: 81_000,
  widthPx: 1600,
  heightPx: 1200
}

const patch = { x: 40.5, y: 30, halfLong: 12, halfWide: 8, turnRad: -0.2 }
const asked = given(rising(6))
const readings: ThingRead[] = [
  ...asked.series.map(({ lab }, nth) => ({ of: 'series' as const, nth, lab })),
  ...asked.skein.positions.map(({ lab }, nth) => ({ of: 'skein' as const, nth, lab }))
]

export function photoKept(media: PhotoMedia = shot): SwatchEvent {
  return {
    type: 'SwatchPhotoKept',
    media,
    readWidthPx: 4000,
    readHeightPx: 3000,
    marks: {
      grey: patch,
      cardShare: 0.18,
      undyed: [patch],
      series: [patch],
      skein: [{ patch, at: 0, band: 1, zone: 'dyed' }]
    },
    readings,
    faults: [{ of: 'skein', nth: 0, code: 'too-small', say: 'Only 40 pixels of it can be read.' }]
  }
}

export function judgedSplit(batchId: string | null, photos: string[] = [shot.sha256]): SwatchEvent {
  const verdict = splitVerdict(asked)
  return { type: 'SwatchJudged', batchId, by: 'photo', white: 'D65/2', photos, dry: true, fibres: 1, readings, verdict }
}

export function seenLighter(batchId: string | null): SwatchEvent {
  return { type: 'SwatchSeen', batchId, says: 'only-lighter', words: 'Even.', light: 'a north window', dry: true }
}

/** Held against typed figures, band by band, one of them above the liquor. */
export function matched(batchId: string | null): SwatchEvent {
  const read = (step: number, counts: boolean): SkeinRead => ({
    white: 'D65/2',
    together: true,
    bands: [40, 50, 60].map((l, nth) => {
      const lab = { l: l + step, a: 10, b: 5 }
      return { lab, each: [lab, { ...lab, l: lab.l + 0.2 }], counts: counts || nth < 2 }
    })
  })
  const side = (by: 'photo' | 'typed', { bands }: SkeinRead) => ({
    key: by === 'typed' ? null : 'swatch/pot-a w 1',
    batchId: by === 'typed' ? null : batchId,
    name: by,
    by,
    readings: bands.map(({ lab }) => lab)
  })
  const [skein, target] = [read(3, false), read(0, true)]
  const match = answered(matchSkeins(target, skein))
  return { type: 'SwatchMatched', batchId, skein: side('photo', skein), target: side('typed', target), match }
}

export function stained(batchId: string | null): SwatchEvent {
  const [clean, pink] = [
    { l: 93, a: 0, b: 4 },
    { l: 90, a: 7, b: 3 }
  ]
  const stain = answered(stainOfCloth({ white: 'D65/2', clean: [clean], stained: [pink], together: true }))
  const said = { cloth: 'White cotton', done: 'washed with it' }
  return { type: 'ClothStained', batchId, by: 'photo', photos: [shot.sha256], ...said, stain }
}

/** The stream of a batch's skein, sealed as the session seals it. */
export function skeinEntries(batchId: string, events: SwatchEvent[], atMs = T0): SwatchEntry[] {
  const header = { commandId: `judged-${atMs}`, atMs, by: PERSON }
  const ids = { newId: () => 'new', writerId: 'w' }
  return sealAll(`swatch/${batchId}`, [], events, header, { clock: handClock(atMs), ids, recordedAtMs: atMs })
}
