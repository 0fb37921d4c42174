// The stores of the journal's database and the numbered steps that make them. A step is never changed once an app was
// shipped with it: the next change is the next step.

export const ENTRIES = 'entries'
export const SUMMARIES = 'summaries'
export const STARTED = 'started'
export const LIVE = 'live'
export const MEDIA = 'media'
export const SIZES = 'sizes'
export const DRAWN = 'drawn'
/** What a restore has read and not yet merged. */
export const INCOMING = 'incoming'
/** Entries that can't stand beside the one under their key. */
export const ASIDE = 'aside'

export const upgrades: readonly ((database: IDBDatabase, transaction: IDBTransaction) => void)[] = [
  (database) => {
    // The key itself makes a second writer conflict: `add` of a taken key fails, nothing is ever overwritten.
    database.createObjectStore(ENTRIES, { keyPath: ['streamId', 'writerId', 'seq'] })
    const summaries = database.createObjectStore(SUMMARIES, { keyPath: 'potId' })
    summaries.createIndex(STARTED, 'startedAtMs')
    // Only live pots carry the field: an index holds just the records that have it.
    summaries.createIndex(LIVE, 'live')
  },
  (database) => {
    const media = database.createObjectStore(MEDIA, { keyPath: 'sha256' })
    // The sizes are told from the index alone: reading the pictures to count them would take as long as they are large.
    media.createIndex(SIZES, ['mime', 'size'])
  },
  (_, transaction) => {
    // One place for each thing of the shelf that a pot drew from. No pot from before there was a shelf drew from it.
    transaction.objectStore(SUMMARIES).createIndex(DRAWN, 'drawn', { multiEntry: true })
  },
  (database) => {
    database.createObjectStore(INCOMING, { autoIncrement: true })
    // Of one key there may be several, told apart by the checksum of their words.
    database.createObjectStore(ASIDE, { keyPath: ['streamId', 'writerId', 'seq', 'mark'] })
  }
]

/** Runs the steps that a database of this version still lacks. */
export function upgradeStores(database: IDBDatabase, transaction: IDBTransaction, fromVersion: number): void {
  for (const step of upgrades.slice(fromVersion)) step(database, transaction)
}
