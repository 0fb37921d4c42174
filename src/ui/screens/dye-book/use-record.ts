import { useEffect, useMemo, useState } from 'preact/hooks'
import type { Units } from '../../../core/quantity/index.ts'
import type { BatchRecord } from '../../../core/record/record.ts'
import { recordOf } from '../../../core/record/record-of.ts'
import type { Kitchen } from '../../kitchen.ts'
import { unitsOf } from '../../parts/units-of.ts'

type Read = Awaited<ReturnType<Kitchen['entries']>>

/** A pot's journal and the record it makes; read anew when the live pot moves on, and when `round` is another.
 * `read` null: not read yet. `record` null with it: its start can't be read, or there is no such batch. */
export function useRecord(
  kitchen: Kitchen,
  potId: string,
  round = 0
): { read: Read | null; record: BatchRecord | null; units: Units } {
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
  const record = useMemo(
    () => (read ? recordOf(read.entries, { units, damaged: read.damaged }) : null),
    [read, units.mass, units.temperature, units.volume]
  )
  return { read, record, units }
}
