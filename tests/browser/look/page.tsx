// The Stove with invented pots, for pictures and for measuring. Not part of the built app.
// ?pots=moss,plum&theme=dark&at=5 (seconds after the fixtures' noon)&run=1 (the clock runs)
import { render } from 'preact'
import { App } from '../../../src/ui/app.tsx'
import { type FixtureKitchen, fixtureKitchen, noon } from '../../ui/stove/fixtures.ts'
import { pots } from '../../ui/stove/pots.ts'

declare global {
  interface Window {
    kitchen: FixtureKitchen
  }
}

const asked = new URLSearchParams(location.search)
const names = (asked.get('pots') ?? '').split(',')
const known = new Map<string, (typeof pots)[keyof typeof pots]>(Object.entries(pots))
const startMs = noon + Number(asked.get('at') ?? 0) * 1000
const kitchen = fixtureKitchen(
  names.flatMap((name) => known.get(name)?.() ?? []),
  startMs
)
const theme = asked.get('theme')
if (theme === 'dark' || theme === 'light') kitchen.signals.settings.value = { ...kitchen.settings.value, theme }
window.kitchen = kitchen
if (asked.has('run')) {
  const began = performance.now()
  setInterval(() => kitchen.tick(startMs + performance.now() - began), 1000)
}
render(<App kitchen={kitchen} />, document.getElementById('app') as HTMLElement)
