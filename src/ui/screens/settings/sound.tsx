// Sound, and how loud. The fan decides what is loud enough, so it is tried at the stove.
import { useState } from 'preact/hooks'
import type { Kitchen } from '../../kitchen.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { Pad } from '../../parts/pad.tsx'
import type { Change } from './index.tsx'

const levels = [0.2, 0.4, 0.6, 0.8, 1]

export function SoundPart({ kitchen, change }: { kitchen: Kitchen; change: Change }): preact.JSX.Element {
  const { sound, volumeLevel } = kitchen.settings.value
  const [heard, setHeard] = useState<string | null>(null)
  const nearest = levels.reduce((a, b) => (Math.abs(b - volumeLevel) < Math.abs(a - volumeLevel) ? b : a))
  const play = async (level: number): Promise<void> => {
    const played = await kitchen.trySound(level)
    setHeard(
      played
        ? 'Played. Not heard over the fan: choose louder, and turn the device up.'
        : 'The browser gives no sound. Calls will show on the screen only: keep it in sight.'
    )
  }
  return (
    <section class="settings-part" aria-labelledby="settings-sound">
      <h2 id="settings-sound">Sound</h2>
      <ChoiceRow
        legend="Calls"
        choices={[
          { value: 'on', label: 'With sound' },
          { value: 'off', label: 'On the screen only' }
        ]}
        value={sound ? 'on' : 'off'}
        onChoose={(choice) => change({ sound: choice === 'on' })}
      />
      {sound ? (
        <>
          <ChoiceRow
            legend="Loudness"
            choices={levels.map((value, i) => ({ value, label: i === 0 ? '1 soft' : i === 4 ? '5 loud' : `${i + 1}` }))}
            value={nearest}
            onChoose={(level) => {
              change({ volumeLevel: level })
              play(level)
            }}
          />
          <p>Stand at the stove, fan on, the device where it will lean.</p>
          <Pad kind="lesser" onPress={() => play(nearest)}>
            Try at the stove
          </Pad>
          <p role="status">{heard}</p>
          <Pad kind="lesser" onPress={() => kitchen.go('#/device-check')}>
            Try it with the device locked
          </Pad>
        </>
      ) : (
        <p>Nothing will be heard. Keep the screen in sight and set a kitchen timer.</p>
      )}
    </section>
  )
}
