// Chromium as a dyer has it: nothing of its own going to the network, and none of the switches by which a driver keeps
// a page's timers from being slowed.
import { type Browser, chromium } from 'playwright-core'

export const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync'
]

/** With these a page that is hidden, covered or silent would behave like none that a dyer ever sees. */
const unlikeLife = [
  '--disable-background-timer-throttling',
  '--disable-backgrounding-occluded-windows',
  '--disable-renderer-backgrounding',
  '--mute-audio'
]

export function launchChromium(executablePath: string | undefined, more: string[] = []): Promise<Browser> {
  return chromium.launch({ executablePath, args: [...flags, ...more], ignoreDefaultArgs: unlikeLife })
}
