// The line of the Dye book for a stream that came in from elsewhere.
import { fold } from '../../core/pot/fold.ts'
import { readEntries } from '../../core/pot/read-entry.ts'
import { drawsOf } from '../../core/shelf/draws.ts'
import type { PotSummary } from '../../session/ports.ts'
import { summaryOf } from '../../session/summary.ts'

/** From the entries; where they don't give it any more, as `told` by the store it comes from. A pot that runs there does
 * not run here: somebody else may stand at it. */
export function lineOf(streamId: string, raw: readonly unknown[], told: unknown): PotSummary | null {
  const line = folded(streamId, raw) ?? asTold(streamId, told)
  if (line === null) return null
  const { elsewhere: _, ...rest } = line
  return line.status === 'running' || line.status === 'held' ? { ...rest, elsewhere: true } : rest
}

function folded(streamId: string, raw: readonly unknown[]): PotSummary | null {
  if (!streamId.startsWith('pot/')) return null
  try {
    const { entries } = readEntries(raw)
    return summaryOf(streamId, fold(entries), entries, drawsOf)
  } catch {
    // One journal that can't be worked out must not keep the others from coming in.
    return null
  }
}

const texts = ['streamId', 'potId', 'batchName', 'colourway', 'colour', 'protocolTitle', 'status'] as const

function asTold(streamId: string, told: unknown): PotSummary | null {
  if (typeof told !== 'object' || told === null) return null
  const line = told as Record<string, unknown>
  if (line.streamId !== streamId || texts.some((name) => typeof line[name] !== 'string')) return null
  if (typeof line.startedAtMs !== 'number' || typeof line.goodsMassG !== 'number') return null
  const { potId, batchName, colourway, colour, protocolTitle, status, startedAtMs, goodsMassG } = told as PotSummary
  const endedAtMs = typeof line.endedAtMs === 'number' ? line.endedAtMs : null
  const entries = typeof line.entries === 'number' ? line.entries : 0
  const offProtocol = line.offProtocol === true
  return {
    streamId,
    potId,
    batchName,
    colourway,
    colour,
    protocolTitle,
    startedAtMs,
    endedAtMs,
    status,
    goodsMassG,
    offProtocol,
    entries,
    draws: null
  }
}
