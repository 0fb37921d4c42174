// The Kitchen of the Stove's tests, with a book, protocols and files to look at.
import type { Entry } from '../../../src/core/pot/entry.ts'
import type { PotEvent } from '../../../src/core/pot/events.ts'
import { fold } from '../../../src/core/pot/fold.ts'
import type { BookLine, Kitchen, StoredProtocol } from '../../../src/ui/kitchen.ts'
import { type FixtureKitchen, fixtureKitchen } from '../stove/fixtures.ts'

export type TestKitchen = FixtureKitchen & {
  saved: { name: string; mime: string; text: string }[]
  started: Parameters<Kitchen['start']>[0][]
}

type Journal = { potId: string; entries: Entry<PotEvent>[] }

export type Given = {
  journals?: Journal[]
  protocols?: StoredProtocol[]
  damaged?: { index: number; why: string }[]
  nowMs: number
}

export function aKitchen({ journals = [], protocols = [], damaged = [], nowMs }: Given): TestKitchen {
  const base = fixtureKitchen(journals, nowMs)
  // Into the same object: what a test sets on it must reach its own send.
  const kitchen: TestKitchen = Object.assign(base, {
    saved: [] as TestKitchen['saved'],
    started: [] as TestKitchen['started'],
    protocols: async () => protocols,
    book: async (fromMs: number, toMs: number, limit = Number.POSITIVE_INFINITY) =>
      journals
        .map(lineOf)
        .filter((line) => line.startedAtMs >= fromMs && line.startedAtMs < toMs)
        .sort((a, b) => b.startedAtMs - a.startedAtMs)
        .slice(0, limit),
    entries: async (potId: string) => ({
      entries: [...(journals.find((j) => j.potId === potId)?.entries ?? [])],
      damaged
    }),
    saveFile: (name: string, mime: string, text: string) => {
      kitchen.saved.push({ name, mime, text })
    },
    start: async (start: TestKitchen['started'][number]) => {
      kitchen.started.push(start)
      return { ok: true } as const
    }
  })
  return kitchen
}

function lineOf({ potId, entries }: Journal): BookLine {
  const state = fold(entries)
  if (state.status === 'idle') throw new Error('a pot of a test has a start')
  const ended = state.status === 'complete' || state.status === 'aborted'
  return {
    streamId: `pot/${potId}`,
    potId,
    batchName: state.pot.batchName,
    colourway: state.pot.colourway,
    colour: state.pot.colour,
    protocolTitle: state.protocol.title,
    startedAtMs: state.startedAtMs,
    endedAtMs: ended ? state.endedAtMs : null,
    status: state.status,
    goodsMassG: state.programme.goodsMassG,
    offProtocol: state.offProtocol.length > 0,
    entries: entries.length
  }
}
