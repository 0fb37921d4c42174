import { type ReadonlySignal, signal } from '@preact/signals'
import type { Kept } from '../shell/settings/kept.ts'
import type { Sent, Settings } from '../ui/kitchen.ts'
import { isPhStrip, usualStrip } from '../ui/parts/ph-strip.ts'

const KEY = 'settings'

/** Where Letter is the paper of every day: Unicode CLDR, territory data, paperSize "US-Letter". */
const letterPaper = /-(BZ|CA|CL|CO|CR|GT|MX|NI|PA|PH|PR|SV|US|VE)\b/i

export function settingsFor(language: string): Settings {
  const us = /-US\b/i.test(language)
  return {
    temperature: us ? 'F' : 'C',
    volume: us ? 'us' : 'metric',
    mass: us ? 'us' : 'metric',
    sound: true,
    volumeLevel: 0.8,
    loudnessTried: false,
    voice: 'off',
    theme: 'auto',
    paper: letterPaper.test(language) ? 'letter' : 'a4',
    dyer: '',
    boilsAt: '',
    calendarAtStart: false,
    pedalDone: null,
    pedalNext: null,
    wet: false,
    headset: false,
    whistle: false,
    strip: usualStrip
  }
}

/** How loud calls are; null: sound is off. */
export function levelOf({ sound, volumeLevel }: Settings): number | null {
  return sound ? volumeLevel : null
}

export type KeptSettings = {
  settings: ReadonlySignal<Settings>
  load(): Promise<void>
  change(change: Partial<Settings>): Promise<Sent>
}

export function keptSettings(kept: Kept, language: string): KeptSettings {
  const settings = signal(settingsFor(language))
  return {
    settings,
    async load() {
      try {
        const stored = await kept.get<Partial<Settings>>(KEY)
        if (stored !== undefined) settings.value = { ...settings.value, ...valid(stored, settings.value) }
      } catch {
        // Settings that can't be read are the defaults; pots don't wait for them.
      }
    },
    async change(change) {
      settings.value = { ...settings.value, ...valid(change, settings.value) }
      try {
        await kept.set(KEY, settings.value)
        return { ok: true }
      } catch {
        return { ok: false, refusal: null, say: 'The setting holds until this page is closed: it could not be stored.' }
      }
    }
  }
}

const choices: { [Name in keyof Settings]?: readonly Settings[Name][] } = {
  temperature: ['C', 'F'],
  volume: ['metric', 'us', 'imperial'],
  mass: ['metric', 'us'],
  voice: ['off', 'calls', 'guide'],
  theme: ['auto', 'light', 'dark'],
  paper: ['a4', 'letter']
}

/** Only what has its right kind: an older version may have stored something else. */
function valid(change: Partial<Settings>, now: Settings): Partial<Settings> {
  const good = Object.entries(change).filter(([name, value]) => {
    const allowed = choices[name as keyof Settings] as readonly unknown[] | undefined
    if (allowed !== undefined) return allowed.includes(value)
    if (name === 'pedalDone' || name === 'pedalNext') return value === null || isKey(value)
    if (name === 'strip') return isPhStrip(value)
    if (name === 'volumeLevel') return typeof value === 'number' && value >= 0 && value <= 1
    return name in now && typeof value === typeof now[name as keyof Settings]
  })
  return Object.fromEntries(good)
}

function isKey(value: unknown): boolean {
  const { code, key } = (value ?? {}) as { code?: unknown; key?: unknown }
  return typeof code === 'string' && typeof key === 'string' && key !== ''
}
