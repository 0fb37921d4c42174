// A whistle as a way to answer: off at first, tried here, and the microphone open only while it is on.
import { useEffect, useState } from 'preact/hooks'
import type { Kitchen, KitchenWhistle } from '../../kitchen.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { Pad } from '../../parts/pad.tsx'
import type { Change } from './index.tsx'

const onOff = [
  { value: 'on', label: 'On' },
  { value: 'off', label: 'Off' }
] as const

export function WhistlePart({ kitchen, change }: { kitchen: Kitchen; change: Change }): preact.JSX.Element {
  const { whistle: on } = kitchen.settings.value
  const whistle = kitchen.whistle.value
  return (
    <section class="settings-part" aria-labelledby="settings-whistle">
      <h2 id="settings-whistle">Whistle</h2>
      <ChoiceRow
        legend="Whistles answer calls"
        choices={onOff}
        value={on ? 'on' : 'off'}
        onChoose={(choice) => change({ whistle: choice === 'on' })}
      />
      <ul class="settings-facts">
        <li>
          <strong>Rising:</strong> the act that calls is done. Among answers: take this one.
        </li>
        <li>
          <strong>Falling:</strong> say it again. Among answers: the next one.
        </li>
        <li>
          Glide for about half a second. What it did is said back and can be undone; what can't be undone wants a hand.
        </li>
        <li>
          With this on the microphone is open while a pot is watched, and the Stove says so. Nothing is recorded, and
          nothing leaves the device. Not everyone can whistle: pads, pedals, keys and a headset answer too.
        </li>
      </ul>
      {whistle === null ? <p>Not there yet.</p> : <Trial whistle={whistle} />}
    </section>
  )
}

function Trial({ whistle }: { whistle: KitchenWhistle }): preact.JSX.Element {
  const [trying, setTrying] = useState(false)
  useEffect(() => () => whistle.try(false), [whistle])
  const turn = (now: boolean): void => {
    setTrying(now)
    whistle.try(now)
  }
  const { say } = whistle.ear.value
  const heard = whistle.heard.value
  return (
    <>
      <Pad kind="lesser" onPress={() => turn(!trying)}>
        {trying ? 'Shut the microphone' : 'Try a whistle'}
      </Pad>
      {trying ? (
        <p role="status">
          {say} {heard === null ? 'Nothing heard yet.' : heardSay(heard)}
        </p>
      ) : null}
    </>
  )
}

function heardSay({ kind, semitones, lengthMs }: NonNullable<KitchenWhistle['heard']['value']>): string {
  const way = kind === 'rise' ? 'Rising: done' : 'Falling: say it again'
  return `Heard: ${way} (${Math.abs(Math.round(semitones))} half tones in ${(lengthMs / 1000).toFixed(1)} s).`
}
