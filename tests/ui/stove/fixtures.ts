// A Kitchen for looking at the Stove: the real engine over invented pots, all of it in memory.

import { signal } from '@preact/signals'
import { keptDrafts } from '../../../src/app/drafts.ts'
import { alertsDue } from '../../../src/core/pot/alerts-due.ts'
import { lookAhead } from '../../../src/core/pot/catch-up.ts'
import type { PotCommand } from '../../../src/core/pot/commands.ts'
import { decide } from '../../../src/core/pot/decide.ts'
import type { Entry } from '../../../src/core/pot/entry.ts'
import type { PotEvent } from '../../../src/core/pot/events.ts'
import { fold } from '../../../src/core/pot/fold.ts'
import { nextDue } from '../../../src/core/pot/next-due.ts'
import type { Programme } from '../../../src/core/protocol/model.ts'
import { memoryKept } from '../../../src/shell/settings/kept.ts'
import type { Kitchen, Missed, PotOnStove, Sent, Via } from '../../../src/ui/kitchen.ts'
import { usualStrip } from '../../../src/ui/parts/ph-strip.ts'

export const noon = Date.UTC(2031, 5, 14, 12, 32, 0)

type Journal = { potId: string; entries: Entry<PotEvent>[] }
export type Told = { atMs: number; command: PotCommand }

function append(journal: Journal, command: PotCommand, atMs: number, commandId: string, clock: boolean): Sent {
  const by = clock ? ({ kind: 'clock' } as const) : ({ kind: 'person', name: null, via: 'tap' } as const)
  const decision = decide(fold(journal.entries), command, { commandId, atMs, by })
  if (!decision.ok) return { ok: false, refusal: decision.refusal, say: decision.refusal.say }
  for (const event of decision.events) {
    const seq = journal.entries.length + 1
    journal.entries.push({
      v: 2,
      streamId: `pot/${journal.potId}`,
      writerId: 'w',
      seq,
      after: null,
      commandId,
      atMs,
      recordedAtMs: atMs,
      bootId: 'b',
      monoMs: atMs,
      tzOffsetMin: 0,
      by,
      crc: '00000000',
      event
    })
  }
  return { ok: true }
}

/** Passes every due moment up to `nowMs`, as the session does on a tick. */
function wake(journal: Journal, nowMs: number): void {
  for (;;) {
    const due = nextDue(fold(journal.entries))[0]
    if (!due || due.atMs > nowMs) return
    append(journal, { type: 'PassDue', key: due.key }, due.atMs, `clock:${due.key}`, true)
  }
}

let made = 0

export type Brew = {
  colourway: string
  colour: string
  programme: Programme
  startedAtMs: number
  told: Told[]
  burner?: string
}

export function brew(given: Brew, nowMs: number): Journal {
  const no = ++made
  const potId = `pot-${no}`
  const journal: Journal = { potId, entries: [] }
  const letter = 'ABCD'[(no - 1) % 4] as string
  const pot = {
    potId,
    batchName: `2031-06-14 ${given.colourway}`,
    colourway: given.colourway,
    letter,
    burner: given.burner ?? 'front left',
    colour: given.colour,
    skeins: [
      { tag: `${letter}1`, massG: 50 },
      { tag: `${letter}2`, massG: 50 }
    ],
    fibre: 'wool',
    parentBatchId: null,
    bath: { bathId: `bath-${no}`, number: no, parentBatchId: null, unknownDyeLeft: false },
    by: null
  }
  const protocol = { title: given.programme.title, text: '', version: '1', from: 'built-in' as const }
  const start: PotCommand = { type: 'Start', pot, protocol, programme: given.programme, checks: [], cautionsShown: [] }
  tell(journal, start, given.startedAtMs)
  for (const { command, atMs } of given.told) tell(journal, command, atMs)
  wake(journal, nowMs)
  return journal
}

function tell(journal: Journal, command: PotCommand, atMs: number): void {
  wake(journal, atMs)
  const sent = append(journal, command, atMs, `c${journal.entries.length}`, false)
  if (!sent.ok) throw new Error(`${JSON.stringify(command)}: ${sent.say}`)
}

export type FixtureKitchen = Kitchen & {
  tick(nowMs: number): void
  sent: { potId: string; command: PotCommand; agoMs: number; cueAtMs: number | null; via: Via }[]
  /** What the next send comes back with, for a store that fails. */
  failNext: Sent | null
  signals: {
    notSaved: { value: { say: string } | null }
    jump: { value: { byMs: number } | null }
    owner: { value: boolean }
    update: { value: { apply: () => void } | null }
    arrived: { value: Kitchen['arrived']['value'] }
    sharing: { value: Kitchen['sharing']['value'] }
    missed: { value: Missed[] }
    settings: { value: Kitchen['settings']['value'] }
    route: { value: string }
  }
}

