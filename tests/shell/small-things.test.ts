// @vitest-environment happy-dom
import { describe, expect, it, vi } from 'vitest'
import { rehearsalClock } from '../../src/shell/clock/rehearsal-clock.ts'
import { ticks } from '../../src/shell/clock/ticks.ts'
import { safeName } from '../../src/shell/files/files.ts'
import { screenLock } from '../../src/shell/screen-lock/screen-lock.ts'
import { screenRung } from '../../src/shell/screen-lock/screen-rung.ts'
import { askToKeep, storageNow } from '../../src/shell/storage-persistence/persistence.ts'
import { titleRung } from '../../src/shell/title/title-rung.ts'

const quiet = (): Worker => ({ onmessage: null, terminate() {} }) as unknown as Worker
const turn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0))

describe('ticks', () => {
  it('go on from the page itself when the worker dies or never starts', () => {
    vi.useFakeTimers()
    for (const start of [
      quiet,
      () => {
        throw new Error('no worker')
      }
    ]) {
      const beat = ticks(start)
      const heard = vi.fn()
      beat.onTick(heard)
      vi.advanceTimersByTime(10_000)
      expect(heard.mock.calls.length).toBeGreaterThanOrEqual(5)
      beat.close()
    }
    vi.useRealTimers()
  })

  it('come from the worker, and at once when the page is back', () => {
    const worker = quiet()
    const beat = ticks(() => worker)
    const heard = vi.fn()
    const stop = beat.onTick(heard)
    worker.onmessage?.({} as MessageEvent)
    expect(heard).toHaveBeenCalledTimes(1)
    document.dispatchEvent(new Event('visibilitychange'))
    document.dispatchEvent(new Event('resume'))
    window.dispatchEvent(new Event('pageshow'))
    expect(heard).toHaveBeenCalledTimes(4)
    stop()
    worker.onmessage?.({} as MessageEvent)
    expect(heard).toHaveBeenCalledTimes(4)
    beat.close()
  })
})

describe('the rehearsal clock', () => {
  it('goes on without a jump when its speed is changed, and a tick that was asked for comes at its time all the same', () => {
    vi.useFakeTimers({ now: 1_000_000 })
    const askedMs: number[] = []
    const beat = { onTick: () => () => {}, tickAt: (wallMs: number) => void askedMs.push(wallMs), close() {} }
    const clock = rehearsalClock(beat, 'b', 60, 1_000_000)
    clock.tickAt?.(1_120_000)
    vi.advanceTimersByTime(1_000)
    clock.runAt(600)
    expect([clock.nowMs(), Math.round(clock.monoMs())]).toEqual([1_060_000, 60_000])
    expect(askedMs).toEqual([1_002_000, 1_001_100])
    vi.advanceTimersByTime(100)
    expect(clock.nowMs()).toBe(1_120_000)
    vi.useRealTimers()
  })

  it('runs faster, both clocks as one, and goes on after a reload where it would be by then', () => {
    vi.useFakeTimers({ now: 1_000_000 })
    const beat = { onTick: () => () => {}, tickAt() {}, close() {} }
    const clock = rehearsalClock(beat, 'b', 60, 1_000_000)
    expect(clock.nowMs()).toBe(1_000_000)
    vi.advanceTimersByTime(1_000)
    expect(clock.nowMs()).toBe(1_060_000)
    expect(clock.monoMs()).toBeCloseTo(60_000, 3)
    expect(rehearsalClock(beat, 'c', 60, 1_000_000).nowMs()).toBe(1_060_000)
    vi.useRealTimers()
  })
})

/** A screen lock that is let go from outside, as a hidden page has it. */
function fakeWake(refuse: () => boolean = () => false) {
  const held: { released: boolean; release(): Promise<void>; onrelease: (() => void) | null }[] = []
  return {
    held,
    request: async () => {
      if (refuse()) throw new DOMException('hidden', 'NotAllowedError')
      const lock = {
        released: false,
        onrelease: null as (() => void) | null,
        async release() {
          lock.released = true
          lock.onrelease?.()
        }
      }
      held.push(lock)
      return lock
    }
  }
}

