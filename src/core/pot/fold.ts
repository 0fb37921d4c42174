import { trunkOf } from './branches.ts'
import type { Entry } from './entry.ts'
import type { PotEvent } from './events.ts'
import { evolveDraft } from './evolve.ts'
import type { PotState } from './state.ts'

/** The state of a pot from its journal, in order of writing. Withdrawn entries are left out; what was withdrawn is
 * still heard, so that a repeated tap of it does nothing. Of a journal with branches: the state along its trunk. */
export function fold(all: readonly Entry<PotEvent>[]): PotState {
  const { entries } = trunkOf(all)
  const withdrawn = new Set<string>()
  for (const { event } of entries) {
    if (event.type === 'Withdrawn') for (const ref of event.entries) withdrawn.add(`${ref.writerId} ${ref.seq}`)
  }
  let state: PotState = { status: 'idle' }
  const heard: string[] = []
  for (const entry of entries) {
    if (withdrawn.has(`${entry.writerId} ${entry.seq}`)) {
      if (entry.by.kind !== 'clock') heard.push(entry.commandId)
      continue
    }
    const { atMs, commandId, by, writerId, seq } = entry
    state = evolveDraft(state, entry.event, { atMs, commandId, by, ref: { writerId, seq } })
  }
  if (state.status !== 'idle') for (const id of heard) if (!state.heard.includes(id)) state.heard.push(id)
  return state
}
