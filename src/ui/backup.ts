// What the screens are given for backups.

export type Progress = (share: number) => void

export type LastBackup = { atMs: number; name: string; bytes: number; batches: number; where: 'chosen' | 'downloads' }

/** A batch by its name and start. */
export type BatchName = { potId: string; colourway: string; startedAtMs: number }

export type BackupFacts = {
  last: LastBackup | null
  batches: number
  photos: number
  photoBytes: number
  sounds: number
  soundBytes: number
  usedBytes: number | null
  roomBytes: number | null
}

export type MadeBackup = { ok: true; last: LastBackup } | { ok: false; cancelled: boolean; say: string }

/** What a backup would bring here. */
export type RestorePlan = {
  madeAtMs: number
  /** The checksum of the whole file: what is restored is what was looked at. */
  digest: string
  batches: number
  fresh: BatchName[]
  grown: BatchName[]
  /** On the stove here: left as they are. */
  heldBack: BatchName[]
  /** Running when the backup was made: nothing of them will call here. */
  elsewhere: BatchName[]
  /** Continued on two devices: both branches will be shown. */
  branched: BatchName[]
  entries: number
  /** Those of them that are no batch's own: of the shelf, of skeins that were judged. */
  beside: number
  conflicts: number
  /** Damaged here, whole in the backup. */
  mended: number
  /** New here, and damaged in the backup as they were where it was made. */
  damaged: number
  photos: number
  photoBytes: number
  damagedPhotos: number
  /** Not brought in: they were let go here. */
  letGo: number
  texts: number
  /** Settings and the like that this device keeps as they are. */
  asHere: number
  /** Null: the browser does not say. */
  roomBytes: number | null
}

export type LookedAt = { ok: true; plan: RestorePlan } | { ok: false; say: string; instead: string }

export type Restored =
  | { ok: true; batches: number; entries: number; texts: number; heldBack: number; notKept: string | null }
  | { ok: false; say: string; instead: string }

/** What the Dye book says of backups: that one is due, or what became of a restore that was cut short. */
export type BackupNews = { dueDays: number | null; never: boolean; said: string | null }

/** A batch with pictures and sound that can be let go, or a skein that was judged by itself: its `potId` is then the id of
 * its stream. `hashes`: those of the pot's own record; `swatchHashes`: of its skein's. */
export type Trimmable = BatchName & {
  photos: number
  sounds: number
  bytes: number
  backedUp: boolean
  hashes: string[]
  swatchHashes: string[]
}

/** An entry that could not stand beside the one under its number; `entry` as it is stored. */
export type AsideLine = { writerId: string; seq: number; why: 'conflict' | 'damaged'; entry: unknown }

export type KitchenBackup = {
  facts(): Promise<BackupFacts>
  /** Must be called inside a tap: the browser may ask where to put the file. */
  make(progress: Progress): Promise<MadeBackup>
  /** Reads the whole file and writes nothing. */
  look(file: File, progress: Progress): Promise<LookedAt>
  restore(file: File, plan: RestorePlan, progress: Progress): Promise<Restored>
  news(): Promise<BackupNews>
  putOff(): Promise<void>
  dismissSaid(): Promise<void>
  /** The oldest batches that hold pictures or sound, with those of this id left out. */
  trimmable(most: number): Promise<Trimmable[]>
  aside(potId: string): Promise<AsideLine[]>
}
