// Wet mode on the Stove: the taps are taken away while it is on, and a chip beside the lamps turns it on and off.
import { useEffect } from 'preact/hooks'
import type { Kitchen } from '../../kitchen.ts'
import { HoldPad } from '../../parts/hold-pad.tsx'
import { Pad } from '../../parts/pad.tsx'
import { watchWet } from '../../parts/wet-guard.ts'

export const WET = 'Wet: hold to answer'

export function useWet(kitchen: Kitchen): void {
  const { wet } = kitchen.settings.value
  useEffect(() => (wet ? watchWet(document) : undefined), [wet])
}

/** On by a tap, off by a hold: a drop must not end what keeps drops out. */
export function WetChip({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  const { wet } = kitchen.settings.value
  return wet ? (
    <HoldPad
      kind="control"
      look="solid"
      className="wet-chip"
      label={`${WET}. Hold to end wet mode`}
      onHeld={() => void kitchen.changeSettings({ wet: false })}
    >
      {WET}
    </HoldPad>
  ) : (
    <Pad
      kind="control"
      className="wet-chip"
      label="Wet hands: answer by holding"
      onPress={() => void kitchen.changeSettings({ wet: true })}
    >
      Wet
    </Pad>
  )
}
