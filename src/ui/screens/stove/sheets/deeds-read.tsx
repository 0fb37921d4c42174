import { useState } from 'preact/hooks'
import type { PhStrip } from '../../../parts/ph-strip.ts'
import { StripSetUp } from '../../../parts/strip-set-up.tsx'
import { AskPanel } from '../ask/ask-panel.tsx'
import { TextAnswer } from '../ask/text-answer.tsx'
import { expectedTempC } from '../expected.ts'
import type { Deed, DeedProps, SheetDeed } from './deed.ts'

function Temperature({ kitchen, pot, send }: DeedProps): preact.JSX.Element {
  return (
    <AskPanel
      question={{ kind: 'temperature', lowC: null, highC: null }}
      expectedC={expectedTempC(pot.state, null, kitchen.now.peek())}
      settings={kitchen.settings.value}
      look="plain"
      layoutKey="temperature"
      onAnswer={(answer) => answer.kind === 'temperature' && send({ type: 'ReadTemperature', tempC: answer.tempC })}
    />
  )
}

function Ph({ kitchen, send }: DeedProps): preact.JSX.Element {
  const [failed, setFailed] = useState<string | null>(null)
  const settings = kitchen.settings.value
  const keep = async (strip: PhStrip): Promise<void> => {
    const sent = await kitchen.changeSettings({ strip })
    setFailed(sent.ok ? null : sent.say)
  }
  return (
    <>
      <AskPanel
        key={settings.strip.steps.join(' ')}
        question={{ kind: 'ph', low: null, high: null }}
        expectedC={0}
        settings={settings}
        look="plain"
        layoutKey="ph"
        onAnswer={(answer) => {
          if (answer.kind !== 'ph') return
          const { reading, lot } = answer
          send({ type: 'ReadPh', reading, ...(lot === undefined ? {} : { lot }) })
        }}
      />
      <details class="strip-own">
        <summary>Your strips</summary>
        {failed === null ? null : <p role="alert">{failed}</p>}
        <StripSetUp strip={settings.strip} onChange={(strip) => void keep(strip)} />
      </details>
    </>
  )
}

function Judge({ kitchen, send }: DeedProps): preact.JSX.Element {
  return (
    <AskPanel
      question={{ kind: 'grade', of: 'bath', enough: null }}
      expectedC={0}
      settings={kitchen.settings.value}
      look="plain"
      layoutKey="grade"
      onAnswer={(answer) => {
        if (answer.kind !== 'grade') return
        const { kind: _, ...judged } = answer
        send({ type: 'Judge', of: 'bath', ...judged })
      }}
    />
  )
}

function Note({ send }: DeedProps): preact.JSX.Element {
  return <TextAnswer ask="What was seen" onText={(text) => send({ type: 'WriteNote', text })} />
}

const always = (): boolean => true

export const readDeeds: (Deed | SheetDeed)[] = [
  { id: 'temperature', say: 'Read temperature', group: 'Read', fits: always, Form: Temperature },
  { id: 'ph', say: 'Read pH', group: 'Read', fits: always, Form: Ph },
  { id: 'judge', say: 'Judge the bath', group: 'Read', fits: always, Form: Judge },
  { id: 'note', say: 'Note', group: 'Read', fits: always, Form: Note },
  { id: 'photo', say: 'Photo', group: 'Read', fits: always, opens: 'photo' },
  { id: 'voice', say: 'Voice note', group: 'Read', fits: always, opens: 'voice' }
]
