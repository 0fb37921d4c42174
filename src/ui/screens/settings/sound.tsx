// Sound, and how loud.
import type { Kitchen } from '../../kitchen.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { Loudness } from '../../parts/loudness.tsx'
import { Pad } from '../../parts/pad.tsx'
import type { Change } from './index.tsx'

export function SoundPart({ kitchen, change }: { kitchen: Kitchen; change: Change }): preact.JSX.Element {
  const { sound } = kitchen.settings.value
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
          <Loudness kitchen={kitchen} />
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
