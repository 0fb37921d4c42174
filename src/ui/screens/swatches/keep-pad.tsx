// Keeps what was found. What can't be stored is told, and can be tried again.
import { useEffect, useState } from 'preact/hooks'
import type { MediaBytes } from '../../../core/pot/media.ts'
import type { SwatchEvent } from '../../../core/record/swatch.ts'
import type { Kitchen } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import type { KitchenSwatches } from '../../swatches.ts'
import type { Series } from './series.ts'

type Props = {
  kitchen: Pick<Kitchen, 'newId'>
  swatches: Pick<KitchenSwatches, 'keep'>
  batchId: string | null
  /** What it stands for: another verdict is another deed. */
  of: unknown
  /** The series it was judged by, if by one: with another it is another deed too. */
  series?: Series | null
  events: () => SwatchEvent[]
  media?: () => MediaBytes[]
  kept: () => void
  disabled?: boolean
}

export function KeepPad({
  kitchen,
  swatches,
  batchId,
  of,
  series,
  events,
  media,
  kept,
  disabled
}: Props): preact.JSX.Element {
  const [deed, setDeed] = useState({ id: kitchen.newId(), said: '', done: false })
  const [busy, setBusy] = useState(false)
  useEffect(() => setDeed({ id: kitchen.newId(), said: '', done: false }), [of, batchId, series])
  const keep = async (): Promise<void> => {
    setBusy(true)
    const sent = await swatches.keep(batchId, events(), media?.() ?? [], deed.id)
    setBusy(false)
    const where = batchId === null ? 'Kept.' : 'Kept in the batch’s record.'
    setDeed({ ...deed, said: sent.ok ? where : `${sent.say} Try again.`, done: sent.ok })
    if (sent.ok) kept()
  }
  return (
    <div class="swatches-keep">
      <Pad kind="lesser" look="solid" disabled={disabled || busy || deed.done} onPress={() => void keep()}>
        {batchId === null ? 'Keep this' : 'Keep it in the record'}
      </Pad>
      <p role="status">{deed.said}</p>
    </div>
  )
}
