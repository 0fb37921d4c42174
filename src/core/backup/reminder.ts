// When to say that a backup is due. Common practice, no source: a fortnight is about what a dyer may lose and still know
// by heart.

const DAY_MS = 24 * 60 * 60_000
export const REMIND_AFTER_DAYS = 14
export const PUT_OFF_DAYS = 7

export type BackupFacts = {
  /** Null: there was none on this device. */
  lastMs: number | null
  /** Null: nobody put the reminder off. */
  putOffMs: number | null
  /** When the first batch began that no backup holds; null: there is none. */
  firstNewMs: number | null
  nowMs: number
}

/** Whole days since the last backup, or since the first batch where there was none; null: nothing is to be said. Without a
 * new batch an old backup is as good as a fresh one. */
export function backupDue({ lastMs, putOffMs, firstNewMs, nowMs }: BackupFacts): number | null {
  if (firstNewMs === null) return null
  if (putOffMs !== null && nowMs - putOffMs < PUT_OFF_DAYS * DAY_MS) return null
  const days = Math.floor((nowMs - (lastMs ?? firstNewMs)) / DAY_MS)
  return days >= REMIND_AFTER_DAYS ? days : null
}
