// What was found of a skein: the streams "swatch/ID", in the same journal and the same entries as pots. Of a batch the ID is
// that of its pot, else one of its own. Past tense, JSON-native fields only. A skein is judged anew by a new entry; what
// was found before stays as it was.
import type { Fault, Lab, Marks, SplitVerdict, White } from '../colour/index.ts'
import type { Entry } from '../pot/entry.ts'
import type { PhotoMedia } from '../pot/media.ts'
import type { SeriesLink } from './series.ts'

/** The `nth` of its kind from 0, as it was read: of the undyed yarn, the series, the skein. */
export type ThingRead = { of: 'undyed' | 'series' | 'skein'; nth: number; lab: Lab }

export type EyeWord = 'split' | 'only-lighter' | 'cannot-tell'

export type SwatchEvent =
  /** `marks` in pixels of the picture as it was read, `readWidthPx` wide; the kept one is smaller. */
  | {
      type: 'SwatchPhotoKept'
      media: PhotoMedia
      readWidthPx: number
      readHeightPx: number
      marks: Marks
      readings: ThingRead[]
      faults: Fault[]
    }
  /** `photos`: the kept pictures it was judged by, none for an instrument. `readings`: their averages, or what was typed. */
  | {
      type: 'SwatchJudged'
      batchId: string | null
      by: 'photo' | 'instrument'
      white: White
      photos: string[]
      /** The batch that dyed the series; left out where it was not told, as in entries from before it could be. */
      series?: SeriesLink
      dry: boolean
      fibres: number
      readings: ThingRead[]
      verdict: SplitVerdict
    }
  /** Somebody's eye, in words: no measurement, and never called one. */
  | {
      type: 'SwatchSeen'
      batchId: string | null
      says: EyeWord
      words: string
      light: string
      dry: boolean
      series?: SeriesLink
    }
  /** Only the bytes of a photo go: its marks and readings stay. */
  | { type: 'MediaTrimmed'; sha256: string; why: string }

const known: Record<SwatchEvent['type'], true> = {
  SwatchPhotoKept: true,
  SwatchJudged: true,
  SwatchSeen: true,
  MediaTrimmed: true
}

/** Does this version have a word for the event? */
export function isKnownSwatchEvent(type: string): boolean {
  return Object.hasOwn(known, type)
}

type Verdict = Extract<SwatchEvent, { type: 'SwatchJudged' | 'SwatchSeen' }>

/** `letGo`: why its bytes went. */
export type JudgedPhoto = PhotoMedia & { letGo?: string }

export type Judgement = {
  key: string
  atMs: number
  tzOffsetMin: number
  by: string | null
  found: Verdict
  photos: JudgedPhoto[]
}

/** Every verdict in these streams, the latest first. A photo that was let go and kept anew later stands. */
export function judgementsOf(entries: readonly Entry<SwatchEvent>[]): Judgement[] {
  // The same picture may be kept of two skeins, and let go of one.
  const photos = new Map<string, JudgedPhoto>()
  const found: (Omit<Judgement, 'photos'> & { named: string[] })[] = []
  for (const { event, atMs, tzOffsetMin, by, writerId, seq, streamId } of entries) {
    const of = (sha256: string): string => `${streamId} ${sha256}`
    if (event.type === 'SwatchPhotoKept') photos.set(of(event.media.sha256), event.media)
    else if (event.type === 'MediaTrimmed') {
      const kept = photos.get(of(event.sha256))
      if (kept) photos.set(of(event.sha256), { ...kept, letGo: event.why })
    } else {
      found.push({
        key: `${streamId} ${writerId} ${seq}`,
        atMs,
        tzOffsetMin,
        by: by.kind === 'person' ? by.name : null,
        found: event,
        named: event.type === 'SwatchJudged' ? event.photos.map(of) : []
      })
    }
  }
  return found
    .map(({ named, ...one }) => ({ ...one, photos: named.flatMap((name) => photos.get(name) ?? []) }))
    .sort((one, other) => other.atMs - one.atMs)
}
