// Two pots that will want hands at once, as a line of its own; where there is no room for one the hands line says it.
import { useComputed } from '@preact/signals'
import type { Kitchen } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import { useSettled } from '../../parts/settled.ts'
import { Strip } from '../../parts/strip.tsx'
import { type Clash, clashNow, lookAtMs } from './clash.ts'
import { livePots } from './live.ts'
import type { Stage } from './stage.ts'

export function useClash(kitchen: Kitchen, stage: Stage): Clash | null {
  const look = useComputed(() => lookAtMs(kitchen.now.value))
  return useSettled(() => clashNow(livePots(kitchen.pots.value), look.value, stage.clashesSeen.value))
}

type Props = { stage: Stage; clash: Clash | null }

export function ClashStrip({ stage, clash }: Props): preact.JSX.Element | null {
  if (clash === null) return null
  const seen = (): void => {
    stage.clashesSeen.value = new Set([...stage.clashesSeen.value, clash.key])
  }
  return (
    <Strip
      tone="info"
      actions={
        <Pad kind="lesser" layoutKey={clash.key} onPress={seen}>
          Seen
        </Pad>
      }
    >
      {clash.say}
    </Strip>
  )
}
