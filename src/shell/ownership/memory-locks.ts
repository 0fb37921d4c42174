import type { Locks } from './ownership.ts'

type Waiting = { granted: (lock: unknown) => Promise<void> | undefined; done: () => void; fail: (error: Error) => void }

/** The lock manager of one browser with several tabs, in memory. `closeHolder`: the tab that holds the lock went away. */
export function memoryLocks(): Locks & { closeHolder(): void } {
  let holder: Waiting | null = null
  const line: Waiting[] = []
  const grant = (waiting: Waiting): void => {
    holder = waiting
    void waiting.granted({ name: 'lock' })?.then(() => next())
  }
  const next = (): void => {
    holder?.done()
    holder = null
    const first = line.shift()
    if (first !== undefined) grant(first)
  }
  return {
    request: (_name, { ifAvailable, steal }, granted) =>
      new Promise((resolve, reject) => {
        const waiting: Waiting = { granted, done: () => resolve(undefined), fail: reject }
        queueMicrotask(() => {
          if (steal) {
            const robbed = holder
            holder = null
            robbed?.fail(new DOMException('stolen', 'AbortError'))
            grant(waiting)
          } else if (holder === null) grant(waiting)
          else if (ifAvailable) {
            void granted(null)
            resolve(undefined)
          } else line.push(waiting)
        })
      }),
    closeHolder: next
  }
}
