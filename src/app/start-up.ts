// Puts the app together in a browser. A rehearsal is the same with another clock and names of its own.

import { createSession } from '../session/create-session.ts'
import type { JournalPort } from '../session/ports.ts'
import type { Session } from '../session/types.ts'
import { rehearsalClock } from '../shell/clock/rehearsal-clock.ts'
import { ticks } from '../shell/clock/ticks.ts'
import { type AppClock, wallClock } from '../shell/clock/wall-clock.ts'
import { indexedDbJournal } from '../shell/journal/indexeddb-journal.ts'
import { type Ownership, ownership } from '../shell/ownership/ownership.ts'
import { type Tabs, tabs } from '../shell/ownership/tabs.ts'
import { screenLock } from '../shell/screen-lock/screen-lock.ts'
import { type Kept, keptIn } from '../shell/settings/kept.ts'
import { audioPlayer, type Player } from '../shell/sound/player.ts'
import { appUpdates } from '../shell/updates/app-updates.ts'
import type { Kitchen } from '../ui/kitchen.ts'
import { commands } from './commands.ts'
import { makeKitchen } from './kitchen.ts'
import type { Ladder } from './ladder.ts'
import { laterExtras } from './later-extras.ts'
import { newId } from './new-id.ts'
import { type Rehearsal, rehearsalOf } from './rehearsal-seam.ts'
import { hashRoute, potRoute } from './route.ts'
import { rungsOf } from './rungs.ts'
import { type KeptSettings, keptSettings } from './settings.ts'
import { storedProtocols } from './stored-protocols.ts'
import { updates } from './updates.ts'
import { anyWatched } from './watched.ts'

const KEPT_MOST_MS = 2_000

/** `drawn`: to be called when the first drawing stands. */
export type Started = { kitchen: Kitchen; opened: Promise<void>; drawn(): void }

/** `onPots`: told as early as can be that pots are on. */
export async function startUp(onPots: () => void): Promise<Started> {
  const rehearsal = rehearsalOf(location.search, () => localStorage, Date.now())
  const name = rehearsal === null ? 'strandline' : 'strandline-rehearsal'
  if (rehearsal?.fresh) await Promise.all([`${name}-journal`, `${name}-kept`, `${name}-found`].map(clearDatabase))
  const { clock, kept, settings, journal, owner, between, player, lock } = outside(name, rehearsal, onPots)
  let tried = false
  const rungs = rungsOf({
    player,
    lock,
    clock,
    settings: settings.settings,
    session: () => session,
    awake: () => tried
  })
  const [writerId] = await Promise.all([soon(writerIn(kept), newId()), soon(settings.load(), undefined)])
  const ids = { newId, writerId }
  const session = createSession({
    clock,
    journal,
    ids,
    onAlerts: rungs.raise,
    told: rungs.told,
    onStored: (potIds) => between.say({ kind: 'stored', potIds }),
    owns: owner.owns,
    drawsOf: () => extras.now.value?.drawsOf ?? null,
    missedLeastMs: 5_000 * (rehearsal?.speed ?? 1)
  })
  const sends = commands(session, owner, between, newId)
  const awake = (on: boolean): void => {
    tried = on
  }
  const [{ pots }, { onTick }] = [session, clock]
  const same = { clock, journal, pots, kept, newId, player, rehearsal: rehearsal !== null, commands: sends, ids }
  const route = hashRoute()
  const look = (potId: string): void => route.go(potRoute(potId))
  const protocols = storedProtocols(kept)
  const places = { route: () => route.route.value, go: route.go, look, open: session.open }
  const bringIn = (file: File) => protocols.bringIn(file, newId(), clock.nowMs())
  const parts = { ...same, name, settings: settings.settings, owns: owner.owns, onTick, awake, ...places, bringIn }
  const extras = laterExtras(
    async () => (await import('./extras.ts')).makeExtras(parts),
    (made) => rungs.add(made.rungs)
  )
  followOwner(session, owner, between, rungs)
  unlockOnGesture(player, settings)
  const kitchen = makeKitchen({
    ...same,
    ...bookIn(journal, name),
    session,
    owner,
    ladder: rungs,
    lock,
    extras: extras.now,
    settings,
    protocols,
    rehearse: async (wish) => {
      const { beginRehearsal } = await import('./rehearsal-run.ts')
      const realPots = (): boolean =>
        session.pots().some(({ state: { status } }) => status === 'running' || status === 'held')
      return beginRehearsal({ settings, protocols, player, newId, nowMs: Date.now, realPots }, wish)
    },
    route,
    shelf: { writerId, tabs: () => tabs(`${name}-shelf`) },
    updates: updates(appUpdates(() => !anyWatched(pots(), clock.nowMs())))
  })
  // The desk's bench and the browser tests take hold of a rehearsal here; a real pot has no such handle.
  if (rehearsal !== null) Object.assign(globalThis, { strandlineRehearsal: { kitchen, clock } })
  const opened = owner.settled.then(() => openPots(session))
  return { kitchen, opened, drawn: extras.fetchNow }
}

