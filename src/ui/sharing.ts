// What the kitchen knows of protocols that come from outside and go there.
import type { Problem } from '../core/protocol/model.ts'

/** What came and is text lies among the drafts from then on, whether it can be run or not. */
export type BroughtIn =
  | { ok: true; name: string; title: string; draftId: string; runs: boolean }
  | { ok: false; name: string; problem: Problem }

/** Copying and the share sheet want to be called inside a tap. */
export type TextSharing = {
  /** False: it was refused. */
  copy(text: string): Promise<boolean>
  /** Null: the browser lets no page read the clipboard. The promise: null, it was refused this time. */
  paste: (() => Promise<string | null>) | null
  /** Null: the device has no share sheet that takes a file. */
  share: ((name: string, title: string, text: string) => Promise<'shared' | 'closed' | 'failed'>) | null
}

/** Where the dyer decides about it, or mends it first. */
export function routeOf({ runs, draftId }: { runs: boolean; draftId: string }): string {
  return `#/protocols/${runs ? 'came' : 'write'}/${encodeURIComponent(draftId)}`
}
