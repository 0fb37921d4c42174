// Keeps a draft on every change: one write at a time, always of what stands now, tried again until it is kept.
import { type ReadonlySignal, signal } from '@preact/signals'
import type { DraftKept, KitchenDrafts, ProtocolDraft } from '../../writing.ts'

const FIRST_TRY_MS = 2_000
const TRIES_MOST_APART_MS = 30_000

export type Keeper = {
  /** The draft as which it is kept since another tab changed the one it was: both stay. Null: it is kept as what it was. */
  movedTo: ReadonlySignal<string | null>
  /** Why the latest is not kept, in words; null: it is, or is just being written. */
  failed: ReadonlySignal<string | null>
  keep(draft: ProtocolDraft): void
  tryNow(): void
  /** Resolves when nothing is being written for now. */
  settled(): Promise<void>
  /** Resolves when nothing is being written. Nothing is written from then on. */
  stop(): Promise<void>
}

const keepers = new WeakMap<KitchenDrafts, Map<string, Keeper>>()

/** One for each draft as long as the page lives: what could not be kept is tried again though its screen was left, and a
 * second keeper would write what is older over it. */
export function keeperOf(drafts: KitchenDrafts, id: string, newId: () => string): Keeper {
  const known = keepers.get(drafts) ?? new Map<string, Keeper>()
  keepers.set(drafts, known)
  const write = (draft: ProtocolDraft): Promise<DraftKept> => drafts.keep(draft)
  const move = (): string => {
    const to = newId()
    // Who opens the other one again must not get this one's keeper.
    known.delete(id)
    known.set(to, made)
    return to
  }
  const made: Keeper = known.get(id) ?? keeper(write, move)
  known.set(id, made)
  return made
}

/** `move`: gives the id of another draft, once what is kept under this one is another tab's. */
export function keeper(write: (draft: ProtocolDraft) => Promise<DraftKept>, move: () => string): Keeper {
  const movedTo = signal<string | null>(null)
  const failed = signal<string | null>(null)
  let wanted: ProtocolDraft | null = null
  let running: Promise<void> | null = null
  let stopped = false
  let timer: ReturnType<typeof setTimeout> | undefined
  let waitMs = FIRST_TRY_MS

  const work = async (): Promise<void> => {
    while (wanted !== null && !stopped) {
      const draft = wanted
      const id = movedTo.value ?? draft.id
      const sent = await write({ ...draft, id }).catch(
        (): DraftKept => ({ ok: false, refusal: null, say: 'The browser refused it.' })
      )
      if (sent.ok) {
        failed.value = null
        waitMs = FIRST_TRY_MS
        if (wanted === draft) wanted = null
        continue
      }
      if (sent.elsewhere) {
        movedTo.value = move()
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
    movedTo,
    keep(draft) {
      wanted = draft
      run()
    },
    tryNow: run,
    settled: async () => void (await running),
    async stop() {
      stopped = true
      clearTimeout(timer)
      await running
    }
  }
}
