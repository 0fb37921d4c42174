import type { Check } from '../../../core/pot/events.ts'
import type { Programme, ProgrammeInputs } from '../../../core/protocol/model.ts'
import type { KeptNumbers } from '../../../core/protocol/numbers/kept.ts'
import type { Caution } from '../../../core/safety/caution.ts'
import type { Kitchen, Sent, StoredProtocol } from '../../kitchen.ts'
import type { StartDraft } from '../../parts/start-draft.ts'
import type { OnShelf } from '../../shelf.ts'
import { identityOf } from './identity.ts'

export type Ready = {
  stored: StoredProtocol
  draft: StartDraft
  inputs: ProgrammeInputs
  programme: Programme
  cautions: readonly Caution[]
  numbers: KeptNumbers | null
  things: readonly OnShelf[]
}

/** Whether the cups stand on the bench is one of the checks; it is the dyer who looks. */
export function benchCheck(programme: Programme, setOut: readonly string[]): Check | null {
  const all = programme.setOut.length
  if (all === 0) return null
  const done = programme.setOut.filter((item) => setOut.includes(item.id)).length
  return { what: 'bench', ok: done === all, say: `${done} of ${all} set out` }
}

/** Starts the pot; it is started once the journal says so. */
export async function startPot(kitchen: Kitchen, ready: Ready, checks: Check[]): Promise<Sent> {
  const { stored, draft, inputs, programme, cautions, numbers, things } = ready
  const pot = await identityOf(kitchen, draft, inputs, kitchen.now.peek(), things)
  const { title } = stored.protocol
  const { text, from } = stored
  return kitchen.start({
    pot,
    protocol: { title, text, version: versionOf(text), from },
    programme,
    checks,
    cautionsShown: cautions.map((caution) => caution.id),
    ...(numbers && { numbers })
  })
}

/** The same text has the same version, on any machine: a short fingerprint (FNV-1a, 32 bits), no proof of anything. */
export function versionOf(text: string): string {
  let hash = 0x811c9dc5
  for (const byte of new TextEncoder().encode(text)) hash = Math.imul(hash ^ byte, 0x01000193) >>> 0
  return hash.toString(16).padStart(8, '0')
}
