// The end of a batch: its bath may go on.
import type { BathFate } from '../../../../core/pot/events.ts'
import { HoldPad } from '../../../parts/hold-pad.tsx'
import { Pad } from '../../../parts/pad.tsx'
import { type LivePot, nameOf } from '../live.ts'
import type { Stage } from '../stage.ts'
import './sheets.css'

const fates: readonly { bath: BathFate; say: string; note: string }[] = [
  { bath: 'dropped', say: 'Dropped', note: 'Poured away as local rules say' },
  { bath: 'kept-hot', say: 'Kept hot', note: 'For the next skein. Stay by the heat' },
  { bath: 'stored', say: 'Stored', note: 'Cooled, lidded, labelled, locked away, never in a food jar' }
]

export function Finish({ stage, pot }: { stage: Stage; pot: LivePot }): preact.JSX.Element {
  const { heatOn } = pot.state
  const finish = (bath: BathFate): void => {
    void stage.send(pot.potId, { type: 'Finish', bath }).then((sent) => {
      if (sent.ok) stage.close()
    })
  }
  return (
    <>
      {heatOn ? (
        <Pad
          kind="main"
          look="bad"
          layoutKey="heat"
          onPress={() => void stage.send(pot.potId, { type: 'ChangeHeat', on: false, level: null })}
        >
          {nameOf(pot)}: heat is off
        </Pad>
      ) : null}
      <h3>What becomes of the bath</h3>
      <p>The pot leaves the Stove with it, and that can’t be undone here.</p>
      {fates.map(({ bath, say, note }) => (
        <HoldPad key={bath} kind="main" look="plain" layoutKey="fates" onHeld={() => finish(bath)}>
          <span>{say}</span>
          <small>press and hold</small>
          <small>{note}</small>
        </HoldPad>
      ))}
    </>
  )
}
