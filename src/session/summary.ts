import type { PotState } from '../core/pot/state.ts'
import { drawsOf } from '../core/shelf/draws.ts'
import type { PotEntry, PotSummary } from './ports.ts'

/** The line a pot leaves for the Dye book and the shelf, from its fold and its whole journal; null for a pot that was not
 * started. */
export function summaryOf(streamId: string, state: PotState, entries: readonly PotEntry[]): PotSummary | null {
  if (state.status === 'idle') return null
  const { pot, programme } = state
  const draws = drawsOf(entries)
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
    ...(draws.length > 0 ? { draws } : {})
  }
}
