import { render } from 'preact'
import { App } from '../ui/app.tsx'
import { potsCanBeDrawn } from '../ui/screens/stove/index.tsx'
import { startUp } from './start-up.ts'

/** A journal that opens at once is shown at once; one that does not must not keep the screen blank. */
const OPEN_MOST_MS = 1_000

async function main(): Promise<void> {
  const root = document.getElementById('app')
  if (root === null) throw new Error('index.html has no place for the app')
  const { kitchen, opened, drawn } = await startUp(() => void potsCanBeDrawn().catch(() => {}))
  await Promise.race([
    opened.then(() => (kitchen.pots.value.length > 0 ? potsCanBeDrawn().catch(() => {}) : undefined)),
    new Promise((resolve) => setTimeout(resolve, OPEN_MOST_MS))
  ])
  render(<App kitchen={kitchen} />, root)
  // Not on the next frame: a page in the background draws none.
  setTimeout(drawn)
}

void main()
