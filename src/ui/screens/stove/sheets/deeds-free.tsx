// A free pot: each thing is told as it is done, in two taps at most.
import { useState } from 'preact/hooks'
import type { PotCommand } from '../../../../core/pot/commands.ts'
import type { DeedWord } from '../../../../core/pot/events.ts'
import type { Kitchen } from '../../../kitchen.ts'
import { Pad } from '../../../parts/pad.tsx'
import { AgoRow } from '../ago-row.tsx'
import { type LivePot, openSteps } from '../live.ts'
import type { Stage } from '../stage.ts'
import type { DeedProps } from './deed.ts'
import { DeedCautions } from './deed-cautions.tsx'
import { readDeeds } from './deeds-read.tsx'
import { AddForm, CallMeForm, FillForm, LowerForm } from './free-forms.tsx'
import './sheets.css'

type Props = { kitchen: Kitchen; stage: Stage; pot: LivePot }

const forms: Record<string, { say: string; Form: (props: DeedProps) => preact.JSX.Element }> = {
  fill: { say: 'Fill', Form: FillForm },
  add: { say: 'Add', Form: AddForm },
  lower: { say: 'Lower to', Form: LowerForm },
  call: { say: 'Call me in', Form: CallMeForm },
  ...formsOf('temperature', 'judge', 'note')
}

/** What every pot can be told, as it is there. */
function formsOf(...ids: string[]): typeof forms {
  return Object.fromEntries(
    readDeeds.flatMap((deed) => ('Form' in deed && ids.includes(deed.id) ? [[deed.id, deed as never]] : []))
  )
}

const deed = (word: DeedWord, say = ''): PotCommand => ({ type: 'NoteDeed', word, say })

type Told = { id: string; say: string; command: PotCommand }

/** In the order of a day at the pot; what is told with one tap among what wants one more word. */
function padsOf({ pot, stage }: Props): (Told | { opens: string })[] {
  const heat: Told = pot.state.heatOn
    ? { id: 'off', say: 'Heat off', command: { type: 'ChangeHeat', on: false, level: null } }
    : { id: 'on', say: 'Heat on', command: { type: 'ChangeHeat', on: true, level: null } }
  return [
    { opens: 'fill' },
    { opens: 'add' },
    heat,
    { id: 'in', say: 'Skeins in', command: { type: 'PutSkeinsIn', tags: stage.tagsOf(pot.potId) } },
    { id: 'lift', say: 'Lift', command: deed('lift') },
    { opens: 'lower' },
    { id: 'turn', say: 'Turn', command: deed('turn') },
    { id: 'stir', say: 'Stir', command: deed('do', 'Stir the bath') },
    { id: 'rinse', say: 'Rinse', command: deed('rinse') },
    { id: 'squeeze', say: 'Squeeze', command: deed('squeeze') },
    { id: 'spin', say: 'Spin', command: deed('spin') },
    { id: 'air', say: 'Air', command: deed('air') },
    { opens: 'temperature' },
    { opens: 'judge' },
    { opens: 'note' }
  ]
}

export default function FreeDeeds(props: Props): preact.JSX.Element {
  const { kitchen, stage, pot } = props
  const [chosen, setChosen] = useState<string | null>(null)
  const send = (command: PotCommand): void => {
    void stage.send(pot.potId, command).then((sent) => {
      if (sent.ok) stage.close()
    })
  }
  const form = chosen === null ? undefined : forms[chosen]
  if (form) {
    const { Form, say } = form
    return (
      <div class="more-form">
        <div class="more-form-head">
          <h3>{say}</h3>
          <Pad kind="lesser" onPress={() => setChosen(null)}>
            All
          </Pad>
        </div>
        <Form kitchen={kitchen} stage={stage} pot={pot} send={send} />
        {chosen === 'call' ? null : <AgoRow stage={stage} look="plain" />}
      </div>
    )
  }
  return (
    <div class="free-deeds">
      <DeedCautions stage={stage} pot={pot} />
      <AgoRow stage={stage} look="plain" />
      <div class="free-pads">
        {padsOf(props).map((one) =>
          'opens' in one ? (
            <Pad key={one.opens} kind="main" onPress={() => setChosen(one.opens)}>
              {forms[one.opens]?.say}
            </Pad>
          ) : (
            <Pad
              key={one.id}
              kind="main"
              look={one.id === 'off' ? 'bad' : 'plain'}
              layoutKey={one.id === 'on' || one.id === 'off' ? one.id : undefined}
              disabled={stage.busy.value}
              onPress={() => send(one.command)}
            >
              {one.say}
            </Pad>
          )
        )}
        <PhotoPad {...props} />
        <Pad kind="main" onPress={() => setChosen('call')}>
          Call me
        </Pad>
        <FinishPad stage={stage} pot={pot} />
      </div>
    </div>
  )
}

function PhotoPad({ kitchen, stage, pot }: Props): preact.JSX.Element | null {
  if (!kitchen.media) return null
  const open = (): void => {
    stage.open.value = { kind: 'photo', potId: pot.potId, during: stage.called.peek() }
  }
  return (
    <Pad kind="main" onPress={open}>
      Photo
    </Pad>
  )
}

/** The open step is over; what becomes of the bath is asked as of any pot. */
function FinishPad({ stage, pot }: Pick<Props, 'stage' | 'pot'>): preact.JSX.Element {
  const finish = (): void => {
    const path = openSteps(pot.state).find(({ step }) => step.open)?.step.path
    if (path === undefined) return
    void stage.send(pot.potId, { type: 'MarkDone', path }).then((sent) => {
      if (sent.ok) stage.open.value = { kind: 'finish', potId: pot.potId }
    })
  }
  return (
    <Pad kind="main" look="solid" disabled={stage.busy.value} onPress={finish}>
      Finish
    </Pad>
  )
}
