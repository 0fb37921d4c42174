// One tab owns the journal: only it writes and alerts. A second follows, and becomes the owner when the first closes or
// when somebody says "work here": the first may be frozen and never answer.
export type Ownership = {
  owns(): boolean
  /** Resolves once it is known whether this tab owns. */
  settled: Promise<void>
  take(): Promise<void>
  onChange(changed: () => void): () => void
}

/** The part of the browser's lock manager that is used. */
export type Locks = {
  request(
    name: string,
    options: { ifAvailable?: boolean; steal?: boolean },
    granted: (lock: unknown) => Promise<void> | undefined
  ): Promise<unknown>
}

/** Without locks (an old browser, a page without HTTPS) every tab owns: the add-only journal still keeps two from
 * overwriting each other. */
export function ownership(
  name: string,
  locks: Locks | null = (navigator.locks as Locks | undefined) ?? null
): Ownership {
  let owned = locks === null
  const listeners = new Set<() => void>()
  const become = (next: boolean): void => {
    if (owned === next) return
    owned = next
    for (const listener of listeners) listener()
  }
  /** Holds until the tab ends or another takes over; then stands in line again. */
  const hold = (): Promise<void> => {
    become(true)
    return new Promise(() => {})
  }
  const lost = (): void => {
    become(false)
    standInLine()
  }
  let inLine = false
  const standInLine = (): void => {
    if (inLine) return
    inLine = true
    const granted = (): Promise<void> => {
      inLine = false
      return hold()
    }
    locks?.request(name, {}, granted).catch(lost)
  }

  const settled = new Promise<void>((resolve) => {
    if (locks === null) return resolve()
    const first = locks.request(name, { ifAvailable: true }, (lock) => {
      if (lock === null) standInLine()
      resolve()
      return lock === null ? undefined : hold()
    })
    first.catch(() => {
      lost()
      resolve()
    })
  })

  return {
    owns: () => owned,
    settled,
    take: () =>
      new Promise((resolve) => {
        if (owned || locks === null) return resolve()
        const taken = locks.request(name, { steal: true }, () => {
          const held = hold()
          resolve()
          return held
        })
        taken.catch(() => {
          lost()
          resolve()
        })
      }),
    onChange(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    }
  }
}
