import type { IdPort } from '../../session/ports.ts'
import type { Connection } from '../../shell/journal/connection.ts'
import type { Kept } from '../../shell/settings/kept.ts'

export type BackupParts = {
  /** Of the app's databases: a rehearsal has names of its own. */
  name: string
  kept: Kept
  ids: IdPort
  nowMs: () => number
  /** A pot wants hands soon: nothing heavy is begun then. */
  watched: () => boolean
  /** Only the tab that writes restores. */
  owns: () => boolean
  /** The journal has other pots now. */
  merged: () => Promise<void>
  room: () => Promise<{ usedBytes: number | null; roomBytes: number | null }>
}

export type Opened = BackupParts & { connection: Connection }

export const LAST = 'backup/last'
export const PUT_OFF = 'backup/put-off'
export const SAID = 'backup/said'

export function lockName(name: string): string {
  return `${name}-restore`
}
