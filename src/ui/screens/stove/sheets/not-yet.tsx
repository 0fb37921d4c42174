// An act put off: why, and by how much. Lateness is still told against its first time.
import { useState } from 'preact/hooks'
import { Pad } from '../../../parts/pad.tsx'
import type { LivePot } from '../live.ts'
import type { Stage } from '../stage.ts'
import { Reason } from './reason.tsx'
import './sheets.css'

const reasons = ['hands in another pot', 'bath not ready', 'skein not ready', 'away from the stove'] as const
const minutes = [1, 2, 5, 10] as const

type Props = { stage: Stage; pot: LivePot; path: string }

export function NotYet({ stage, pot, path }: Props): preact.JSX.Element {
  const [reason, setReason] = useState<string>(reasons[0])
  const putOff = (min: number): void => {
    void stage.send(pot.potId, { type: 'NotYet', path, byMs: min * 60_000, reason: reason.trim() }).then((sent) => {
      if (sent.ok) stage.close()
    })
  }
  return (
    <>
      <Reason legend="Why" reasons={reasons} value={reason} onReason={setReason} />
      <h3>Ask again in</h3>
      <div class="sheet-pads">
        {minutes.map((min) => (
          <Pad
            key={min}
            kind="main"
            look="solid"
            disabled={reason.trim() === ''}
            layoutKey={path}
            onPress={() => putOff(min)}
          >
            {min} min
          </Pad>
        ))}
      </div>
    </>
  )
}
