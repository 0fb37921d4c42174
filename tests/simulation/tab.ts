// One tab with the app open: the real session behind ports that can die, freeze and wait.
import { createSession } from '../../src/session/create-session.ts'
import type { ClockPort, JournalPort } from '../../src/session/ports.ts'
import type { PotAlert, Session } from '../../src/session/types.ts'
import { type Rungs, simulatedRungs } from './rungs.ts'

/** Its own way to wait: the page may die or freeze between any two operations. */
export type Tab = {
  name: string
  session: Session
  /** What it would sound now. */
  alerts: PotAlert[]
  rungs: Rungs
  /** Did it say anything since this was last set to false? */
  rang: boolean
  dead: boolean
  frozen: boolean
  /** The answers of the outside world that came while it was frozen. */
  thaw(): void
  /** Operations left until it dies; null: it lives. */
  fuse: number | null
}

export type TabPorts = {
  clock: Omit<ClockPort, 'bootId'>
  journal: JournalPort
  newId: () => string
  writerId: string
  owns: (tab: Tab) => boolean
  onStored: (tab: Tab, potIds: string[]) => void
  onDeath: (tab: Tab) => void
  complain: (what: string) => void
}

export function openTab(name: string, ports: TabPorts): Tab {
  let wake: (() => void)[] = []
  const tab: Tab = {
    name,
    session: undefined as unknown as Session,
    alerts: [],
    rungs: simulatedRungs((what) => ports.complain(`${name}: ${what}`)),
    rang: false,
    dead: false,
    frozen: false,
    fuse: null,
    thaw() {
      tab.frozen = false
      for (const go of wake) go()
      wake = []
    }
  }
  const passes = async (): Promise<void> => {
    if (tab.frozen) await new Promise<void>((go) => wake.push(go))
    if (tab.fuse !== null && tab.fuse-- <= 0 && !tab.dead) ports.onDeath(tab)
    if (tab.dead) await never()
  }
  // Before and after: a page may die with the order not given, or with the answer unread.
  const guarded = async <T>(work: () => Promise<T>): Promise<T> => {
    await passes()
    try {
      return await work()
    } finally {
      await passes()
    }
  }
  const { journal, clock } = ports
  tab.session = createSession({
    clock: {
      ...clock,
      bootId: `boot-${name}`,
      onTick: (tick) =>
        clock.onTick(() => {
          if (!tab.dead && !tab.frozen) tick()
        })
    },
    journal: {
      append: (entries, summaries, media) => guarded(() => journal.append(entries, summaries, media)),
      read: (streamId) => guarded(() => journal.read(streamId)),
      streams: (prefix) => guarded(() => journal.streams(prefix)),
      drawnFrom: (itemId) => guarded(() => journal.drawnFrom(itemId)),
      summaries: (fromMs, toMs, limit) => guarded(() => journal.summaries(fromMs, toMs, limit)),
      live: () => guarded(() => journal.live()),
      media: (sha256) => guarded(() => journal.media(sha256)),
      mediaSizes: () => guarded(() => journal.mediaSizes())
    },
    ids: { newId: ports.newId, writerId: ports.writerId },
    owns: () => ports.owns(tab),
    onStored: (potIds) => ports.onStored(tab, potIds),
    told: tab.rungs.told,
    onAlerts: (alerts, coming) => {
      tab.alerts = alerts
      tab.rungs.raise(alerts, coming)
      tab.rang = true
    }
  })
  return tab
}

export function never(): Promise<never> {
  return new Promise(() => {})
}
