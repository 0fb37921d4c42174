// After a stop: the bath went on dyeing. Does that time count?
import type { Kitchen } from '../../../kitchen.ts'
import { Pad } from '../../../parts/pad.tsx'
import type { LivePot } from '../live.ts'
import type { Stage } from '../stage.ts'
import { giantSay } from '../words.ts'
import './sheets.css'

type Props = { kitchen: Kitchen; stage: Stage; pot: LivePot }

export function Resume({ kitchen, stage, pot }: Props): preact.JSX.Element {
  const resume = (heldTimeCounts: boolean): void => {
    void stage.send(pot.potId, { type: 'Resume', heldTimeCounts }).then((sent) => {
      if (sent.ok) stage.close()
    })
  }
  return (
    <>
      <p>
        Stopped for <Stopped kitchen={kitchen} pot={pot} />. The bath went on dyeing. Does that time count?
      </p>
      <Pad kind="main" look="solid" layoutKey="resume" onPress={() => resume(true)}>
        <span>It counts</span>
        <small>it stayed in its range</small>
      </Pad>
      <Pad kind="main" layoutKey="resume" onPress={() => resume(false)}>
        <span>It does not count</span>
        <small>what was running gets its time back</small>
      </Pad>
    </>
  )
}

function Stopped({ kitchen, pot }: { kitchen: Kitchen; pot: LivePot }): preact.JSX.Element {
  const since = pot.state.status === 'held' ? pot.state.heldSinceMs : kitchen.now.value
  return <strong class="number">{giantSay(Math.max(0, kitchen.now.value - since))}</strong>
}
