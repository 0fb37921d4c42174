import type { AlertKind } from '../core/pot/events.ts'
import { stepAt } from '../core/protocol/tree.ts'
import type { PotView } from '../session/types.ts'
import type { RungAlert } from '../shell/rung.ts'

/** The pot and what it wants, short enough for a tab: "Plum: Acid 2". */
export function alertWords({ potId, colourway, alert }: RungAlert, pots: readonly PotView[]): string {
  const state = pots.find((pot) => pot.potId === potId)?.state
  const step =
    state === undefined || state.status === 'idle' || alert.path === null ? null : stepAt(state.programme, alert.path)
  return `${colourway}: ${alert.kind === 'call' && step !== null ? step.knot : words[alert.kind]}`
}

const words: Record<AlertKind, string> = {
  call: 'hands wanted',
  headsUp: 'soon',
  outOfBath: 'back into the bath',
  gap: 'time runs out',
  look: 'look at the water',
  heat: 'heat is on',
  finish: 'all steps done'
}
