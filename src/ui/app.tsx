// The frame: strips that hold for every screen, the way between screens, and the screen itself. The Stove is there at
// once; the other screens are loaded when they are opened.
import { useEffect, useState } from 'preact/hooks'
import { FrameStrips } from './frame-strips.tsx'
import type { Kitchen } from './kitchen.ts'
import { Menu, Nav } from './nav.tsx'
import { watchFingers } from './parts/guard.ts'
import { later } from './parts/later.tsx'
import { Stove } from './screens/stove/index.tsx'
import './tokens.css'
import './base.css'
import './app.css'

const Start = later(() => import('./screens/start/index.tsx'))
const Protocols = later(() => import('./screens/protocols/index.tsx').then((m) => ({ default: m.Protocols })))
const Sums = later(() => import('./screens/sums/index.tsx'))
const Workshop = later(() => import('./screens/workshop/index.tsx'))
const Rehearse = later(() => import('./screens/rehearse/index.tsx'))
const Shelf = later(() => import('./screens/shelf/index.tsx'))
const Swatches = later(() => import('./screens/swatches/index.tsx'))
const DyeBook = later(() => import('./screens/dye-book/index.tsx').then((m) => ({ default: m.DyeBook })))
const DeviceCheckScreen = later(() =>
  import('./screens/device-check/index.tsx').then((m) => ({ default: m.DeviceCheckScreen }))
)
const Keep = later(() => import('./screens/keep/index.tsx'))
const SettingsScreen = later(() => import('./screens/settings/index.tsx').then((m) => ({ default: m.SettingsScreen })))

export function App({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  const [menu, setMenu] = useState(false)
  const route = kitchen.route.value
  const { theme } = kitchen.settings.value
  const stove = isStove(route)
  const whole = stove || isRehearsal(route)
  useEffect(() => watchFingers(document), [])
  useEffect(() => {
    if (theme === 'auto') delete document.documentElement.dataset.theme
    else document.documentElement.dataset.theme = theme
  }, [theme])
  // A new screen begins at its top, and the reader of the screen is told its heading.
  useEffect(() => {
    setMenu(false)
    if (whole) return
    scrollTo(0, 0)
    document.querySelector<HTMLElement>('main h1')?.focus()
  }, [route])
  return (
    <div class="app" data-stove={whole ? '' : undefined}>
      <FrameStrips kitchen={kitchen} stove={stove} />
      {whole ? null : <Nav kitchen={kitchen} />}
      <main>
        {stove ? <Stove kitchen={kitchen} onMenu={() => setMenu(true)} /> : <Screen kitchen={kitchen} route={route} />}
      </main>
      {menu ? <Menu kitchen={kitchen} onClose={() => setMenu(false)} /> : null}
    </div>
  )
}

function isStove(route: string): boolean {
  return !/^#\/(start|protocols|shelf|swatches|rehearse|dye-book|settings|device-check)\b/.test(route)
}

/** A rehearsal has a Stove of its own and fills the screen like it; where none is named yet one is chosen on a page. */
function isRehearsal(route: string): boolean {
  return /^#\/rehearse\/[^/]+\/[^/]+\/./.test(route)
}

/** The n-th part of "#/start/an-id", counted from 1 after the "#". */
function part(route: string, n: number): string | undefined {
  return route.split('/')[n]
}

function Screen({ kitchen, route }: { kitchen: Kitchen; route: string }): preact.JSX.Element {
  if (route.startsWith('#/start')) return <Start kitchen={kitchen} protocolId={part(route, 2)} />
  if (route.startsWith('#/shelf/sums')) return <Sums kitchen={kitchen} />
  const draftId = /^#\/protocols\/write\/([^/]+)$/.exec(route)?.[1]
  if (draftId !== undefined) return <Workshop kitchen={kitchen} draftId={draftId} />
  if (route.startsWith('#/protocols')) return <Protocols kitchen={kitchen} />
  if (route.startsWith('#/rehearse')) {
    return <Rehearse kitchen={kitchen} stove={(on, onMenu) => <Stove kitchen={on} onMenu={onMenu} />} />
  }
  if (route.startsWith('#/shelf')) return <Shelf kitchen={kitchen} />
  if (route.startsWith('#/swatches')) return <Swatches kitchen={kitchen} />
  if (route.startsWith('#/dye-book')) return <DyeBook kitchen={kitchen} />
  if (route.startsWith('#/device-check')) return <DeviceCheckScreen kitchen={kitchen} />
  if (route === '#/settings/backup') return <Keep kitchen={kitchen} />
  return <SettingsScreen kitchen={kitchen} />
}