/** All that lies outside of this page. The journal is opened while settings and owner are still asked for; a failure
 * shows when the pots are read. */
function outside(name: string, rehearsal: Rehearsal | null, onPots: () => void) {
  const kept = keptIn(`${name}-kept`)
  const journal = indexedDbJournal(`${name}-journal`)
  journal.live().then(
    (live) => live.length > 0 && onPots(),
    () => {}
  )
  return {
    kept,
    journal,
    clock: clockOf(rehearsal),
    settings: keptSettings(kept, navigator.language),
    owner: ownership(name),
    between: tabs(name),
    player: audioPlayer(),
    lock: screenLock()
  }
}

/** What finds in the book is loaded when it is first wanted. */
function bookIn(journal: JournalPort, name: string) {
  const found = async () => (await import('./found-in-book.ts')).foundInBook(journal, `${name}-found`)
  return { found }
}

/** The marks are what the bench reads: how long a day of pots takes to open. */
async function openPots(session: Session): Promise<void> {
  performance.mark('pots-opening')
  await session.open()
  performance.mark('pots-open')
}

function clockOf(rehearsal: Rehearsal | null): AppClock {
  const beat = ticks()
  const bootId = newId()
  return rehearsal === null
    ? wallClock(beat, bootId)
    : rehearsalClock(beat, bootId, rehearsal.speed, rehearsal.anchorMs)
}

/** The writer of this store, named once: a restored or copied store takes a new name. */
function writerIn(kept: Kept): Promise<string> {
  return kept.getOrPut('writer', newId())
}

/** What the start waits for, but not for long and not for ever: pots come before settings. */
function soon<T>(wanted: Promise<T>, otherwise: T): Promise<T> {
  const late = new Promise<T>((resolve) => setTimeout(() => resolve(otherwise), KEPT_MOST_MS))
  return Promise.race([wanted.catch(() => otherwise), late])
}

/** Reads what another tab stored, also as the owner: what one that owned before had under way may land late. Becomes the
 * owner when it is this tab's turn. */
function followOwner(session: Session, owner: Ownership, between: Tabs, rungs: Ladder): void {
  between.onWord((word) => {
    if (word.kind === 'stored') void session.refresh(word.potIds)
  })
  owner.onChange(() => {
    if (owner.owns()) void session.open()
    else rungs.raise([], [])
  })
}

/** After a reload a page may sound only from the next touch on: take the first there is, and each after an interruption.
 * `pointerdown` is no such gesture for a finger. */
function unlockOnGesture(player: Player, { settings }: KeptSettings): void {
  const unlock = (): void => {
    if (settings.value.sound && player.state() !== 'ready') void player.unlock()
  }
  for (const type of ['pointerup', 'click', 'keydown'])
    document.addEventListener(type, unlock, { capture: true, passive: true })
}

function clearDatabase(name: string): Promise<void> {
  return new Promise((resolve) => {
    const request = indexedDB.deleteDatabase(name)
    request.onsuccess = request.onerror = request.onblocked = () => resolve()
  })
}
