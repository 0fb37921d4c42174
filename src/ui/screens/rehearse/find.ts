// The protocols of a planned rehearsal, worked out as they presume.
import type { Kitchen, StoredProtocol } from '../../kitchen.ts'
import { atDefaults } from '../../parts/at-defaults.ts'
import { draftOfId, type PlannedRehearsal } from '../../parts/rehearsal-route.ts'
import { withOpened } from '../../parts/start-draft.ts'
import type { RehearsalWish, RehearsedPot } from '../../rehearsing.ts'

export type Found = { ok: true; wish: RehearsalWish } | { ok: false; say: string }

export async function findRehearsal(kitchen: Kitchen, planned: PlannedRehearsal): Promise<Found> {
  const { answers, speed } = planned
  const known = withOpened(await kitchen.protocols())
  const pots: RehearsedPot[] = []
  for (const { protocolId, afterMin } of planned.pots) {
    const found = await protocolOf(kitchen, known, protocolId)
    if (typeof found === 'string') return { ok: false, say: found }
    const programme = atDefaults(found.protocol)
    if (programme === null) {
      const { title } = found.protocol
      return {
        ok: false,
        say: `“${title}” asks for figures that have no default, so it can’t be rehearsed without them.`
      }
    }
    const { title } = found.protocol
    const protocol = { title, text: found.text, version: 'rehearsal', from: found.from }
    pots.push({ programme, protocol, startsMs: afterMin * 60_000 })
  }
  return { ok: true, wish: { pots, answers, speed } }
}

type Readable = Pick<StoredProtocol, 'protocol' | 'text' | 'from'>

async function protocolOf(kitchen: Kitchen, known: StoredProtocol[], id: string): Promise<Readable | string> {
  const draftId = draftOfId(id)
  if (draftId === null) {
    return known.find((each) => each.id === id) ?? `The protocol “${id}” is not here. Open its file again.`
  }
  const draft = await kitchen.drafts.read(draftId)
  if (draft === null) return 'That draft is not here any more.'
  // The reader is wanted for drafts only.
  const { readProtocol } = await import('../../../core/protocol/read.ts')
  const read = readProtocol(draft.text)
  if (read.ok) return { protocol: read.protocol, text: draft.text, from: 'file' }
  const [problem] = read.problems
  return `Line ${problem?.line ?? 1} of the draft: ${problem?.what ?? 'it can’t be read.'} ${problem?.instead ?? ''}`
}
