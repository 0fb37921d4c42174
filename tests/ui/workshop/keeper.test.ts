import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { keptDrafts } from '../../../src/app/drafts.ts'
import { memoryKept } from '../../../src/shell/settings/kept.ts'
import type { Sent } from '../../../src/ui/kitchen.ts'
import { keeper as keeperFor, keeperOf } from '../../../src/ui/screens/workshop/keeper.ts'
import type { ProtocolDraft } from '../../../src/ui/writing.ts'

const draft = (text: string): ProtocolDraft => ({ id: 'd', title: 'T', text, changedAtMs: 0, undo: [], redo: [] })
const noMove = (): never => {
  throw new Error('it was not changed elsewhere')
}
const keeper = (write: Parameters<typeof keeperFor>[0], move: () => string = noMove) => keeperFor(write, move)
const full: Sent = { ok: false, refusal: null, say: 'There is no room left.' }

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

describe('the keeper of a draft', () => {
  it('writes one at a time, and always what stands last', async () => {
    const written: string[] = []
    let open: (() => void)[] = []
    const keeping = keeper(async ({ text }) => {
      written.push(text)
      await new Promise<void>((resolve) => open.push(resolve))
      return { ok: true }
    })
    for (const text of ['a', 'ab', 'abc']) keeping.keep(draft(text))
    expect(written).toEqual(['a'])
    for (const resolve of open.splice(0)) resolve()
    await vi.advanceTimersByTimeAsync(0)
    expect(written).toEqual(['a', 'abc'])
    for (const resolve of open.splice(0)) resolve()
    open = []
  })

  it.each([0, 1, 2, 3, 4, 5, 6, 7, 8])('loses nothing that comes %i ticks after a write began', async (ticks) => {
    const written: string[] = []
    const keeping = keeper(async ({ text }) => {
      written.push(text)
      return { ok: true }
    })
    keeping.keep(draft('a'))
    for (let i = 0; i < ticks; i++) await Promise.resolve()
    keeping.keep(draft('b'))
    await vi.advanceTimersByTimeAsync(0)
    expect(written.at(-1)).toBe('b')
  })

  it('says what was not kept, tries again by itself, and is silent once it is kept', async () => {
    const written: string[] = []
    let room = false
    const keeping = keeper(async ({ text }) => {
      if (!room) return full
      written.push(text)
      return { ok: true }
    })
    keeping.keep(draft('a'))
    await vi.advanceTimersByTimeAsync(0)
    expect(keeping.failed.value).toBe('There is no room left.')
    room = true
    await vi.advanceTimersByTimeAsync(2_000)
    expect([written, keeping.failed.value]).toEqual([['a'], null])
  })

  it('takes a store that throws for one that failed', async () => {
    const keeping = keeper(() => Promise.reject(new Error('gone')))
    keeping.keep(draft('a'))
    await vi.advanceTimersByTimeAsync(0)
    expect(keeping.failed.value).toMatch(/refused/)
  })

  it('is one for each draft, so that a try of older text never comes after newer', async () => {
    const drafts = keptDrafts(memoryKept())
    expect(keeperOf(drafts, 'a', noMove)).toBe(keeperOf(drafts, 'a', noMove))
    expect(keeperOf(drafts, 'b', noMove)).not.toBe(keeperOf(drafts, 'a', noMove))
  })

  it('writes nothing after it was stopped: a saved draft must not come back', async () => {
    const write = vi.fn(async (): Promise<Sent> => full)
    const keeping = keeper(write)
    keeping.keep(draft('a'))
    await keeping.stop()
    keeping.keep(draft('b'))
    await vi.advanceTimersByTimeAsync(60_000)
    expect(write).toHaveBeenCalledTimes(1)
  })

  it('keeps on as another draft once another tab changed this one, and leaves that as it is', async () => {
    const kept = memoryKept()
    const [here, there] = [keptDrafts(kept), keptDrafts(kept)]
    await here.keep(draft('a'))
    await there.read('d')
    let made = 0
    const newId = (): string => `fresh-${++made}`
    const keeping = keeperOf(there, 'd', newId)
    await here.keep(draft('ab'))
    for (const text of ['ac', 'acd']) {
      keeping.keep(draft(text))
      await vi.advanceTimersByTimeAsync(0)
    }
    expect([keeping.movedTo.value, keeping.failed.value, made]).toEqual(['fresh-1', null, 1])
    const texts = await Promise.all(['d', 'fresh-1'].map(async (id) => (await keptDrafts(kept).read(id))?.text))
    expect(texts).toEqual(['ab', 'acd'])
    // Who opens the other one again gets a keeper of its own, and the moved one has its own still.
    expect(keeperOf(there, 'd', newId)).not.toBe(keeping)
    expect(keeperOf(there, 'fresh-1', newId)).toBe(keeping)
  })
})
