import { useEffect, useState } from 'preact/hooks'
import type { Units } from '../../../../core/quantity/index.ts'
import type { BatchRecord } from '../../../../core/record/record.ts'
import { recordOf } from '../../../../core/record/record-of.ts'
import type { Kitchen } from '../../../kitchen.ts'

/** `unread`: how many of the batches can't be read here. */
export type ReadRecords = { records: BatchRecord[]; unread: number }

/** The records of several batches, oldest first; null while they are read. */
export function useRecords(kitchen: Kitchen, potIds: readonly string[], units: Units): ReadRecords | null {
  const [read, setRead] = useState<ReadRecords | null>(null)
  const asked = potIds.join(' ')
  useEffect(() => {
    let here = true
    const one = async (potId: string): Promise<BatchRecord | null> => {
      const { entries, damaged } = await kitchen.entries(potId)
      return recordOf(entries, { units, damaged })
    }
    Promise.all(potIds.map((potId) => one(potId).catch(() => null))).then((all) => {
      const records = all.filter((record) => record !== null)
      records.sort((a, b) => a.identity.startedAtMs - b.identity.startedAtMs)
      if (here) setRead({ records, unread: all.length - records.length })
    })
    return () => {
      here = false
    }
  }, [kitchen, asked])
  return read
}

export function unreadWords(unread: number): string {
  return unread === 1 ? 'One of them can’t be read here.' : `${unread} of them can’t be read here.`
}
