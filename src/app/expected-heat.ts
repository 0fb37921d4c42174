// What the thermometer tells of each pot, for the screens: from its own readings, and from earlier batches of the same pot
// and burner. Each settled batch leaves one short line of how it heated, so that no journal is read for it again.
import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { EarlierHeat } from '../core/pot/expected/earlier.ts'
import { expectationsOf } from '../core/pot/expected/expect.ts'
import type { Expectations } from '../core/pot/expected/expectation.ts'
import { type PhEstimate, phOfDoses } from '../core/pot/expected/ph.ts'
import { readEntries } from '../core/pot/read-entry.ts'
import type { PotState } from '../core/pot/state.ts'
import { heatOf } from '../core/record/heat-of.ts'
import type { JournalPort, PotSummary } from '../session/ports.ts'
import type { Session } from '../session/types.ts'
import type { Kept } from '../shell/settings/kept.ts'

const PREFIX = 'heat/'
/** Batches looked at for lines they lack: what lies further back was another season's ring. */
const LOOKED_AT = 40

/** `entries`: how many the journal had when the line was made; a correction since then makes it anew. */
type HeatLine = { potId: string; entries: number; heat: EarlierHeat | null }

export type Expecter = (state: PotState) => { expected: Expectations; madePh: PhEstimate | null }

export type ExpectedHeat = {
  expecter: ReadonlySignal<Expecter>
  /** Makes the lines that settled batches lack. A failure costs the estimate alone: it is tried again at the next. */
  settle(): Promise<void>
}

export type ExpectedHeatParts = {
  kept: Pick<Kept, 'set' | 'startingWith'>
  journal: Pick<JournalPort, 'read' | 'summaries'>
  pots: Session['pots']
  nowMs: () => number
  onTick: (tick: () => void) => void
}

export function expectedHeat(parts: ExpectedHeatParts): ExpectedHeat {
  const earlier = signal<EarlierHeat[]>([])
  const settle = inTurn(async () => {
    earlier.value = await linesOf(parts)
  })
  let on = ''
  parts.onTick(() => {
    const now = parts.pots().flatMap(({ potId, state }) => (isLive(state) ? [potId] : []))
    const ended = on !== '' && on.split(' ').some((potId) => !now.includes(potId))
    on = now.join(' ')
    if (ended) void settle()
  })
  void settle()
  return { expecter: computed(() => expecterWith(earlier.value)), settle }
}

/** Worked out once for a state. */
export function expecterWith(earlier: readonly EarlierHeat[]): Expecter {
  const known = new WeakMap<PotState, ReturnType<Expecter>>()
  return (state) => {
    if (!isLive(state)) return { expected: {}, madePh: null }
    const found = known.get(state) ?? { expected: expectationsOf(state, earlier), madePh: phOfDoses(state) }
    known.set(state, found)
    return found
  }
}

function isLive(state: PotState): state is Extract<PotState, { status: 'running' | 'held' }> {
  return state.status === 'running' || state.status === 'held'
}

function inTurn(work: () => Promise<void>): () => Promise<void> {
  let before = Promise.resolve()
  return () => {
    before = before.then(work).catch(() => {})
    return before
  }
}

async function linesOf({ kept, journal, nowMs }: ExpectedHeatParts): Promise<EarlierHeat[]> {
  const lines = new Map((await kept.startingWith<HeatLine>(PREFIX)).map((line) => [line.potId, line]))
  for (const summary of await journal.summaries(0, nowMs() + 1, LOOKED_AT)) {
    if (!isSettled(summary) || lines.get(summary.potId)?.entries === summary.entries) continue
    const line = await lineOf(journal, summary)
    lines.set(line.potId, line)
    await kept.set(PREFIX + line.potId, line)
  }
  return [...lines.values()].flatMap(({ heat }) => heat ?? [])
}

async function lineOf(journal: ExpectedHeatParts['journal'], summary: PotSummary): Promise<HeatLine> {
  const { streamId, potId, entries } = summary
  const read = readEntries(await journal.read(streamId))
  // A record that can't be read whole tells nothing sure.
  const heat = read.damaged.length > 0 || read.unknown ? null : heatOf(read.entries)
  return { potId, entries, heat }
}

function isSettled({ status }: PotSummary): boolean {
  return status === 'complete' || status === 'aborted'
}
