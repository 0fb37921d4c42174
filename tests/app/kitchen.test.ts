// @vitest-environment happy-dom

import { signal } from '@preact/signals'
import { describe, expect, it } from 'vitest'
import { commands } from '../../src/app/commands.ts'
import { makeExtras } from '../../src/app/extras.ts'
import { makeKitchen } from '../../src/app/kitchen.ts'
import { ladder } from '../../src/app/ladder.ts'
import { hashRoute } from '../../src/app/route.ts'
import { keptSettings } from '../../src/app/settings.ts'
import { storedProtocols } from '../../src/app/stored-protocols.ts'
import { memoryLocks } from '../../src/shell/ownership/memory-locks.ts'
import { type Locks, ownership } from '../../src/shell/ownership/ownership.ts'
import { tabs } from '../../src/shell/ownership/tabs.ts'
import type { Rung } from '../../src/shell/rung.ts'
import { screenLock } from '../../src/shell/screen-lock/screen-lock.ts'
import { memoryKept } from '../../src/shell/settings/kept.ts'
import { memoryPlayer } from '../../src/shell/sound/memory-player.ts'
import type { Kitchen } from '../../src/ui/kitchen.ts'
import { identity } from '../core/pot/given.ts'
import { MIN, pass, shortDye, type Table, table } from '../session/kitchen-table.ts'

let ids = 0
const newId = (): string => `k${++ids}`

/** One tab of the app on a table: everything real but the browser. */
async function tab(
  locks: Locks = memoryLocks(),
  on: { clock?: Table['clock']; store?: Table['store']; talk?: string } = {}
) {
  const owner = ownership('s', locks)
  await owner.settled
  const between = tabs(on.talk ?? `talk ${newId()}`)
  const at = table({ ...on, owns: owner.owns, onStored: (potIds) => between.say({ kind: 'stored', potIds }) })
  between.onWord((word) => {
    if (word.kind === 'stored') void at.session.refresh(word.potIds)
  })
  owner.onChange(() => void at.session.open())
  const waiting = signal(false)
  const settings = keptSettings(memoryKept(), 'de-AT')
  const lock = screenLock(undefined, document)
  const kitchen = makeKitchen({
    clock: at.clock,
    journal: at.journal,
    session: at.session,
    commands: commands(at.session, owner, between, newId),
    owner,
    ladder: ladder([]),
    player: memoryPlayer(),
    lock,
    settings,
    extras: signal(
      makeExtras({
        name: 'test',
        rehearsal: false,
        clock: at.clock,
        settings: settings.settings,
        pots: at.session.pots,
        journal: at.journal,
        owns: owner.owns,
        commands: commands(at.session, owner, between, newId),
        kept: memoryKept(),
        player: memoryPlayer(),
        newId,
        onTick: at.clock.onTick,
        awake: () => {},
        look: () => {},
        route: () => '#/stove',
        go: () => {},
        bringIn: () => Promise.reject(new Error('nothing comes in this test')),
        ids: { newId, writerId: 'w1' },
        open: at.session.open
      })
    ),
    protocols: storedProtocols(memoryKept()),
    route: hashRoute(),
    updates: { waiting, apply: async () => {} },
    newId,
    rehearsal: false
  })
  await at.session.open()
  return { at, kitchen, owner, waiting, lock, close: () => between.close() }
}

describe('what was missed', () => {
  it('is told again after an earlier miss was put aside: whoever looks at the list hears of each', async () => {
    const { at, kitchen } = await tab()
    await start(kitchen)
    const told: number[] = []
    kitchen.missed.subscribe((missed) => void told.push(missed.length))
    at.clock.sleep(11 * MIN)
    await at.session.wake()
    kitchen.dismissMissed()
    await kitchen.send('plum', { type: 'MarkDone', path: 'acid1' })
    at.clock.sleep(25 * MIN)
    await at.session.wake()
    expect(told).toEqual([0, 1, 0, 1])
  })
})

function start(kitchen: Kitchen, potId = 'plum'): ReturnType<Kitchen['start']> {
  const protocol = { title: 'Test', text: 'strandline: 1', version: 'v1', from: 'file' as const }
  return kitchen.start({ pot: identity(potId, 'Plum'), protocol, programme: shortDye, checks: [], cautionsShown: [] })
}

const openPaths = (kitchen: Kitchen): string[][] =>
  kitchen.pots.value.map(({ state }) => (state.status === 'idle' ? [] : state.active.map(({ path }) => path)))

