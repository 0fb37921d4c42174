// Keeps the screen on while it is wanted. The lock is let go whenever the page is hidden, and refused while it is: it is
// asked for again on release and on becoming visible.
export type ScreenLockState = 'not-wanted' | 'kept-on' | 'may-sleep'

export type ScreenLock = {
  want(on: boolean): void
  state(): ScreenLockState
  /** Asks again; inside a tap some browsers grant what they refused before. */
  retry(): Promise<boolean>
  onState(changed: () => void): () => void
}

type Wake = { request(type: 'screen'): Promise<{ released: boolean; release(): Promise<void>; onrelease: unknown }> }

export function screenLock(
  wake: Wake | undefined = (navigator as { wakeLock?: Wake }).wakeLock,
  page: Document = document
): ScreenLock {
  let wanted = false
  let asking: Promise<boolean> | null = null
  let held: Awaited<ReturnType<Wake['request']>> | null = null
  const listeners = new Set<() => void>()
  const tell = (): void => {
    for (const listener of listeners) listener()
  }

  const ask = (): Promise<boolean> => {
    asking ??= request().finally(() => {
      asking = null
      tell()
    })
    return asking
  }

  const request = async (): Promise<boolean> => {
    if (!wanted) return false
    if (held !== null && !held.released) return true
    if (wake === undefined || page.visibilityState !== 'visible') return false
    try {
      const lock = await wake.request('screen')
      held = lock
      lock.onrelease = () => {
        if (held === lock) held = null
        tell()
        if (wanted) void ask()
      }
      if (!wanted) await lock.release()
      return wanted
    } catch {
      return false
    }
  }

  page.addEventListener('visibilitychange', () => {
    if (wanted) void ask()
  })

  return {
    want(on) {
      if (on === wanted) return
      wanted = on
      if (on) void ask()
      else {
        void held?.release().catch(() => {})
        held = null
        tell()
      }
    },
    state: () => (!wanted ? 'not-wanted' : held !== null && !held.released ? 'kept-on' : 'may-sleep'),
    retry: ask,
    onState(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    }
  }
}
