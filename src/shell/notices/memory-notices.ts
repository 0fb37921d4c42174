import type { Notice, Notices, NoticesState } from './notices.ts'

export type MemoryNotices = Notices & {
  /** What stands, by tag. */
  standing: Map<string, Notice>
  /** All that was ever shown. */
  shown: Notice[]
  become(state: NoticesState): void
  /** As if a hand wiped it away. */
  wipe(tag: string): void
}

/** Notices that only stand in memory. `answer`: what a person says when asked. */
export function memoryNotices(state: NoticesState = 'ready', answer: NoticesState = 'ready'): MemoryNotices {
  const standing = new Map<string, Notice>()
  const shown: Notice[] = []
  const listeners = new Set<() => void>()
  let now = state
  const become = (next: NoticesState): void => {
    now = next
    for (const listener of listeners) listener()
  }
  return {
    standing,
    shown,
    become,
    wipe: (tag) => void standing.delete(tag),
    state: () => now,
    ask: async () => become(answer),
    async show(notice) {
      if (now !== 'ready') return false
      standing.set(notice.tag, notice)
      shown.push(notice)
      return true
    },
    close: async (tag) => void standing.delete(tag),
    closeAll: async () => standing.clear(),
    onState(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    }
  }
}