describe('the kitchen', () => {
  it('shows a started pot, its call, and what was answered', async () => {
    const { at, kitchen } = await tab()
    expect(await start(kitchen)).toEqual({ ok: true })
    expect(openPaths(kitchen)).toEqual([['soak']])
    await pass(at, 10 * MIN)
    expect(kitchen.pots.value[0]?.alerts.map(({ path }) => path)).toEqual(['acid1'])
    expect(await kitchen.send('plum', { type: 'MarkDone', path: 'acid1' })).toEqual({ ok: true })
    expect(openPaths(kitchen)).toEqual([['hold1']])
    expect(kitchen.now.value).toBe(at.clock.nowMs())
  })

  it('writes an act down at the cue it was counted down to, and marks that', async () => {
    const { at, kitchen } = await tab()
    await start(kitchen)
    await pass(at, 10 * MIN)
    const cueAtMs = at.clock.nowMs()
    await pass(at, 12_000)
    expect(await kitchen.send('plum', { type: 'MarkDone', path: 'acid1' }, { cueAtMs })).toEqual({ ok: true })
    const closed = (await kitchen.entries('plum')).entries.find(({ by }) => by.kind === 'person' && by.timed === 'cue')
    expect(closed).toMatchObject({ atMs: cueAtMs, recordedAtMs: cueAtMs + 12_000, by: { via: 'tap', timed: 'cue' } })
  })

  it('says in words why a command was refused or not saved, and lights the lamp until it is', async () => {
    const { at, kitchen } = await tab()
    await start(kitchen)
    expect(await kitchen.send('plum', { type: 'MarkDone', path: 'acid1' })).toMatchObject({
      ok: false,
      refusal: { code: 'step-not-open' }
    })
    at.faults.push('full')
    const sent = await kitchen.send('plum', { type: 'WriteNote', text: 'x' })
    expect(sent).toMatchObject({ ok: false, refusal: null, say: expect.stringContaining('Not saved') })
    expect(kitchen.notSaved.value).not.toBeNull()
    expect(kitchen.lamps.value.find(({ id }) => id === 'saved')).toMatchObject({ ok: false })
    kitchen.retrySave()
    await at.session.wake()
    expect(kitchen.notSaved.value).toBeNull()
    expect(kitchen.lamps.value.find(({ id }) => id === 'saved')).toMatchObject({ ok: true })
  })

  it('offers a waiting version only while no pot is watched', async () => {
    const { kitchen, waiting } = await tab()
    waiting.value = true
    expect(kitchen.update.value).not.toBeNull()
    await start(kitchen)
    expect(kitchen.update.value).toBeNull()
    await kitchen.send('plum', { type: 'Abort', reason: 'test' })
    expect(kitchen.update.value).not.toBeNull()
  })

  it('wants the screen on while a pot is watched, and not after', async () => {
    const { at, kitchen, lock } = await tab()
    await start(kitchen)
    await pass(at, 2000)
    expect(lock.state()).toBe('may-sleep')
    await kitchen.send('plum', { type: 'Abort', reason: 'test' })
    await pass(at, 2000)
    expect(lock.state()).toBe('not-wanted')
  })

  it('reads the book and a record from the journal, also of a batch that ended', async () => {
    const { at, kitchen } = await tab()
    await start(kitchen)
    await kitchen.send('plum', { type: 'Abort', reason: 'test' })
    expect(kitchen.pots.value).toEqual([])
    expect(await kitchen.book(0, at.clock.nowMs() + 1)).toMatchObject([{ potId: 'plum', status: 'aborted' }])
    const { entries, damaged } = await kitchen.entries('plum')
    expect([entries[0]?.event.type, entries.at(-1)?.event.type, damaged]).toEqual(['PotStarted', 'Aborted', []])
  })

  it('writes the acid that went into the wrong pot into both records', async () => {
    const { kitchen } = await tab()
    await start(kitchen)
    await start(kitchen, 'moss')
    const amount = { value: 30, unit: 'mL', of: 'vinegar', asEntered: '30 mL' } as const
    expect(await kitchen.sendAddedElsewhere('plum', null, 'moss', amount)).toEqual({ ok: true })
    expect((await kitchen.entries('moss')).entries.at(-1)?.event).toMatchObject({ type: 'Dosed', fromPotId: 'plum' })
    expect((await kitchen.entries('plum')).entries.at(-1)?.event).toMatchObject({ type: 'DoseWentElsewhere' })
  })
})

describe('a second tab', () => {
  it('sees the pots of the first, lets the first do what is tapped, and takes over when told to', async () => {
    const locks = memoryLocks()
    const first = await tab(locks, { talk: 'kitchen' })
    await start(first.kitchen)
    const second = await tab(locks, { talk: 'kitchen', clock: first.at.clock, store: first.at.store })
    expect([second.kitchen.owner.value, openPaths(second.kitchen)]).toEqual([false, [['soak']]])
    await pass(first.at, 10 * MIN)
    expect(await second.kitchen.send('plum', { type: 'MarkDone', path: 'acid1' })).toEqual({ ok: true })
    expect(openPaths(first.kitchen)).toEqual([['hold1']])
    await expect.poll(() => openPaths(second.kitchen)).toEqual([['hold1']])
    second.kitchen.takeOver()
    await expect.poll(() => [first.kitchen.owner.value, second.kitchen.owner.value]).toEqual([false, true])
    expect(await second.kitchen.send('plum', { type: 'WriteNote', text: 'here now' })).toEqual({ ok: true })
    await expect.poll(async () => (await first.kitchen.entries('plum')).entries.at(-1)?.event.type).toBe('NoteWritten')
    first.close()
    second.close()
  })
})

describe('the ladder', () => {
  it('goes on when one rung breaks, and lets all rest when nothing calls', () => {
    const told: string[] = []
    const rung = (id: Rung['id'], raise: () => void): Rung => ({
      id,
      works: () => true,
      lamp: () => ({ ok: true, say: id, tap: null }),
      onLamp: () => () => {},
      raise,
      rest: () => void told.push(`${id} rests`)
    })
    const broken = rung('sound', () => {
      throw new Error('no audio')
    })
    const rungs = ladder([broken, rung('screen', () => void told.push('screen'))])
    const alert = { potId: 'p', colourway: 'Plum', alert: {} } as Parameters<typeof rungs.raise>[0][number]
    const rest = ['sound rests', 'screen rests']
    rungs.raise([], [])
    expect(rungs.told()).toEqual(['sound', 'screen'])
    rungs.raise([alert], [])
    expect(rungs.told()).toEqual(['screen'])
    rungs.raise([], [])
    rungs.raise([], [])
    // At the first look also: what an earlier opening of the page left outside of it is put away.
    expect(told).toEqual([...rest, 'screen', ...rest])
  })
})
