// Pedal or key: which key means "done", and which "say it again". A pedal is learned by pressing it.
import { useEffect, useState } from 'preact/hooks'
import type { Kitchen, LearnedKey } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import {
  delivered,
  isOnePedal,
  isSame,
  keyWords,
  type Learned,
  type PedalRole,
  whyNot
} from '../../parts/pedal-keys.ts'
import type { Change } from './index.tsx'

const roles = [
  { role: 'done', setting: 'pedalDone', say: 'Done', means: 'Answers the call, or the pot shown. Takes an answer.' },
  {
    role: 'next',
    setting: 'pedalNext',
    say: 'Say it again',
    means: 'The call once more; without one, the next pot. Moves among answers.'
  }
] as const

type Setting = (typeof roles)[number]['setting']

export function PedalPart({ kitchen, change }: { kitchen: Kitchen; change: Change }): preact.JSX.Element {
  const settings = kitchen.settings.value
  const [waits, setWaits] = useState<Setting | null>(null)
  const [said, setSaid] = useState<{ of: Setting; say: string } | null>(null)
  useEffect(() => {
    if (waits === null) return
    return learnOne((key, why) => {
      const other = roles.find(
        ({ setting }) => setting !== waits && settings[setting] && isSame(settings[setting], key)
      )
      const refused = why ?? (other ? `${keyWords(key)} is “${other.say}” already. Forget it there first.` : null)
      if (refused !== null) {
        setSaid({ of: waits, say: refused })
        return false
      }
      change({ [waits]: key })
      setWaits(null)
      setSaid({ of: waits, say: `Learned: ${keyWords(key)}.` })
      return true
    })
  }, [waits, settings.pedalDone, settings.pedalNext])
  return (
    <section class="settings-part" aria-labelledby="settings-pedal">
      <h2 id="settings-pedal">Pedal or key</h2>
      <p>A page-turner pedal works as it is. It acts on the Stove, on the pot that calls or is shown.</p>
      {roles.map((role) => (
        <Role
          key={role.role}
          {...role}
          settings={settings}
          waits={waits}
          said={said?.of === role.setting ? said.say : ''}
          onWait={(setting) => {
            setSaid(null)
            setWaits(setting)
          }}
          onForget={(key) => {
            change({ [role.setting]: null })
            setSaid({ of: role.setting, say: `Forgotten: ${keyWords(key)}.` })
          }}
        />
      ))}
      {isOnePedal(settings) ? (
        <p>
          One pedal: where answers are offered a short press moves among them, and one held for 0.7 s takes. A pedal
          that only clicks can’t be held: learn a second one.
        </p>
      ) : null}
    </section>
  )
}

type RoleProps = (typeof roles)[number] & {
  settings: Learned
  /** Which of them listens now. */
  waits: Setting | null
  said: string
  onWait: (setting: Setting | null) => void
  onForget: (key: LearnedKey) => void
}

function Role({ role, setting, say, means, settings, waits, said, onWait, onForget }: RoleProps): preact.JSX.Element {
  const own = settings[setting]
  return (
    <div class="pedal-role">
      <h3>{say}</h3>
      <p>{means}</p>
      <p>
        Key: <strong>{keysOf(role, settings)}</strong>
      </p>
      <div class="pedal-pads">
        {waits === setting ? (
          <Pad kind="lesser" look="solid" onPress={() => onWait(null)}>
            Press your pedal now
            <small>or tap here to leave it</small>
          </Pad>
        ) : (
          <Pad kind="lesser" label={`${say}: learn a key`} disabled={waits !== null} onPress={() => onWait(setting)}>
            Learn a key
          </Pad>
        )}
        {own === null ? null : (
          <Pad kind="lesser" label={`${say}: forget ${keyWords(own)}`} onPress={() => onForget(own)}>
            Forget
          </Pad>
        )}
      </div>
      <p role="status">{said}</p>
    </div>
  )
}

function keysOf(role: PedalRole, settings: Learned): string {
  const own = role === 'done' ? settings.pedalDone : settings.pedalNext
  if (own !== null) return keyWords(own)
  if (settings.pedalDone !== null) return 'none'
  const taken = settings.pedalNext
  const keys = delivered[role].filter((key) => key !== taken?.key)
  return keys.map((key) => keyWords({ key })).join(' or ')
}

/** Hears keys until one is taken, before anything on the page does. Tab and Escape do what they always do. */
function learnOne(heard: (key: LearnedKey, why: string | null) => boolean): () => void {
  let taken: string | null = null
  const swallow = (event: KeyboardEvent): void => {
    event.preventDefault()
    event.stopImmediatePropagation()
  }
  const down = (event: KeyboardEvent): void => {
    const why = whyNot(event)
    if (event.key !== 'Tab' && event.key !== 'Escape') swallow(event)
    if (event.repeat || taken !== null) return
    if (heard({ code: event.code, key: event.key }, why)) taken = event.code
  }
  // A pad with the focus is pressed when Space comes up.
  const up = (event: KeyboardEvent): void => {
    if (event.key !== 'Tab' && event.key !== 'Escape') swallow(event)
  }
  addEventListener('keydown', down, true)
  addEventListener('keyup', up, true)
  return () => {
    removeEventListener('keydown', down, true)
    // The key that was learned comes up after this.
    setTimeout(() => removeEventListener('keyup', up, true), taken === null ? 0 : AFTER_MS)
  }
}

const AFTER_MS = 500
