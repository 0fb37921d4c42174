// Backups as the screens are given them. Loaded when the first screen wants one.
import { backupDue } from '../../core/backup/reminder.ts'
import { whileAlone } from '../../shell/backup/alone.ts'
import { firstStartedSince, mediaBySize, readAside, streamIds } from '../../shell/backup/journal-source.ts'
import { sweepPart } from '../../shell/backup/sink.ts'
import { openConnection } from '../../shell/journal/connection.ts'
import { addSize, noMedia } from '../../shell/journal/media-store.ts'
import type { AsideLine, BackupFacts, BackupNews, KitchenBackup, LastBackup, Restored } from '../../ui/backup.ts'
import { backUp } from './backing-up.ts'
import { lookAt } from './looking.ts'
import { type BackupParts, LAST, lockName, type Opened, PUT_OFF, SAID } from './parts.ts'
import { busy, restore, tidyUp } from './restoring.ts'
import { trimmable } from './trimmable.ts'

/** The one transaction of a large restore takes its time; it is not lost because of that. */
const PATIENCE_MS = 30 * 60_000

export function kitchenBackup(parts: BackupParts): KitchenBackup {
  const opened: Opened = { ...parts, connection: openConnection(`${parts.name}-journal`, { patienceMs: PATIENCE_MS }) }
  const { kept, connection } = opened
  let unwanted: { digest: string; hashes: ReadonlySet<string> } = { digest: '', hashes: new Set() }
  return {
    facts: () => factsOf(opened),
    make: (progress) => backUp(opened, progress),
    async look(file, progress) {
      const looked = await lookAt(opened, file, progress)
      if ('refused' in looked) return looked.refused
      unwanted = { digest: looked.seen.plan.digest, hashes: looked.unwanted }
      return looked.seen
    },
    async restore(file, { digest }, progress) {
      const refused = busy(opened)
      if (refused !== null) return refused
      const hashes = unwanted.digest === digest ? unwanted.hashes : new Set<string>()
      const work = async (): Promise<Restored> => {
        await tidyUp(opened)
        return restore(opened, { file, digest, unwanted: hashes, progress })
      }
      return (await whileAlone(lockName(parts.name), work)) ?? elsewhere
    },
    news: () => newsOf(opened),
    putOff: () => kept.set(PUT_OFF, parts.nowMs()),
    dismissSaid: () => kept.remove(SAID),
    trimmable: (most) => trimmable(opened, most),
    aside: async (potId) => (await readAside(connection, `pot/${potId}`)).map(asideLine)
  }
}

/** What an earlier page left of a restore is dropped or finished, unless another tab is at it now. */
export async function tidyRestore(parts: BackupParts): Promise<void> {
  const connection = openConnection(`${parts.name}-journal`, { patienceMs: PATIENCE_MS })
  try {
    await whileAlone(lockName(parts.name), () => tidyUp({ ...parts, connection }))
  } finally {
    connection.close()
    await sweepPart(Date.now())
  }
}

const elsewhere: Restored = {
  ok: false,
  say: 'Another tab is restoring.',
  instead: 'Wait until it is done, then look at the file again.'
}

async function factsOf({ connection, kept, room }: Opened): Promise<BackupFacts> {
  const sizes = noMedia()
  for (const { mime, size } of (await mediaBySize(connection)).values()) addSize(sizes, mime, size)
  const ids = await streamIds(connection)
  return {
    ...sizes,
    ...(await room()),
    last: (await kept.get<LastBackup>(LAST)) ?? null,
    batches: ids.filter((id) => id.startsWith('pot/')).length
  }
}

async function newsOf({ connection, kept, nowMs }: Opened): Promise<BackupNews> {
  const last = (await kept.get<LastBackup>(LAST)) ?? null
  const putOffMs = (await kept.get<number>(PUT_OFF)) ?? null
  const firstNewMs = await firstStartedSince(connection, last?.atMs ?? 0)
  const dueDays = backupDue({ lastMs: last?.atMs ?? null, putOffMs, firstNewMs, nowMs: nowMs() })
  return { dueDays, never: last === null, said: (await kept.get<string>(SAID)) ?? null }
}

function asideLine({ writerId, seq, why, entry }: Awaited<ReturnType<typeof readAside>>[number]): AsideLine {
  return { writerId, seq, why, entry }
}
