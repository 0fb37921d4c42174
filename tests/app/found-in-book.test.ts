import { describe, expect, it } from 'vitest'
import { foundInBook } from '../../src/app/found-in-book.ts'
import type { Found } from '../../src/core/record/find.ts'
import type { BookLine } from '../../src/ui/kitchen.ts'
import { mossFinished } from '../core/record/moss.ts'

const line = (no: number): BookLine => ({ streamId: `pot/${no}`, potId: String(no), entries: 5 }) as BookLine

function store() {
  const kept: Found[] = []
  return { kept, all: async () => kept, put: async (found: readonly Found[]) => void kept.push(...found) }
}

describe('looking a book through', () => {
  it('keeps what each journal says, with how many entries it was read from', async () => {
    const kept = store()
    const { entries } = mossFinished()
    const book = foundInBook({ read: async () => entries }, 'x', kept)
    const told: number[] = []
    await book.lookThrough([line(1), line(2)], (found) => told.push(found.length) > 0)
    expect(told).toEqual([2])
    expect(kept.kept).toMatchObject([
      { potId: '1', entries: 5, yarn: 'wool', stocks: ['vinegar'] },
      { potId: '2', entries: 5 }
    ])
    expect((await book.kept()).get('2')?.yarn).toBe('wool')
  })

  it('stops when nobody wants more', async () => {
    const read: string[] = []
    const journal = {
      read: async (streamId: string) => {
        read.push(streamId)
        return []
      }
    }
    const lines = Array.from({ length: 30 }, (_, no) => line(no))
    await foundInBook(journal, 'x', store()).lookThrough(lines, () => false)
    expect(read.length).toBeGreaterThan(0)
    expect(read.length).toBeLessThan(30)
  })

  it('goes on where nothing can be kept, and begins anew where nothing can be read', async () => {
    const broken = {
      all: () => Promise.reject(new Error('gone')),
      put: () => Promise.reject(new Error('full'))
    }
    const book = foundInBook({ read: async () => mossFinished().entries }, 'x', broken)
    expect((await book.kept()).size).toBe(0)
    const told: Found[] = []
    await book.lookThrough([line(1)], (found) => told.push(...found) > 0)
    expect(told).toMatchObject([{ yarn: 'wool' }])
  })
})
