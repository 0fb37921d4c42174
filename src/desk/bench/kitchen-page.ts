// A rehearsal at the speed of life in the built app, taken hold of by its handle.
import type { Page } from 'playwright-core'
import type { PotCommand } from '../../core/pot/commands.ts'
import type { Alert } from '../../core/pot/due.ts'
import type { PotIdentity, ProtocolText } from '../../core/pot/events.ts'
import type { Programme } from '../../core/protocol/model.ts'

/** What the measures use of the app's kitchen. */
export type BenchKitchen = {
  pots: { value: { potId: string; alerts: Alert[] }[]; subscribe(seen: () => void): () => void }
  send(potId: string, command: PotCommand): Promise<{ ok: boolean }>
  start(start: object): Promise<{ ok: boolean }>
}

export type WithKitchen = { strandlineRehearsal: { kitchen: BenchKitchen } }

export const JOURNAL = 'strandline-rehearsal-journal'

/** Until there is a Stove with something to press on it. */
export async function stoveIsThere(page: Page): Promise<void> {
  await page.locator('.stove .pad-main').first().waitFor({ state: 'attached' })
}

export async function openRehearsal(page: Page, app: string): Promise<void> {
  await page.goto(`${app}?rehearse=1`)
  await stoveIsThere(page)
}

/** What the Start screen would send for a pot, with the checks left out. */
export function potFor(potId: string, programme: Programme): object {
  const pot: PotIdentity = {
    potId,
    batchName: `bench ${potId}`,
    colourway: potId,
    letter: 'A',
    burner: 'none',
    colour: '#2c4a3a',
    skeins: [{ tag: 'A1', massG: 100 }],
    fibre: 'wool',
    parentBatchId: null,
    bath: { bathId: `${potId}-bath`, number: 1, parentBatchId: null, unknownDyeLeft: false },
    by: null
  }
  const protocol: ProtocolText = { title: programme.title, text: '', version: 'bench', from: 'file' }
  return { pot, protocol, programme, checks: [], cautionsShown: [] }
}

export async function startPot(page: Page, potId: string, programme: Programme): Promise<void> {
  const sent = await page.evaluate(
    (start) => (globalThis as unknown as WithKitchen).strandlineRehearsal.kitchen.start(start),
    potFor(potId, programme)
  )
  if (!sent.ok) throw new Error(`The bench's pot was not started: ${JSON.stringify(sent)}`)
}
