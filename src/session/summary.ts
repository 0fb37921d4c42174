import { trunkOf } from '../core/pot/branches.ts'
import type { PotState } from '../core/pot/state.ts'
import type { PotEntry, PotSummary } from './ports.ts'

/** The line a pot leaves for the Dye book; null for a pot that was not started. */
export function summaryOf(streamId: string, state: PotState, entries: readonly PotEntry[]): PotSummary | null {
  if (state.status === 'idle') return null
  const { pot, programme } = state
  return {
    streamId,
    potId: pot.potId,
    batchName: pot.batchName,
    colourway: pot.colourway,
    colour: pot.colour,
    protocolTitle: programme.title,
    startedAtMs: state.startedAtMs,
    endedAtMs: state.status === 'complete' || state.status === 'aborted' ? state.endedAtMs : null,
    status: state.status,
    goodsMassG: programme.goodsMassG,
    offProtocol: state.offProtocol.length > 0,
    entries: entries.length,
    ...(trunkOf(entries).sides.length > 0 && { branched: true })
  }
}
