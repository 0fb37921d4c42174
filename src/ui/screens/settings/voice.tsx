// A voice beside the sound: off, what calls, or the way to each act as well.
import { useState } from 'preact/hooks'
import type { Kitchen, Settings } from '../../kitchen.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { Pad } from '../../parts/pad.tsx'
import type { Change } from './index.tsx'

const modes: { value: Settings['voice']; label: string; say: string }[] = [
  { value: 'off', label: 'Off', say: 'Nothing is said.' },
  { value: 'calls', label: 'Calls', say: 'Says what calls: pot, act, amount.' },
  {
    value: 'guide',
    label: 'Guide',
    say: 'Counts down to an act as well: “band three of six, lower in ten”, “three, two, one, lower”.'
  }
]

export function VoicePart({ kitchen, change }: { kitchen: Kitchen; change: Change }): preact.JSX.Element {
  const { voice } = kitchen.settings.value
  const [heard, setHeard] = useState<string | null>(null)
  const speak = async (): Promise<void> => {
    setHeard('Speaking…')
    const said = await kitchen.trySpeech()
    setHeard(
      said
        ? 'Said. Not understood over the fan: turn the device up, or go by sounds and the screen.'
        : 'No voice spoke. This device may have none for English: sounds and the screen go on without it.'
    )
  }
  return (
    <section class="settings-part" aria-labelledby="settings-voice">
      <h2 id="settings-voice">Voice</h2>
      <ChoiceRow
        legend="Spoken by the device"
        choices={modes}
        value={voice}
        onChoose={(mode) => change({ voice: mode })}
      />
      <ul class="settings-facts">
        {modes.map(({ value, label, say }) => (
          <li key={value}>
            <strong>{label}:</strong> {say}
          </li>
        ))}
        <li>A voice comes beside sounds and the screen, never in their place. Pots are called by their colourway.</li>
      </ul>
      {voice === 'off' ? null : (
        <>
          <Pad kind="lesser" onPress={speak}>
            Try the voice
          </Pad>
          <p role="status">{heard}</p>
        </>
      )}
    </section>
  )
}
