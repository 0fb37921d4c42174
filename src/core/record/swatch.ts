// What was found of a skein: the streams "swatch/ID", in the same journal and the same entries as pots. Of a batch the ID is
// that of its pot, else one of its own. Past tense, JSON-native fields only. A skein is judged anew by a new entry; what
// was found before stays as it was.
import type { Fault, Lab, Marks, SkeinMatch, SplitVerdict, Stain, White } from '../colour/index.ts'
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
  /** `photos`: the kept pictures it was judged by, none for an instrument. `readings`: their averages, or what was typed.
   * `repeats`: of an instrument, each band's single readings; entries from before they were kept lack them. */
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
      repeats?: Lab[][]
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
  | Compared
  /** Only the bytes of a photo go: its marks and readings stay. */
  | { type: 'MediaTrimmed'; sha256: string; why: string }

/** What was found beside something else. The whole of it as it stood, so that later sums change nothing. */
export type Compared =
  /** `skein` held against `target`: another reading that was kept, or a colour that was typed. */
  | { type: 'SwatchMatched'; batchId: string | null; skein: MatchedSide; target: MatchedSide; match: SkeinMatch }
  /** A witness cloth, clean and stained. `cloth` and `done`: what it is and what it went through, in words; '' not said.
   * In the marks of its photos the clean cloth is the undyed yarn, the stained one the skein. */
  | {
      type: 'ClothStained'
      batchId: string | null
      by: 'photo' | 'instrument'
      photos: string[]
      cloth: string
      done: string
      stain: Stain
    }

/** `key` and `batchId`: of the reading that was kept; null for what was typed. `name`: what it was called then. */
export type MatchedSide = {
  key: string | null
  batchId: string | null
  name: string
  by: 'photo' | 'instrument' | 'typed'
  readings: Lab[]
}

const known: Record<SwatchEvent['type'], true> = {
  SwatchPhotoKept: true,
  SwatchJudged: true,
  SwatchSeen: true,
  MediaTrimmed: true,
  SwatchMatched: true,
  ClothStained: true
}

/** Does this version have a word for the event? */
export function isKnownSwatchEvent(type: string): boolean {
  return Object.hasOwn(known, type)
}

type Verdict = Extract<SwatchEvent, { type: 'SwatchJudged' | 'SwatchSeen' }>

/** `letGo`: why its bytes went. */
export type JudgedPhoto = PhotoMedia & { letGo?: string }

type Found<F> = {
  key: string
  atMs: number
  tzOffsetMin: number
  by: string | null
  found: F
  photos: JudgedPhoto[]
}

export type Judgement = Found<Verdict>
export type Comparison = Found<Compared>

const isVerdict = (event: SwatchEvent): event is Verdict => event.type === 'SwatchJudged' || event.type === 'SwatchSeen'
const isCompared = (event: SwatchEvent): event is Compared =>
  event.type === 'SwatchMatched' || event.type === 'ClothStained'

/** Every verdict in these streams, the latest first. A photo that was let go and kept anew later stands. */
export const judgementsOf = (entries: readonly Entry<SwatchEvent>[]): Judgement[] => foundIn(entries, isVerdict)

/** Every match and every stain, the latest first. */
export const comparisonsOf = (entries: readonly Entry<SwatchEvent>[]): Comparison[] => foundIn(entries, isCompared)

const photosOf = (event: Verdict | Compared): string[] => ('photos' in event ? event.photos : [])

/** A photo that was let go and kept anew later stands. */
function foundIn<F extends Verdict | Compared>(
  entries: readonly Entry<SwatchEvent>[],
  isOne: (event: SwatchEvent) => event is F
): Found<F>[] {
  // The same picture may be kept of two skeins, and let go of one.
  const photos = new Map<string, JudgedPhoto>()
  const found: (Omit<Found<F>, 'photos'> & { named: string[] })[] = []
  for (const { event, atMs, tzOffsetMin, by, writerId, seq, streamId } of entries) {
    const of = (sha256: string): string => `${streamId} ${sha256}`
    if (event.type === 'SwatchPhotoKept') photos.set(of(event.media.sha256), event.media)
    if (event.type === 'MediaTrimmed') {
      const kept = photos.get(of(event.sha256))
      if (kept) photos.set(of(event.sha256), { ...kept, letGo: event.why })
    }
    if (!isOne(event)) continue
    found.push({
      key: `${streamId} ${writerId} ${seq}`,
      atMs,
      tzOffsetMin,
      by: by.kind === 'person' ? by.name : null,
      found: event,
      named: photosOf(event).map(of)
    })
  }
  return found
    .map(({ named, ...one }) => ({ ...one, photos: named.flatMap((name) => photos.get(name) ?? []) }))
    .sort((one, other) => other.atMs - one.atMs)
}
