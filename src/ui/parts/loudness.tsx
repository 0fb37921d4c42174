// How loud calls sound. The fan decides what is loud enough, so it is tried where the device will lean.
import { useState } from 'preact/hooks'
import type { Kitchen } from '../kitchen.ts'
import { ChoiceRow } from './choice-row.tsx'
import { Pad } from './pad.tsx'
import './loudness.css'

const levels = [0.2, 0.4, 0.6, 0.8, 1]

/** Each choice sounds at once, and is kept. */
export function Loudness({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  const { volumeLevel, loudnessTried } = kitchen.settings.value
  const [said, setSaid] = useState<string | null>(null)
  const nearest = levels.reduce((a, b) => (Math.abs(b - volumeLevel) < Math.abs(a - volumeLevel) ? b : a))
  const play = async (level: number): Promise<void> => {
    const played = await kitchen.trySound(level)
    setSaid(
      played
        ? 'Played. Not heard over the fan: choose louder, and turn the device up.'
        : 'The browser gives no sound. Calls will show on the screen only: keep it in sight.'
    )
    const kept = level === volumeLevel && loudnessTried === played
    const sent = kept ? null : await kitchen.changeSettings({ volumeLevel: level, loudnessTried: played })
    if (sent?.ok === false) setSaid(`Not kept. ${sent.say}`)
  }
  return (
    <div class="loudness">
      <ChoiceRow
        legend="Loudness"
        choices={levels.map((value, i) => ({ value, label: i === 0 ? '1 soft' : i === 4 ? '5 loud' : `${i + 1}` }))}
        value={nearest}
        onChoose={(level) => void play(level)}
      />
      <p>Stand at the stove, fan on, the device where it will lean.</p>
      <Pad kind="lesser" onPress={() => void play(nearest)}>
        Try at the stove
      </Pad>
      <p role="status">{said}</p>
    </div>
  )
}
