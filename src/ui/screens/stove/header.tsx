// The line over the rod: the time, what is said of the hands, and the lamps in words.
import type { ComponentChildren } from 'preact'
import type { Kitchen, Lamp } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import { Clock } from './clock.tsx'
import { WetChip } from './wet.tsx'

type Props = { kitchen: Kitchen; onMenu: () => void; children?: ComponentChildren }

export function Header({ kitchen, onMenu, children }: Props): preact.JSX.Element {
  return (
    <header class="stove-head">
      <div class="stove-time">
        <Clock kitchen={kitchen} />
        <WetChip kitchen={kitchen} />
      </div>
      <div class="stove-says">
        {children}
        <Lamps kitchen={kitchen} />
      </div>
      <Pad kind="control" className="stove-menu" onPress={onMenu}>
        Menu
      </Pad>
    </header>
  )
}

function Lamps({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  return (
    <ul class="lamps" aria-label="What keeps watch">
      {kitchen.lamps.value.map((lamp) => (
        <li key={lamp.id} data-bad={lamp.ok ? undefined : ''}>
          <LampSay lamp={lamp} />
        </li>
      ))}
    </ul>
  )
}

function LampSay({ lamp }: { lamp: Lamp }): preact.JSX.Element {
  const { tap } = lamp
  if (!tap) return <span>{lamp.say}</span>
  return (
    <button type="button" class="lamp" onClick={tap}>
      {lamp.say}
    </button>
  )
}