describe('the screen lock', () => {
  it('is asked for again when the browser lets it go', async () => {
    const wake = fakeWake()
    const lock = screenLock(wake, document)
    lock.want(true)
    await turn()
    expect(lock.state()).toBe('kept-on')
    void wake.held[0]?.release()
    await turn()
    expect([wake.held.length, lock.state()]).toEqual([2, 'kept-on'])
  })

  it('says that the screen may sleep when it is refused, and a tap or coming back asks again', async () => {
    let refused = true
    const lock = screenLock(
      fakeWake(() => refused),
      document
    )
    const rung = screenRung(lock)
    expect(rung.lamp()).toBeNull()
    lock.want(true)
    await turn()
    expect(rung.lamp()).toMatchObject({ ok: false, say: expect.stringContaining('may sleep') })
    refused = false
    document.dispatchEvent(new Event('visibilitychange'))
    await turn()
    expect(rung.lamp()).toEqual({ ok: true, say: 'Screen stays on', tap: null })
  })

  it('is let go when no pot is watched, and where there is none the lamp says so', async () => {
    const wake = fakeWake()
    const lock = screenLock(wake, document)
    lock.want(true)
    await turn()
    lock.want(false)
    await turn()
    expect([wake.held[0]?.released, wake.held.length, lock.state()]).toEqual([true, 1, 'not-wanted'])
    const none = screenLock(undefined, document)
    none.want(true)
    await turn()
    expect(none.state()).toBe('may-sleep')
  })
})

describe('files', () => {
  it('gives a download a name that every system takes', () => {
    expect(safeName('2031-06-14 Moss: A/B?.json')).toBe('2031-06-14 Moss- A-B-.json')
    expect(safeName('  ')).toBe('strandline')
  })
})

describe('keeping records', () => {
  it('says in words whether the browser promised to', async () => {
    const storage = (persisted: boolean, persist: () => Promise<boolean>): StorageManager =>
      ({ persisted: async () => persisted, persist }) as StorageManager
    expect((await askToKeep(storage(true, async () => false))).kept).toBe(true)
    expect((await askToKeep(storage(false, async () => true))).kept).toBe(true)
    expect(await askToKeep(storage(false, async () => false))).toMatchObject({
      kept: false,
      say: expect.stringContaining('Export')
    })
    expect((await askToKeep(storage(false, () => Promise.reject(new Error())))).kept).toBe(false)
    expect((await askToKeep({} as StorageManager)).kept).toBe(false)
  })

  it('says how much room they take without asking for anything', async () => {
    const persist = vi.fn()
    const storage = { persisted: async () => true, estimate: async () => ({ usage: 5, quota: 100 }), persist }
    expect(await storageNow(storage as unknown as StorageManager)).toMatchObject({
      kept: true,
      usedBytes: 5,
      roomBytes: 100
    })
    expect(persist).not.toHaveBeenCalled()
    expect(await storageNow({} as StorageManager)).toMatchObject({ kept: false, usedBytes: null, roomBytes: null })
  })
})

describe('the title of the tab', () => {
  it('names the call every other second and is itself again when nothing calls', () => {
    const page = { title: 'Strandline' }
    let nowMs = 0
    const rung = titleRung(
      'Strandline',
      ({ colourway }) => `${colourway}: acid 2`,
      () => nowMs,
      page
    )
    const alert = { potId: 'p', colourway: 'Plum', alert: { soft: false } } as Parameters<typeof rung.raise>[0][number]
    const titles = [0, 999, 1000, 2000].map((at) => {
      nowMs = at
      rung.raise([alert])
      return page.title
    })
    expect(titles).toEqual(['Plum: acid 2', 'Plum: acid 2', 'Strandline', 'Plum: acid 2'])
    rung.rest()
    expect(page.title).toBe('Strandline')
  })
})
