// What lies on the screen of a witness cloth, kept while another screen is looked at.
import { type Signal, signal } from '@preact/signals'
import { photoWhite, type White } from '../../../../core/colour/index.ts'
import type { Kitchen } from '../../../kitchen.ts'
import type { Album } from '../draft.ts'
import { clothShape } from '../marks.ts'

export type TypedCloth = { white: White; clean: string; stained: string }

export type StainDraft = Album & {
  way: 'photo' | 'instrument'
  typed: TypedCloth
  cloth: string
  done: string
  dry: boolean | null
}

const drafts = new WeakMap<object, Signal<StainDraft>>()

export function stainDraftOf(kitchen: Pick<Kitchen, 'newId'>): Signal<StainDraft> {
  const draft = drafts.get(kitchen) ?? signal(fresh())
  drafts.set(kitchen, draft)
  return draft
}

const fresh = (): StainDraft => ({
  shape: clothShape,
  shots: [],
  shown: 0,
  way: 'photo',
  typed: { white: photoWhite, clean: '', stained: '' },
  cloth: '',
  done: '',
  dry: null
})
