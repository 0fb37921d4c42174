// What the tabs of one browser say to each other: which pots have new entries, and what a following tab asks of the owner.
export type TabWord =
  | { kind: 'stored'; potIds: string[] }
  /** Not to be carried out after `untilMs`: a tab that was frozen meanwhile finds it long after it was done elsewhere. */
  | { kind: 'ask'; askId: string; ask: unknown; untilMs: number }
  | { kind: 'answer'; askId: string; answer: unknown }

export type Tabs = {
  say(word: TabWord): void
  /** Asks the owner and waits for its answer; null: nobody answered in time, it may be frozen. */
  ask(askId: string, ask: unknown, patienceMs?: number): Promise<unknown>
  onWord(heard: (word: TabWord) => void): () => void
  close(): void
}

type Channel = {
  postMessage(word: unknown): void
  onmessage: ((event: MessageEvent) => void) | null
  close(): void
}

export function tabs(name: string, channel: Channel = new BroadcastChannel(name)): Tabs {
  const listeners = new Set<(word: TabWord) => void>()
  channel.onmessage = (event) => {
    for (const listener of [...listeners]) listener(event.data as TabWord)
  }
  const onWord = (heard: (word: TabWord) => void): (() => void) => {
    listeners.add(heard)
    return () => listeners.delete(heard)
  }
  return {
    say: (word) => channel.postMessage(word),
    onWord,
    ask: (askId, ask, patienceMs = 3_000) =>
      new Promise((resolve) => {
        const answered = (answer: unknown): void => {
          clearTimeout(timer)
          stop()
          resolve(answer)
        }
        const stop = onWord((word) => {
          if (word.kind === 'answer' && word.askId === askId) answered(word.answer)
        })
        const untilMs = Date.now() + patienceMs
        // A timer may go off in the millisecond before its time: nobody is told "no answer" while the owner may still act.
        const timer = setTimeout(() => answered(null), patienceMs + 1)
        channel.postMessage({ kind: 'ask', askId, ask, untilMs })
      }),
    close: () => channel.close()
  }
}
