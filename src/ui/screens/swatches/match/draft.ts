// What is chosen and typed for a match, kept while another screen is looked at.
import { type Signal, signal } from '@preact/signals'
import { photoWhite, type White } from '../../../../core/colour/index.ts'
import type { Kitchen } from '../../../kitchen.ts'

/** In place of a kept reading: what is typed here. */
export const TYPED = 'typed'

/** `key`: of a kept reading, `TYPED`, or null while nobody chose. */
export type SideDraft = { key: string | null; text: string; white: White }
export type MatchDraft = { skein: SideDraft; target: SideDraft }

const fresh = (): SideDraft => ({ key: null, text: '', white: photoWhite })
const drafts = new WeakMap<object, Signal<MatchDraft>>()

export function matchDraftOf(kitchen: Pick<Kitchen, 'newId'>): Signal<MatchDraft> {
  const draft = drafts.get(kitchen) ?? signal<MatchDraft>({ skein: fresh(), target: fresh() })
  drafts.set(kitchen, draft)
  return draft
}
