import { useEffect, useMemo, useState } from 'preact/hooks'
import type { Entry } from '../../../core/pot/entry.ts'
import type { PotEvent } from '../../../core/pot/events.ts'
import type { Units } from '../../../core/quantity/index.ts'
import { type Branch, branchesOf } from '../../../core/record/branches.ts'
import type { BatchRecord } from '../../../core/record/record.ts'
import { recordOf } from '../../../core/record/record-of.ts'
import type { Kitchen } from '../../kitchen.ts'
import { unitsOf } from '../../parts/units-of.ts'

const none: never[] = []

type Read = Awaited<ReturnType<Kitchen['entries']>>

/** `branches`: the ways a batch went that was continued on several devices, the trunk first; `entries` and `record` are of
 * the one asked for. `read` null: not read yet. `record` null with it: its start can't be read, or there is no such batch. */
type OfBatch = {
  read: Read | null
  branches: Branch[]
  entries: readonly Entry<PotEvent>[]
  record: BatchRecord | null
  units: Units
}

/** A pot's journal and the record it makes; read anew when the live pot moves on, and when `round` is another. */
export function useRecord(kitchen: Kitchen, potId: string, { round = 0, branch = 0 } = {}): OfBatch {
  const [read, setRead] = useState<Read | null>(null)
  const live = kitchen.pots.value.find((pot) => pot.potId === potId)
  const lastAtMs = live && live.state.status !== 'idle' ? live.state.lastAtMs : 0
  useEffect(() => {
    let here = true
    kitchen.entries(potId).then((found) => {
      if (here) setRead(found)
    })
    return () => {
      here = false
    }
  }, [kitchen, potId, round, lastAtMs])
  const units = unitsOf(kitchen.settings.value)
  const branches = useMemo(() => (read ? branchesOf(read.entries) : []), [read])
  const entries = branches[branch]?.entries ?? none
  const record = useMemo(
    () => (read ? recordOf(entries, { units, damaged: read.damaged }) : null),
    [read, entries, units.mass, units.temperature, units.volume]
  )
  return { read, branches, entries, record, units }
}
