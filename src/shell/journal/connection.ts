// One connection to one database, opened when it is first needed, dropped when it breaks.
import { upgradeStores, upgrades } from './stores.ts'

export type Connection = {
  /** Runs work in one strict transaction and resolves only when it is complete. Drops the handle when it broke. */
  run<T>(mode: IDBTransactionMode, stores: string[], work: (transaction: IDBTransaction) => () => T): Promise<T>
  close(): void
}

/** A connection that is gone, or a write of which nobody heard: worth one more try on a new handle. */
export class ConnectionLost extends Error {}

export type ConnectionOptions = {
  factory?: IDBFactory
  /** A transaction that says nothing for so long is taken as lost: a phone that slept can leave one hanging. A second
   * try is safe, for entries are only added: if the first did arrive, the second conflicts and the stream is reread. */
  patienceMs?: number
}

export function openConnection(
  name: string,
  { factory = indexedDB, patienceMs = 10_000 }: ConnectionOptions = {}
): Connection {
  let opening: Promise<IDBDatabase> | null = null

  const drop = (): void => {
    const old = opening
    opening = null
    old?.then(
      (database) => database.close(),
      () => {}
    )
  }

  const open = (): Promise<IDBDatabase> => {
    if (opening !== null) return opening
    const fresh = patient(openDatabase(factory, name, drop), patienceMs)
    opening = fresh
    // A failed opening must not stay the answer for ever.
    fresh.catch(() => {
      if (opening === fresh) opening = null
    })
    return fresh
  }

  return {
    async run(mode, stores, work) {
      const database = await open()
      try {
        return await patient(inTransaction(database, mode, stores, work), patienceMs)
      } catch (error) {
        if (isLost(error)) {
          drop()
          throw new ConnectionLost(String((error as Error).message ?? error))
        }
        throw error
      }
    },
    close: drop
  }
}

function openDatabase(factory: IDBFactory, name: string, drop: () => void): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = factory.open(name, upgrades.length)
    request.onupgradeneeded = (event) => {
      if (request.transaction !== null) upgradeStores(request.result, request.transaction, event.oldVersion)
    }
    request.onblocked = () => reject(new ConnectionLost('an older Strandline is open in another tab: close it'))
    request.onerror = () => reject(request.error)
    request.onsuccess = () => {
      const database = request.result
      database.onclose = drop
      // A newer version of the app in another tab wants to upgrade: standing in its way would freeze both.
      database.onversionchange = drop
      resolve(database)
    }
  })
}

function inTransaction<T>(
  database: IDBDatabase,
  mode: IDBTransactionMode,
  stores: string[],
  work: (transaction: IDBTransaction) => () => T
): Promise<T> {
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(stores, mode, { durability: 'strict' })
    let failed: unknown = null
    transaction.onerror = (event) => {
      failed ??= (event.target as IDBRequest).error
    }
    transaction.onabort = () =>
      reject(failed ?? transaction.error ?? new ConnectionLost('the transaction was broken off'))
    try {
      const result = work(transaction)
      transaction.oncomplete = () => resolve(result())
    } catch (error) {
      // Left alone, the transaction would keep what was added before the one that failed.
      failed = error
      transaction.abort()
    }
  })
}

/** InvalidStateError: the handle is closed. UnknownError and AbortError: the server behind it went away. */
function isLost(error: unknown): boolean {
  if (error instanceof ConnectionLost) return true
  const name = error instanceof Error || error instanceof DOMException ? error.name : ''
  return name === 'InvalidStateError' || name === 'UnknownError' || name === 'AbortError'
}

function patient<T>(promise: Promise<T>, patienceMs: number): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new ConnectionLost('the store does not answer')), patienceMs)
    promise.then(resolve, reject).finally(() => clearTimeout(timer))
  })
}
