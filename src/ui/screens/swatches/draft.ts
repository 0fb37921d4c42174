// What is laid out on this screen, kept while another screen is looked at. Photos are files of the page: a reload ends them,
// and what is worth keeping goes into the record.
import { type Signal, signal } from '@preact/signals'
import type { PhotoRead, Spot } from '../../../core/colour/index.ts'
import type { EyeWord } from '../../../core/record/swatch.ts'
import type { Kitchen } from '../../kitchen.ts'
import type { OpenedPhoto } from '../../swatches.ts'
import { type MarkId, type Places, type Shape, usualShape } from './marks.ts'
import type { Series } from './series.ts'
import { noTyped, type Typed } from './typed.ts'

export type Shot = {
  id: string
  name: string
  photo: OpenedPhoto
  places: Places
  /** Null while it is read, or marks are missing. `problem`: why it could not be. */
  read: PhotoRead | null
  problem: string | null
}

export type Way = 'photo' | 'instrument' | 'eye'
/** What is to be found out. */
export type Quest = 'split' | 'match' | 'stain'

/** Photos of the same things, and how they are marked. */
export type Album = {
  shape: Shape
  shots: Shot[]
  /** The photo that is being marked. */
  shown: number
}

export type Draft = Album & {
  quest: Quest
  way: Way
  batchId: string | null
  /** The batch that dyed the series, where one is told. */
  series: Series | null
  dry: boolean | null
  fibres: number | null
  typed: Typed
  seen: Seen
}

export type Seen = { says: EyeWord | null; words: string; light: string; dry: boolean | null }

const fresh = (): Draft => ({
  quest: 'split',
  way: 'photo',
  batchId: null,
  series: null,
  shape: usualShape,
  shots: [],
  shown: 0,
  dry: null,
  fibres: null,
  typed: noTyped,
  seen: { says: null, words: '', light: '', dry: null }
})

const drafts = new WeakMap<object, Signal<Draft>>()

export function draftOf(kitchen: Pick<Kitchen, 'newId'>): Signal<Draft> {
  const draft = drafts.get(kitchen) ?? signal(fresh())
  drafts.set(kitchen, draft)
  return draft
}

export function changeShot(album: Signal<Album>, id: string, change: Partial<Shot>): void {
  const { shots } = album.value
  album.value = { ...album.value, shots: shots.map((shot) => (shot.id === id ? { ...shot, ...change } : shot)) }
}

/** A mark that moved is read anew. */
export function setPlace(album: Signal<Album>, id: string, mark: MarkId, at: Spot): void {
  const shot = album.value.shots.find((each) => each.id === id)
  if (shot) changeShot(album, id, { places: { ...shot.places, [mark]: at }, read: null, problem: null })
}

/** What is marked, and how, is alike in all photos: all are read anew. */
export function reshape(album: Signal<Album>, part: Partial<Shape>): void {
  const { shape, shots } = album.value
  const now = { ...shape, ...part }
  album.value = {
    ...album.value,
    shape: { ...now, wicking: Math.min(now.wicking, now.bands) },
    shots: shots.map((shot) => ({ ...shot, read: null, problem: null }))
  }
}
