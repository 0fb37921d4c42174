import { describe, expect, it } from 'vitest'
import { keptDrafts } from '../../src/app/drafts.ts'
import { memoryKept } from '../../src/shell/settings/kept.ts'
import type { ProtocolDraft } from '../../src/ui/writing.ts'

const draft = (id: string, more: Partial<ProtocolDraft> = {}): ProtocolDraft => ({
  id,
  title: `Title ${id}`,
  text: `title: ${id}\n`,
  changedAtMs: 0,
  undo: [{ at: 0, was: 'x', now: '' }],
  redo: [],
  ...more
})

describe('drafts', () => {
  it('are there whole on the next visit, the one changed last first', async () => {
    const kept = memoryKept()
    await keptDrafts(kept).keep(draft('a', { changedAtMs: 10 }))
    await keptDrafts(kept).keep(draft('b', { changedAtMs: 20 }))
    expect(await keptDrafts(kept).read('a')).toEqual(draft('a', { changedAtMs: 10 }))
    const { drafts, unreadable } = await keptDrafts(kept).list()
    expect([drafts.map(({ id, title }) => [id, title]), unreadable]).toEqual([
      [
        ['b', 'Title b'],
        ['a', 'Title a']
      ],
      0
    ])
  })

  it('that are dropped are gone', async () => {
    const kept = memoryKept()
    await keptDrafts(kept).keep(draft('a'))
    expect(await keptDrafts(kept).drop('a')).toEqual({ ok: true })
    expect(await keptDrafts(kept).read('a')).toBeNull()
    expect((await keptDrafts(kept).list()).drafts).toEqual([])
  })

  it('that are dropped do not come back by a write that is tried again', async () => {
    const kept = memoryKept()
    const drafts = keptDrafts(kept)
    await drafts.keep(draft('a'))
    await drafts.drop('a')
    expect(await drafts.keep(draft('a'))).toEqual({ ok: true })
    expect([await drafts.read('a'), await kept.get('draft/a')]).toEqual([null, undefined])
  })

  it('are read as they are though their write is still under way', async () => {
    const kept = memoryKept()
    const slow = { ...kept, putOver: () => new Promise<boolean>(() => {}) }
    const drafts = keptDrafts(slow)
    void drafts.keep(draft('a', { text: 'newer' }))
    expect((await drafts.read('a'))?.text).toBe('newer')
  })

  it('that are damaged do not break the list: the text is saved from what it can be, the rest is counted', async () => {
    const kept = memoryKept()
    for (const [key, value] of Object.entries({
      none: null,
      number: 7,
      'no text': { id: 'no text', title: 'x' },
      half: { id: 'half', text: 'steps: [', title: 5, changedAtMs: 'soon', undo: [{ at: -1 }], redo: 'x' }
    })) {
      await kept.set(`draft/${key}`, value)
    }
    await keptDrafts(kept).keep(draft('good', { changedAtMs: 5 }))
    const { drafts, unreadable } = await keptDrafts(kept).list()
    expect([drafts.map(({ id }) => id), unreadable]).toEqual([['good', 'half'], 3])
    const half = { id: 'half', title: 'No title', text: 'steps: [', changedAtMs: 0, undo: [], redo: [] }
    expect(await keptDrafts(kept).read('half')).toEqual(half)
    expect(await keptDrafts(kept).read('no text')).toBeNull()
  })

  it('that can’t be stored say why, and are there until the page is closed', async () => {
    const full = { ...memoryKept(), putOver: () => Promise.reject(new DOMException('', 'QuotaExceededError')) }
    const drafts = keptDrafts(full)
    expect(await drafts.keep(draft('a'))).toMatchObject({ ok: false, say: expect.stringContaining('no room') })
    expect(await drafts.read('a')).toEqual(draft('a'))
    expect((await drafts.list()).drafts.map(({ id }) => id)).toEqual(['a'])
  })

  it('once stored after all are read from the store again', async () => {
    const kept = memoryKept()
    let room = false
    const store = {
      ...kept,
      putOver: async (key: string, value: unknown, mayPutOver: (was: unknown) => boolean) => {
        if (!room) throw new Error('busy')
        return kept.putOver(key, value, mayPutOver)
      }
    }
    const drafts = keptDrafts(store)
    await drafts.keep(draft('a'))
    room = true
    await drafts.keep(draft('a', { text: 'newer' }))
    expect((await keptDrafts(kept).read('a'))?.text).toBe('newer')
  })

  it('are not written over by a tab that knows an older text', async () => {
    const kept = memoryKept()
    const [one, other] = [keptDrafts(kept), keptDrafts(kept)]
    await one.keep(draft('a'))
    await other.read('a')
    expect(await one.keep(draft('a', { text: 'title: one\n' }))).toEqual({ ok: true })
    expect(await other.keep(draft('a', { text: 'title: other\n' }))).toMatchObject({ ok: false, elsewhere: true })
    expect((await other.read('a'))?.text).toBe('title: one\n')
    // Read again, it is known again.
    expect(await other.keep(draft('a', { text: 'title: other\n' }))).toEqual({ ok: true })
  })

  it("are no one else's when a tab only opened them, or wrote the same", async () => {
    const kept = memoryKept()
    const [one, other] = [keptDrafts(kept), keptDrafts(kept)]
    await one.keep(draft('a'))
    const opened = (await other.read('a')) ?? draft('a')
    await other.keep({ ...opened, changedAtMs: 9 })
    expect(await one.keep(draft('a', { text: 'title: b\n' }))).toEqual({ ok: true })
    expect(await other.keep(draft('a', { text: 'title: b\n' }))).toEqual({ ok: true })
  })

  it('hold what waits to be put in, and nothing that is no such thing', async () => {
    const kept = memoryKept()
    const waiting = [{ edit: { type: 'set', path: [], field: 'title', value: 'B' }, at: 'title', typed: 'B' } as const]
    await keptDrafts(kept).keep(draft('a', { waiting: [...waiting] }))
    expect((await keptDrafts(kept).read('a'))?.waiting).toEqual(waiting)
    await kept.set('draft/b', { ...draft('b'), waiting: [null, { edit: 7 }, { edit: { type: 'remove', path: [] } }] })
    expect(await keptDrafts(kept).read('b')).toEqual(draft('b'))
  })
})
