// What was found of a skein, as its journal has it: a photo, a verdict of the real sums, and an eye's.
import { splitVerdict } from '../../../src/core/colour/index.ts'
import type { PhotoMedia } from '../../../src/core/pot/media.ts'
import type { SwatchEvent, ThingRead } from '../../../src/core/record/swatch.ts'
import type { SwatchEntry } from '../../../src/session/ports.ts'
import { sealAll } from '../../../src/session/seal-all.ts'
import { handClock } from '../../../src/shell/clock/hand-clock.ts'
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

/** The stream of a batch's skein, sealed as the session seals it. */
export function skeinEntries(batchId: string, events: SwatchEvent[], atMs = T0): SwatchEntry[] {
  const header = { commandId: `judged-${atMs}`, atMs, by: PERSON }
  const ids = { newId: () => 'new', writerId: 'w' }
  return sealAll(`swatch/${batchId}`, [], events, header, { clock: handClock(atMs), ids, recordedAtMs: atMs })
}
