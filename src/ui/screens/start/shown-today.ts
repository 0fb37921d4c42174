import type { Kitchen } from '../../kitchen.ts'
import { localDayOf } from './identity.ts'

/** Ids of the cautions that pots of today have shown already. */
export function shownToday(kitchen: Kitchen): Set<string> {
  const today = localDayOf(kitchen.now.peek())
  const shown = new Set<string>()
  for (const { state } of kitchen.pots.value) {
    if (state.status === 'idle' || localDayOf(state.startedAtMs) !== today) continue
    for (const id of state.cautionsShown) shown.add(id)
  }
  return shown
}
