// Hands that are wet, and hands that are elsewhere: wet mode, and the buttons of a headset.
import type { Kitchen } from '../../kitchen.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import type { Change } from './index.tsx'

const onOff = [
  { value: 'on', label: 'On' },
  { value: 'off', label: 'Off' }
] as const

export function WetPart({ kitchen, change }: { kitchen: Kitchen; change: Change }): preact.JSX.Element {
  const { wet, headset } = kitchen.settings.value
  return (
    <section class="settings-part" aria-labelledby="settings-wet">
      <h2 id="settings-wet">Wet hands</h2>
      <ChoiceRow
        legend="Wet mode"
        choices={onOff}
        value={wet ? 'on' : 'off'}
        onChoose={(choice) => change({ wet: choice === 'on' })}
      />
      <p>
        On the Stove every pad then wants a press of 0.7 s, and taps and drags do nothing. Pedals and keys act as
        always. “Wet” on the Stove turns it on, a hold there turns it off.
      </p>
      <ChoiceRow
        legend="Headset buttons"
        choices={onOff}
        value={headset ? 'on' : 'off'}
        onChoose={(choice) => change({ headset: choice === 'on' })}
      />
      <p>
        While a pot is watched “next” then means done and “previous” says the call again. The buttons are taken from
        music for that time. A locked phone may not pass them on.
      </p>
    </section>
  )
}
