import { IDBFactory, IDBKeyRange } from 'fake-indexeddb'
import { describe, expect, it, vi } from 'vitest'
import { indexedDbJournal } from '../../src/shell/journal/indexeddb-journal.ts'
import { upgrades } from '../../src/shell/journal/stores.ts'
import { jpeg, note, photo, summary } from './entries.ts'

vi.stubGlobal('IDBKeyRange', IDBKeyRange)

const done = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result)
    request.onerror = () => reject(request.error)
  })

describe('pictures and sound in IndexedDB', () => {
  it('leave nothing behind when the write fails half-way: no entry, no summary, no bytes', async () => {
    const factory = new IDBFactory()
    const journal = indexedDbJournal('test', { factory })
    const bytes = jpeg(1, 2, 3)
    // Bytes that can't be cloned break the write after the entry was taken.
    const broken = { ...bytes, bytes: (() => {}) as unknown as ArrayBuffer }
    expect(await journal.append([photo('1', 1, bytes)], [summary('1')], [broken])).toMatchObject({ ok: false })
    expect(await journal.read('pot/1')).toEqual([])
    expect(await journal.live()).toEqual([])
    expect(await journal.media(bytes.sha256)).toBeNull()
    expect(await journal.append([photo('1', 1, bytes)], [], [bytes])).toEqual({ ok: true })
    expect(await journal.media(bytes.sha256)).toEqual(bytes)
  })

  it('leave nothing behind when the last entry of the write fails', async () => {
    const journal = indexedDbJournal('test', { factory: new IDBFactory() })
    await journal.append([note('1', 1)], [])
    const bytes = jpeg(1)
    expect(await journal.append([photo('2', 1, bytes), note('1', 1)], [], [bytes])).toMatchObject({ why: 'conflict' })
    expect(await journal.media(bytes.sha256)).toBeNull()
    expect(await journal.mediaSizes()).toMatchObject({ photos: 0, photoBytes: 0 })
  })

  it('find their place in a database of version 1, whose entries stay as they were', async () => {
    const factory = new IDBFactory()
    const request = factory.open('test', 1)
    request.onupgradeneeded = () => upgrades[0]?.(request.result, request.transaction as IDBTransaction)
    const old = await done(request)
    const write = old.transaction(['entries', 'summaries'], 'readwrite')
    write.objectStore('entries').add(note('1', 1))
    write.objectStore('summaries').put({ ...summary('1'), live: 1 })
    await new Promise((resolve) => {
      write.oncomplete = resolve
    })
    old.close()
    const journal = indexedDbJournal('test', { factory })
    expect(await journal.read('pot/1')).toEqual([note('1', 1)])
    expect(await journal.live()).toEqual([summary('1')])
    const bytes = jpeg(9)
    expect(await journal.append([photo('1', 2, bytes)], [], [bytes])).toEqual({ ok: true })
    expect(await journal.media(bytes.sha256)).toEqual(bytes)
  })

  it('are written with strict durability, and an act without any does not lock them', async () => {
    const factory = new IDBFactory()
    const asked: unknown[][] = []
    const watching = {
      open(name: string, version: number) {
        const request = factory.open(name, version)
        request.addEventListener('success', () => {
          const { result } = request
          const real = result.transaction.bind(result)
          result.transaction = ((...how: Parameters<IDBDatabase['transaction']>) => {
            asked.push(how)
            return real(...how)
          }) as IDBDatabase['transaction']
        })
        return request
      }
    } as unknown as IDBFactory
    const journal = indexedDbJournal('test', { factory: watching })
    const bytes = jpeg(1)
    await journal.append([note('1', 1)], [])
    await journal.append([photo('1', 2, bytes)], [], [bytes])
    expect(asked).toEqual([
      [['entries', 'summaries'], 'readwrite', { durability: 'strict' }],
      [['entries', 'summaries', 'media'], 'readwrite', { durability: 'strict' }]
    ])
  })
})
