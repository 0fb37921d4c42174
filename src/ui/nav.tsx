// The way between the screens: a row of words on every screen but the Stove, where a sheet holds it.

import { useState } from 'preact/hooks'
import type { Kitchen } from './kitchen.ts'
import { Pad } from './parts/pad.tsx'
import { Sheet } from './parts/sheet.tsx'

const places = [
  { route: '#/stove', say: 'Stove' },
  { route: '#/protocols', say: 'Protocols' },
  { route: '#/shelf', say: 'Shelf' },
  { route: '#/swatches', say: 'Swatches' },
  { route: '#/dye-book', say: 'Dye book' },
  { route: '#/settings', say: 'Settings' }
] as const

export function Nav({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  const route = kitchen.route.value
  return (
    <nav class="nav" aria-label="Screens">
      {places.map((place) => (
        <a key={place.route} href={place.route} aria-current={route.startsWith(place.route) ? 'page' : undefined}>
          {place.say}
        </a>
      ))}
    </nav>
  )
}

/** The menu of the Stove, with the lamps that a small screen leaves out. */
export function Menu({ kitchen, onClose }: { kitchen: Kitchen; onClose: () => void }): preact.JSX.Element {
  const go = (route: string): void => {
    onClose()
    kitchen.go(route)
  }
  return (
    <Sheet title="Menu" onClose={onClose}>
      <Pad kind="main" look="solid" onPress={() => go('#/start')}>
        Start a pot
      </Pad>
      <div class="menu-places">
        {places.map((place) => (
          <Pad key={place.route} kind="lesser" onPress={() => go(place.route)}>
            {place.say}
          </Pad>
        ))}
      </div>
      {kitchen.pots.value.length > 0 ? <CalendarPads kitchen={kitchen} /> : null}
      <ul class="menu-lamps">
        {kitchen.lamps.value.map((lamp) => (
          <li key={lamp.id} data-bad={lamp.ok ? undefined : ''}>
            {lamp.tap ? <Pad onPress={lamp.tap}>{lamp.say}</Pad> : lamp.say}
          </li>
        ))}
      </ul>
    </Sheet>
  )
}

/** The coming alerts for the device's own calendar, which rings when this page is dead. */
function CalendarPads({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  const [said, setSaid] = useState<string | null>(null)
  const save = async (): Promise<void> => {
    const sent = await kitchen.saveCalendar()
    setSaid(sent.ok ? 'Saved. Open the file to put it into the calendar. It does not move when a pot does.' : sent.say)
  }
  const cancel = async (): Promise<void> => {
    const sent = await kitchen.cancelCalendar()
    setSaid(sent.ok ? 'Saved. Open the file to take the alerts out of the calendar.' : sent.say)
  }
  return (
    <section class="menu-calendar" aria-label="Calendar">
      <div class="menu-places">
        <Pad kind="lesser" onPress={save}>
          Alerts to the calendar
        </Pad>
        <Pad kind="lesser" onPress={cancel}>
          Take them out
        </Pad>
      </div>
      <p role="status" class="soft">
        {said ?? 'A file of the coming alerts as they stand now, for when this page ends.'}
      </p>
    </section>
  )
}
