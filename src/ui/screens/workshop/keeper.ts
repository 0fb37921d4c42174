// Keeps a draft on every change: one write at a time, always of what stands now, tried again until it is kept.
import { type ReadonlySignal, signal } from '@preact/signals'
import type { Sent } from '../../kitchen.ts'
import type { KitchenDrafts, ProtocolDraft } from '../../writing.ts'

const FIRST_TRY_MS = 2_000
const TRIES_MOST_APART_MS = 30_000

export type Keeper = {
  /** Why the latest is not kept, in words; null: it is, or is just being written. */
  failed: ReadonlySignal<string | null>
  keep(draft: ProtocolDraft): void
  tryNow(): void
  /** Resolves when nothing is being written. Nothing is written from then on. */
  stop(): Promise<void>
}

const keepers = new WeakMap<KitchenDrafts, Map<string, Keeper>>()

/** One for each draft as long as the page lives: what could not be kept is tried again though its screen was left, and a
 * second keeper would write what is older over it. */
export function keeperOf(drafts: KitchenDrafts, id: string): Keeper {
  const known = keepers.get(drafts) ?? new Map<string, Keeper>()
  keepers.set(drafts, known)
  const made = known.get(id) ?? keeper((draft) => drafts.keep(draft))
  known.set(id, made)
  return made
}

export function keeper(write: (draft: ProtocolDraft) => Promise<Sent>): Keeper {
  const failed = signal<string | null>(null)
  let wanted: ProtocolDraft | null = null
  let running: Promise<void> | null = null
  let stopped = false
  let timer: ReturnType<typeof setTimeout> | undefined
  let waitMs = FIRST_TRY_MS

  const work = async (): Promise<void> => {
    while (wanted !== null && !stopped) {
      const draft = wanted
      const sent = await write(draft).catch((): Sent => ({ ok: false, refusal: null, say: 'The browser refused it.' }))
      if (sent.ok) {
        failed.value = null
        waitMs = FIRST_TRY_MS
        if (wanted === draft) wanted = null
        continue
      }
      failed.value = sent.say
      // Something newer came meanwhile: that is a new try already.
      if (wanted !== draft) continue
      timer = setTimeout(run, waitMs)
      waitMs = Math.min(waitMs * 2, TRIES_MOST_APART_MS)
      return
    }
  }
  const run = (): void => {
    clearTimeout(timer)
    timer = undefined
    if (stopped || running !== null) return
    running = work().finally(() => {
      running = null
      // What came after the last look and before this: nobody else would write it.
      if (wanted !== null && timer === undefined) run()
    })
  }
  return {
    failed,
    keep(draft) {
      wanted = draft
      run()
    },
    tryNow: run,
    async stop() {
      stopped = true
      clearTimeout(timer)
      await running
    }
  }
}
