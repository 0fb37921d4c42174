// Readings that were kept with a verdict, as another skein is held against them later: "the same as that one".
import { type BandRead, type Lab, type SkeinRead, spoilsOne } from '../colour/index.ts'
import type { Entry } from '../pot/entry.ts'
import type { SwatchEvent } from './swatch.ts'

type Judged = Extract<SwatchEvent, { type: 'SwatchJudged' }>
type PhotoKept = Extract<SwatchEvent, { type: 'SwatchPhotoKept' }>

/** `refused`: why nothing can be held against it; null: it can. `photos`: so many stand behind it, 0 for an instrument. */
export type KeptReading = {
  key: string
  atMs: number
  tzOffsetMin: number
  batchId: string | null
  by: Judged['by']
  photos: number
  read: SkeinRead
  refused: string | null
}

/** Of these streams, the latest first. */
export function readingsOf(entries: readonly Entry<SwatchEvent>[]): KeptReading[] {
  const photos = new Map<string, PhotoKept>()
  const found: KeptReading[] = []
  for (const { event, atMs, tzOffsetMin, streamId, writerId, seq } of entries) {
    // The same picture can be kept of two batches, with marks of its own in each.
    if (event.type === 'SwatchPhotoKept') photos.set(`${streamId} ${event.media.sha256}`, event)
    if (event.type !== 'SwatchJudged') continue
    const named = event.photos.flatMap((sha256) => photos.get(`${streamId} ${sha256}`) ?? [])
    const { batchId, by } = event
    found.push({
      key: `${streamId} ${writerId} ${seq}`,
      ...{ atMs, tzOffsetMin, batchId, by },
      photos: event.photos.length,
      read: { white: event.white, bands: bandsOf(event, named), together: by === 'photo' },
      refused: refusedBy(event, named)
    })
  }
  return found.sort((one, other) => other.atMs - one.atMs)
}

function refusedBy({ dry }: Judged, photos: readonly PhotoKept[]): string | null {
  if (!dry) return 'The yarn was damp when it was read, and damp yarn is deeper. Read it again when it is dry.'
  for (const { faults } of photos) {
    const spoilt = faults.find((fault) => !spoilsOne(fault) && inMost(photos, fault))
    if (spoilt) return `Its photos have a fault: ${spoilt.say} Take them anew.`
  }
  return null
}

const skeinOf = (readings: Judged['readings']): Lab[] =>
  readings
    .filter(({ of }) => of === 'skein')
    .sort((one, other) => one.nth - other.nth)
    .map(({ lab }) => lab)

function bandsOf({ readings, repeats, verdict }: Judged, photos: readonly PhotoKept[]): BandRead[] {
  const each = photos.map((photo) => skeinOf(photo.readings))
  return skeinOf(readings).map((lab, nth) => {
    const zone = verdict.deltaH[nth]?.zone
    const unread = photos.some(({ faults }) =>
      faults.some((fault) => fault.of === 'skein' && fault.nth === nth && inMost(photos, fault))
    )
    return {
      lab,
      each: repeats?.[nth] ?? each.flatMap((labs) => labs[nth] ?? []),
      counts: zone !== 'wicking' && !unread
    }
  })
}

/** A fault counts when half of the photos have it, as for the verdict. */
function inMost(photos: readonly PhotoKept[], { code, of, nth }: PhotoKept['faults'][number]): boolean {
  const same = (one: PhotoKept['faults'][number]): boolean => one.code === code && one.of === of && one.nth === nth
  return 2 * photos.filter(({ faults }) => faults.some(same)).length >= photos.length
}