export function fixtureKitchen(journals: Journal[], startMs: number): FixtureKitchen {
  const now = signal(startMs)
  const onStove = (): PotOnStove[] =>
    journals.map((journal) => {
      const state = fold(journal.entries)
      return { potId: journal.potId, state, alerts: alertsDue(lookAhead(state, now.value), now.value), readOnly: null }
    })
  const pots = signal(onStove())
  const refresh = (): void => {
    for (const journal of journals) wake(journal, now.value)
    pots.value = onStove()
  }
  const signals = {
    notSaved: signal<{ say: string } | null>(null),
    jump: signal<{ byMs: number } | null>(null),
    owner: signal(true),
    whistle: signal<Kitchen['whistle']['value']>(null),
    deviceCheck: signal<Kitchen['deviceCheck']['value']>(null),
    update: signal<{ apply: () => void } | null>(null),
    arrived: signal<Kitchen['arrived']['value']>([]),
    sharing: signal<Kitchen['sharing']['value']>(null),
    missed: signal<Missed[]>([]),
    route: signal('#/stove'),
    settings: signal<Kitchen['settings']['value']>({
      temperature: 'C',
      volume: 'metric',
      mass: 'metric',
      sound: true,
      volumeLevel: 0.8,
      loudnessTried: true,
      voice: 'off',
      theme: 'auto',
      paper: 'a4',
      dyer: '',
      boilsAt: '',
      calendarAtStart: false,
      pedalDone: null,
      pedalNext: null,
      wet: false,
      headset: false,
      whistle: false,
      strip: usualStrip
    })
  }
  const lamps = signal<Kitchen['lamps']['value']>([
    { id: 'screen', ok: true, say: 'screen stays on', tap: null },
    { id: 'sound', ok: true, say: 'sound on', tap: null },
    { id: 'saved', ok: true, say: 'saved 14:31:52', tap: null },
    { id: 'battery', ok: true, say: 'battery 78 %, charging', tap: null }
  ])
  let ids = 0
  const kitchen: FixtureKitchen = {
    pots,
    now,
    lamps,
    ...signals,
    signals,
    sent: [],
    failNext: null,
    dismissMissed: () => {
      signals.missed.value = []
    },
    retrySave: () => {
      signals.notSaved.value = null
    },
    rescue: () => {},
    declareClockSet: () => {
      signals.jump.value = null
    },
    dismissJump: () => {
      signals.jump.value = null
    },
    takeOver: () => {
      signals.owner.value = true
    },
    rehearsal: false,
    send: async (potId, command, options) => {
      const { agoMs = 0, cueAtMs = null, via = 'tap' } = options ?? {}
      kitchen.sent.push({ potId, command, agoMs, cueAtMs, via })
      const failing = kitchen.failNext
      kitchen.failNext = null
      if (failing) return failing
      const journal = journals.find((j) => j.potId === potId)
      if (!journal) return { ok: false, refusal: null, say: 'No such pot.' }
      const sent = append(journal, command, cueAtMs ?? now.value - agoMs, `tap${++ids}`, false)
      refresh()
      return sent
    },
    sendAddedElsewhere: async (fromPotId, path, toPotId, amount) => {
      const first = await kitchen.send(fromPotId, { type: 'ReportAddedElsewhere', path, amount, toPotId })
      return first.ok ? kitchen.send(toPotId, { type: 'AddUnplanned', amount, fromPotId }) : first
    },
    start: async () => ({ ok: true }),
    newId: () => `id${++ids}`,
    protocols: async () => [],
    drafts: keptDrafts(memoryKept()),
    saveProtocol: async () => ({ ok: false, problems: [], say: 'no store in this test' }),
    versions: async () => [],
    makeProtocol: async () => ({ ok: false, say: 'no maker in this test' }) as const,
    protocolAgain: async () => ({ ok: false, problems: [] }),
    bringIn: () => Promise.reject(new Error('nothing is brought in in this test')),
    dismissArrived: (one) => {
      signals.arrived.value = signals.arrived.value.filter((other) => other !== one)
    },
    beforeTheHeat: async () => [],
    saveCalendar: async () => ({ ok: true }),
    cancelCalendar: async () => ({ ok: true }),
    beginDeviceCheck: () => {},
    stopDeviceCheck: () => {},
    trySound: async () => true,
    trySpeech: async () => true,
    book: async () => [],
    entries: async (potId) => ({ entries: journals.find((j) => j.potId === potId)?.entries ?? [], damaged: [] }),
    saveFile: () => {},
    changeSettings: async (change) => {
      signals.settings.value = { ...signals.settings.value, ...change }
      return { ok: true }
    },
    go: (route) => {
      signals.route.value = route
    },
    tick: (nowMs) => {
      now.value = nowMs
      refresh()
    }
  }
  return kitchen
}
