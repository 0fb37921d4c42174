// Small things kept between visits: settings, protocol files that were opened. In a database of their own, so that
// nothing here can ever touch the journal.
import { createStore, del, entries, get, set, update } from 'idb-keyval'

export type Kept = {
  get<T>(key: string): Promise<T | undefined>
  set(key: string, value: unknown): Promise<void>
  /** What is kept there, or what is put there now: one step, so that two tabs can't both put theirs. */
  getOrPut(key: string, fresh: string): Promise<string>
  /** Puts a value there unless what is there by then may not be put over; says whether it did. One step too. */
  putOver(key: string, value: unknown, mayPutOver: (was: unknown) => boolean): Promise<boolean>
  remove(key: string): Promise<void>
  startingWith<T>(prefix: string): Promise<T[]>
  all(): Promise<[key: string, value: unknown][]>
}

export function keptIn(database: string): Kept {
  let store: ReturnType<typeof createStore> | null = null
  const on = async <T>(work: (store: ReturnType<typeof createStore>) => Promise<T>): Promise<T> => {
    store ??= createStore(database, 'kept')
    try {
      return await work(store)
    } catch (error) {
      // A failed opening stays the store's answer for ever: the next call opens a new one.
      store = null
      throw error
    }
  }
  return {
    get: (key) => on((opened) => get(key, opened)),
    set: (key, value) => on((opened) => set(key, value, opened)),
    async getOrPut(key, fresh) {
      let kept = fresh
      const keep = (was: unknown): string => {
        kept = typeof was === 'string' ? was : fresh
        return kept
      }
      await on((opened) => update(key, keep, opened))
      return kept
    },
    async putOver(key, value, mayPutOver) {
      let put = false
      const change = (was: unknown): unknown => {
        put = mayPutOver(was)
        return put ? value : was
      }
      await on((opened) => update(key, change, opened))
      return put
    },
    all: () => on((opened) => entries<string, unknown>(opened)),
    remove: (key) => on((opened) => del(key, opened)),
    async startingWith<T>(prefix: string) {
      const all = await on((opened) => entries<string, T>(opened))
      return all.filter(([key]) => key.startsWith(prefix)).map(([, value]) => value)
    }
  }
}

export function memoryKept(): Kept {
  const map = new Map<string, unknown>()
  return {
    get: async <T>(key: string) => map.get(key) as T | undefined,
    set: async (key, value) => void map.set(key, value),
    async getOrPut(key, fresh) {
      if (!map.has(key)) map.set(key, fresh)
      return map.get(key) as string
    },
    async putOver(key, value, mayPutOver) {
      const put = mayPutOver(map.get(key))
      if (put) map.set(key, value)
      return put
    },
    all: async () => [...map],
    remove: async (key) => void map.delete(key),
    startingWith: async <T>(prefix: string) =>
      [...map].filter(([key]) => key.startsWith(prefix)).map(([, value]) => value as T)
  }
}
