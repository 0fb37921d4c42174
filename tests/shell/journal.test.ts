import { IDBFactory, IDBKeyRange } from 'fake-indexeddb'
import { describe, expect, it, vi } from 'vitest'
import { indexedDbJournal } from '../../src/shell/journal/indexeddb-journal.ts'
import { memoryJournal, memoryStore } from '../../src/shell/journal/memory-journal.ts'
import { upgrades } from '../../src/shell/journal/stores.ts'
import { note, summary } from './entries.ts'
import { journalContract } from './journal.contract.ts'

vi.stubGlobal('IDBKeyRange', IDBKeyRange)

journalContract('IndexedDB', () => {
  const factory = new IDBFactory()
  return [indexedDbJournal('test', { factory }), indexedDbJournal('test', { factory })]
})

journalContract('its twin in memory', () => {
  const store = memoryStore()
  return [memoryJournal({ store }), memoryJournal({ store })]
})

/** A factory whose databases can be broken from outside, as a phone does in the background. */
function breakable(): { factory: IDBFactory; opened: IDBDatabase[]; failOpening: (times: number) => void } {
  const real = new IDBFactory()
  const opened: IDBDatabase[] = []
  let failing = 0
  const factory = {
    open(name: string, version: number) {
      if (failing-- > 0) throw new DOMException('Connection to Indexed Database server lost', 'UnknownError')
      const request = real.open(name, version)
      request.addEventListener('success', () => opened.push(request.result))
      return request
    }
  } as unknown as IDBFactory
  return { factory, opened, failOpening: (times) => (failing = times) }
}

describe('the journal in IndexedDB', () => {
  it('writes on after the connection was lost in the background', async () => {
    const { factory, opened } = breakable()
    const journal = indexedDbJournal('test', { factory })
    await journal.append([note('1', 1)], [summary('1')])
    opened[0]?.close()
    expect(await journal.append([note('1', 2)], [])).toEqual({ ok: true })
    opened[1]?.close()
    expect(await journal.read('pot/1')).toEqual([note('1', 1), note('1', 2)])
    expect(opened).toHaveLength(3)
  })

  it('says that the entry is not saved when opening again did not help, and recovers later', async () => {
    const { factory, opened, failOpening } = breakable()
    const journal = indexedDbJournal('test', { factory })
    await journal.append([note('1', 1)], [])
    opened[0]?.close()
    failOpening(1)
    expect(await journal.append([note('1', 2)], [])).toMatchObject({ ok: false, why: 'lost' })
    expect(await journal.append([note('1', 2)], [])).toEqual({ ok: true })
  })

  it('reports a store that never answers instead of waiting for ever', async () => {
    const silent = { open: () => ({}) } as unknown as IDBFactory
    const journal = indexedDbJournal('test', { factory: silent, patienceMs: 20 })
    expect(await journal.append([note('1', 1)], [])).toMatchObject({ ok: false, why: 'lost' })
  })

  it('says in words when the storage of the device is full', async () => {
    const full = {
      open: () => {
        throw new DOMException('full', 'QuotaExceededError')
      }
    } as unknown as IDBFactory
    const answer = await indexedDbJournal('test', { factory: full }).append([note('1', 1)], [])
    expect(answer).toMatchObject({ ok: false, why: 'full', say: expect.stringContaining('full') })
  })

  it('asks for strict durability at every write', async () => {
    const { factory, opened } = breakable()
    const journal = indexedDbJournal('test', { factory })
    await journal.live()
    const asked = vi.spyOn(opened[0] as IDBDatabase, 'transaction')
    await journal.append([note('1', 1)], [])
    expect(asked).toHaveBeenCalledWith(expect.anything(), 'readwrite', { durability: 'strict' })
  })

  it('keeps nothing of a write of which one entry could not be stored', async () => {
    const journal = indexedDbJournal('test', { factory: new IDBFactory() })
    const broken = { ...note('1', 2), seq: undefined as unknown as number }
    expect(await journal.append([note('1', 1), broken], [])).toMatchObject({ ok: false, why: 'lost' })
    expect(await journal.read('pot/1')).toEqual([])
  })

  it('steps aside when a newer version of the app wants to change the store', async () => {
    const factory = new IDBFactory()
    const journal = indexedDbJournal('test', { factory })
    await journal.append([note('1', 1)], [])
    const newer = await new Promise((resolve, reject) => {
      const request = factory.open('test', upgrades.length + 1)
      request.onsuccess = () => resolve('opened')
      request.onerror = reject
      request.onblocked = () => resolve('blocked')
    })
    expect(newer).toBe('opened')
    expect(await journal.append([note('1', 2)], [])).toMatchObject({
      why: 'lost',
      say: expect.stringContaining('Reload')
    })
  })
})

describe('a database from before there was a shelf', () => {
  it('opens as it was, and finds the draws that are written from then on', async () => {
    const factory = new IDBFactory()
    const request = factory.open('test', 2)
    request.onupgradeneeded = () => {
      for (const step of upgrades.slice(0, 2)) step(request.result, request.transaction as IDBTransaction)
    }
    await new Promise((resolve, reject) => {
      request.onerror = reject
      request.onsuccess = () => {
        const write = request.result.transaction(['entries', 'summaries'], 'readwrite')
        write.objectStore('entries').add(note('1', 1))
        write.objectStore('summaries').put({ ...summary('1'), live: 1 })
        write.oncomplete = resolve
      }
    })
    request.result.close()
    const journal = indexedDbJournal('test', { factory })
    expect(await journal.read('pot/1')).toEqual([note('1', 1)])
    expect(await journal.live()).toEqual([summary('1')])
    expect(await journal.drawnFrom('x')).toEqual([])
    const drew = summary('1', { draws: [{ itemId: 'x', atMs: 1, amount: 5, unit: 'mL' }] })
    await journal.append([note('1', 2)], [drew])
    expect(await journal.drawnFrom('x')).toEqual([drew])
  })
})
