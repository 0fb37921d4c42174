// Settings: how things are shown and heard, who dyes here, where records are kept, and what this is.
import { useEffect, useState } from 'preact/hooks'
import type { Kitchen, Settings } from '../../kitchen.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { TextField } from '../../parts/field.tsx'
import { Page } from '../../parts/page.tsx'
import { Strip } from '../../parts/strip.tsx'
import { About } from './about.tsx'
import { PedalPart } from './pedal.tsx'
import { Place } from './place.tsx'
import { SoundPart } from './sound.tsx'
import { StoragePart } from './storage.tsx'
import { StripsPart } from './strips.tsx'
import { VoicePart } from './voice.tsx'
import { WetPart } from './wet.tsx'
import { WhistlePart } from './whistle.tsx'
import './style.css'

export type Change = (change: Partial<Settings>) => void

export function SettingsScreen({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  const [failed, setFailed] = useState<string | null>(null)
  const settings = kitchen.settings.value
  const change: Change = (change) => {
    kitchen.changeSettings(change).then((sent) => setFailed(sent.ok ? null : sent.say))
  }
  return (
    <Page title="Settings">
      {failed === null ? null : (
        <Strip tone="bad" urgent>
          {failed}
        </Strip>
      )}
      <section class="settings-part" aria-labelledby="settings-units">
        <h2 id="settings-units">Units</h2>
        <ChoiceRow
          legend="Temperature"
          choices={[
            { value: 'C', label: '°C' },
            { value: 'F', label: '°F' }
          ]}
          value={settings.temperature}
          onChoose={(temperature) => change({ temperature: temperature as Settings['temperature'] })}
        />
        <ChoiceRow
          legend="Volume"
          choices={[
            { value: 'metric', label: 'mL, L' },
            { value: 'us', label: 'US measures' },
            { value: 'imperial', label: 'Imperial' }
          ]}
          value={settings.volume}
          onChoose={(volume) => change({ volume: volume as Settings['volume'] })}
        />
        <ChoiceRow
          legend="Weight"
          choices={[
            { value: 'metric', label: 'g, kg' },
            { value: 'us', label: 'oz, lb' }
          ]}
          value={settings.mass}
          onChoose={(mass) => change({ mass: mass as Settings['mass'] })}
        />
      </section>
      <SoundPart kitchen={kitchen} change={change} />
      <VoicePart kitchen={kitchen} change={change} />
      <PedalPart kitchen={kitchen} change={change} />
      <WhistlePart kitchen={kitchen} change={change} />
      <WetPart kitchen={kitchen} change={change} />
      <StripsPart kitchen={kitchen} change={change} />
      <section class="settings-part" aria-labelledby="settings-look">
        <h2 id="settings-look">Look</h2>
        <ChoiceRow
          legend="Light or dark"
          choices={[
            { value: 'auto', label: 'As the device' },
            { value: 'light', label: 'Light' },
            { value: 'dark', label: 'Dark' }
          ]}
          value={settings.theme}
          onChoose={(theme) => change({ theme: theme as Settings['theme'] })}
        />
      </section>
      <Place kept={settings.boilsAt} units={settings} change={change} />
      <Dyer name={settings.dyer} change={change} />
      <StoragePart kitchen={kitchen} />
      <About />
    </Page>
  )
}

export default SettingsScreen

/** Kept when the field is left, so that a name is not stored letter by letter. */
function Dyer({ name, change }: { name: string; change: Change }): preact.JSX.Element {
  const [typed, setTyped] = useState(name)
  useEffect(() => setTyped(name), [name])
  const keep = (): void => {
    if (typed.trim() !== name) change({ dyer: typed.trim() })
  }
  return (
    <section class="settings-part" aria-labelledby="settings-dyer">
      <h2 id="settings-dyer">Dyer</h2>
      <div onFocusOut={keep}>
        <TextField
          label="Your name in the records"
          hint="Stays on this device. Empty: records say “the dyer”."
          value={typed}
          onInput={setTyped}
          id="settings-name"
        />
      </div>
    </section>
  )
}
