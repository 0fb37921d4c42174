import { trunkOf } from '../core/pot/branches.ts'
import type { PotState } from '../core/pot/state.ts'
import type { PotEntry, PotSummary } from './ports.ts'
import type { DrawsOf } from './room.ts'

/** The line a pot leaves for the Dye book and the shelf, from its fold and its whole journal; null for a pot that was not
 * started. `drawsOf` null: it is not there yet, and the line says so. */
export function summaryOf(
  streamId: string,
  state: PotState,
  entries: readonly PotEntry[],
  drawsOf: DrawsOf | null
): PotSummary | null {
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
    draws: drawsOf?.(entries) ?? null,
    ...(trunkOf(entries).sides.length > 0 && { branched: true })
  }
}
