// All that can happen to a pot beside its route, a knuckle away.
import { useState } from 'preact/hooks'
import type { PotCommand } from '../../../../core/pot/commands.ts'
import type { Kitchen } from '../../../kitchen.ts'
import { Pad } from '../../../parts/pad.tsx'
import { AgoRow } from '../ago-row.tsx'
import type { LivePot } from '../live.ts'
import type { Stage } from '../stage.ts'
import type { Deed, SheetDeed } from './deed.ts'
import { bathDeeds } from './deeds-bath.tsx'
import { doseDeeds } from './deeds-dose.tsx'
import { potDeeds } from './deeds-pot.tsx'
import { readDeeds } from './deeds-read.tsx'
import { skeinDeeds } from './deeds-skeins.tsx'
import { stepDeeds } from './deeds-step.tsx'
import './sheets.css'

const deeds: (Deed | SheetDeed)[] = [...readDeeds, ...doseDeeds, ...bathDeeds, ...stepDeeds, ...skeinDeeds, ...potDeeds]
const groups: Deed['group'][] = ['Read', 'Bath', 'Step', 'Skeins', 'Pot']

type Props = { kitchen: Kitchen; stage: Stage; pot: LivePot }

export default function More({ kitchen, stage, pot }: Props): preact.JSX.Element {
  const [chosen, setChosen] = useState<string | null>(null)
  const deed = deeds.find((d) => d.id === chosen)
  const send = (command: PotCommand): void => {
    void stage.send(pot.potId, command).then((sent) => {
      if (sent.ok) stage.close()
    })
  }
  const choose = (one: Deed | SheetDeed): void => {
    if (!('opens' in one)) setChosen(one.id)
    else stage.open.value = { kind: one.opens, potId: pot.potId, during: stage.called.peek() }
  }
  if (deed && 'Form' in deed) {
    const { Form } = deed
    return (
      <div class="more-form">
        <div class="more-form-head">
          <h3>{deed.say}</h3>
          <Pad kind="lesser" onPress={() => setChosen(null)}>
            All
          </Pad>
        </div>
        <Form kitchen={kitchen} stage={stage} pot={pot} send={send} />
        <AgoRow stage={stage} look="plain" />
      </div>
    )
  }
  return (
    <>
      {pot.state.undo ? (
        <Pad kind="main" layoutKey="undo" disabled={stage.busy.value} onPress={() => send({ type: 'Undo' })}>
          Undo the last
        </Pad>
      ) : null}
      {groups.map((group) => (
        <section key={group} class="more-group">
          <h3>{group}</h3>
          <div class="more-list">
            {deeds
              .filter((d) => d.group === group && d.fits(pot) && (!('opens' in d) || kitchen.media))
              .map((d) => (
                <Pad key={d.id} kind="lesser" onPress={() => choose(d)}>
                  {d.say}
                </Pad>
              ))}
          </div>
        </section>
      ))}
      <p class="soft">What was written wrongly is corrected in the Dye book.</p>
    </>
  )
}
