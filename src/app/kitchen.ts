// The one real Kitchen: what the session, the shell and the browser know, as values for the screens.
import { batch, computed, type ReadonlySignal, signal } from '@preact/signals'
import { readEntries } from '../core/pot/read-entry.ts'
import type { ClockPort, JournalPort } from '../session/ports.ts'
import type { Session } from '../session/types.ts'
import { saveTextFile } from '../shell/files/files.ts'
import { mediaLines } from '../shell/media/media-lines.ts'
import type { Ownership } from '../shell/ownership/ownership.ts'
import type { Tabs } from '../shell/ownership/tabs.ts'
import type { ScreenLock } from '../shell/screen-lock/screen-lock.ts'
import type { Kept } from '../shell/settings/kept.ts'
import type { Player } from '../shell/sound/player.ts'
import { storageNow } from '../shell/storage-persistence/persistence.ts'
import type { Kitchen, Lamp, PotOnStove, Sent, Via } from '../ui/kitchen.ts'
import { beforeTheHeat } from './before-the-heat.ts'
import { type Commands, sayOf } from './commands.ts'
import type { Expecter } from './expected-heat.ts'
import type { Extras } from './extras.ts'
import type { Ladder } from './ladder.ts'
import { laterHeadset } from './later-headset.ts'
import { mediaOf } from './media.ts'
import { type KeptSettings, levelOf } from './settings.ts'
import type { StoredProtocols } from './stored-protocols.ts'
import type { Updates } from './updates.ts'
import { anyWatched } from './watched.ts'

/** `tabs`: the others, as far as the shelf goes. */
export type ShelfHere = { writerId: string; tabs: () => Tabs }

export type KitchenParts = {
  clock: ClockPort
  journal: JournalPort
  session: Session
  commands: Commands
  owner: Ownership
  ladder: Ladder
  player: Player
  lock: ScreenLock
  /** Null until they are fetched. */
  extras: ReadonlySignal<Extras | null>
  /** What thermometers tell, where it does not come with the extras. */
  expecter?: Expecter
  settings: KeptSettings
  protocols: StoredProtocols
  route: Pick<Kitchen, 'route' | 'go'>
  updates: Updates
  newId: () => string
  /** Left out: there is no shelf here. */
  shelf?: ShelfHere
  /** Absent in a rehearsal, which keeps nothing. */
  kept?: Kept
  found?: NonNullable<Kitchen['found']>
  rehearsal: boolean
  rehearse?: NonNullable<Kitchen['rehearse']>
}

export function makeKitchen(parts: KitchenParts): Kitchen {
  const view = sessionView(parts)
  const { settings, player, lock, shelf: here } = parts
  const sending = commandsOf(parts)
  return {
    ...view,
    ...sending,
    media: mediaOf(parts.journal, sending.send, parts.newId),
    protocols: parts.protocols.protocols,
    protocolAgain: parts.protocols.protocolAgain,
    bringIn: (file) => parts.protocols.bringIn(file, parts.newId(), parts.clock.nowMs()),
    arrived: computed(() => parts.extras.value?.arrivals.waiting.value ?? []),
    dismissArrived: (one) => parts.extras.value?.arrivals.dismiss(one),
    sharing: computed(() => parts.extras.value?.sharing ?? null),
    backup: computed(() => parts.extras.value?.backup ?? null),
    saveProtocol: (text, came) => parts.protocols.saveWritten(text, parts.clock.nowMs(), came),
    versions: parts.protocols.versions,
    drafts: parts.protocols.drafts,
    makeProtocol: async (potId) => parts.protocols.keepMade(readEntries(await parts.journal.read(`pot/${potId}`))),
    ...parts.route,
    rehearsal: parts.rehearsal,
    ...(parts.rehearse ? { rehearse: parts.rehearse } : {}),
    newId: parts.newId,
    update: updateOf(parts, view),
    settings: settings.settings,
    async changeSettings(change) {
      const sent = await settings.change(change)
      parts.ladder.look()
      return sent
    },
    beforeTheHeat: () => beforeTheHeat(player, lock, levelOf(settings.settings.value)),
    headset: laterHeadset(parts.extras),
    whistle: computed(() => parts.extras.value?.whistle.kitchen ?? null),
    sayAgain(potId, key) {
      const level = levelOf(settings.settings.value)
      const speech = parts.extras.value?.speech
      void (speech?.sayAgain(potId, key) ?? Promise.resolve(false)).then((said) => {
        if (!said && level !== null) player.play('now', level)
      })
    },
    trySound: async (level) => (await player.unlock()) && player.play('now', level),
    deviceCheck: computed(() => parts.extras.value?.checks.check.value ?? null),
    beginDeviceCheck(minutes) {
      void player.unlock()
      parts.extras.value?.checks.begin(minutes)
    },
    stopDeviceCheck: () => parts.extras.value?.checks.stop(),
    async trySpeech() {
      const speech = parts.extras.value?.speech
      return speech === undefined ? false : speech.trySpeech(speech.example())
    },
    storage: () => storageNow(),
    ...(here && { shelf: () => import('./shelf.ts').then(({ shelfOf }) => shelfOf(parts, view.pots, here)) }),
    ...(parts.found ? { found: parts.found } : {}),
    ...(here && { swatches: () => import('./swatches.ts').then(({ swatchesOf }) => swatchesOf(parts, here)) }),
    book: (fromMs, toMs, limit) => parts.journal.summaries(fromMs, toMs, limit),
    async entries(potId) {
      const { entries, damaged } = readEntries(await parts.journal.read(`pot/${potId}`))
      return { entries, damaged }
    },
    saveCalendar: async () => (await parts.extras.value?.calendar.saveCalendar()) ?? notYet,
    cancelCalendar: async () => (await parts.extras.value?.calendar.cancelCalendar()) ?? notYet,
    saveFile: saveTextFile,
    ...(parts.kept ? { skeinCards: cardsIn(parts.kept) } : {})
  }
}

/** Loaded when a card is first wanted. */
function cardsIn(kept: Kept): NonNullable<Kitchen['skeinCards']> {
  const cards = async () => (await import('./stored-cards.ts')).storedCards(kept)
  return {
    read: async (potId) => (await cards()).read(potId),
    keep: async (potId, text) => (await cards()).keep(potId, text)
  }
}

const notYet: Sent = { ok: false, refusal: null, say: 'Not there yet. Try again in a moment.' }

type View = Pick<
  Kitchen,
  | 'pots'
  | 'now'
  | 'lamps'
  | 'missed'
  | 'dismissMissed'
  | 'notSaved'
  | 'retrySave'
  | 'rescue'
  | 'jump'
  | 'declareClockSet'
  | 'dismissJump'
  | 'owner'
  | 'takeOver'
>

function sessionView(parts: KitchenParts): View {
  const { session, clock, owner, ladder, lock } = parts
  const stored = signal<PotOnStove[]>([])
  const pots = computed(() => {
    const expect = parts.expecter ?? parts.extras.value?.heat.expecter.value
    return expect === undefined ? stored.value : stored.value.map((pot) => ({ ...pot, ...expect(pot.state) }))
  })
  const now = signal(clock.nowMs())
  const missed = signal(session.missed())
  const notSaved = signal<{ say: string } | null>(null)
  const jump = signal<{ byMs: number } | null>(null)
  const owned = signal(owner.owns())
  const unreadable = signal<string | null>(null)
  const read = (): void =>
    batch(() => {
      const views = session.pots()
      stored.value = views.filter(({ state }) => state.status === 'running' || state.status === 'held')
      unreadable.value = views.find(({ state }) => state.status === 'idle')?.readOnly ?? null
      missed.value = session.missed()
      const standing = session.notSaved()
      notSaved.value = standing === null ? null : { say: sayOf(standing.failure) }
      jump.value = session.jump()
    })
  session.subscribe(read)
  owner.onChange(() => {
    owned.value = owner.owns()
  })
  clock.onTick(() => {
    const nowMs = clock.nowMs()
    if (Math.floor(nowMs / 1000) === Math.floor(now.value / 1000)) return
    now.value = nowMs
    const watched = owner.owns() && anyWatched(pots.value, nowMs)
    lock.want(watched)
    parts.extras.value?.headset.want(watched && parts.settings.settings.value.headset)
    ladder.look()
  })
  read()
  return {
    pots,
    now,
    missed,
    notSaved,
    jump,
    owner: owned,
    lamps: computed(() => {
      const heard = [parts.extras.value?.headset.lamp.value ?? null, parts.extras.value?.whistle.lamp.value ?? null]
      const lamps = heard.filter((lamp) => lamp !== null)
      return [...ladder.lamps.value, ...lamps, savedLamp(notSaved.value, unreadable.value)]
    }),
    dismissMissed: session.dismissMissed,
    retrySave: () => void session.retry(),
    rescue: () => rescue(session, clock.nowMs()),
    declareClockSet: () => void session.declareClockSet(),
    dismissJump: session.dismissJump,
    takeOver: () => void owner.take()
  }
}

function savedLamp(notSaved: { say: string } | null, unreadable: string | null): Lamp {
  const say = notSaved !== null ? `Not saved. ${notSaved.say}` : (unreadable ?? 'Saved on this device')
  return { id: 'saved', ok: notSaved === null && unreadable === null, say, tap: null }
}

/** What could not be stored, as a file the dyer can keep: an entry a line. */
function rescue(session: Session, nowMs: number): void {
  const { entries = [], media = [] } = session.notSaved() ?? {}
  const day = new Date(nowMs).toISOString().slice(0, 16).replace(':', '')
  const lines = [...entries.map((entry) => JSON.stringify(entry)), ...mediaLines(media)].join('\n')
  saveTextFile(`strandline-not-saved-${day}.jsonl`, 'application/jsonl', `${lines}\n`)
}

export function personOf({ settings }: KeptSettings, via: Via = 'tap') {
  return { kind: 'person', name: settings.value.dyer || null, via } as const
}

function commandsOf({
  commands,
  settings,
  clock
}: KitchenParts): Pick<Kitchen, 'send' | 'sendAddedElsewhere' | 'start'> {
  const by = (via?: Via) => personOf(settings, via)
  return {
    send: (potId, command, { via, cueAtMs = null, ...options } = {}) => {
      const timed = cueAtMs === null ? {} : { agoMs: Math.max(0, clock.nowMs() - cueAtMs) }
      const who = cueAtMs === null ? by(via) : ({ ...by(via), timed: 'cue' } as const)
      return commands.send([{ potId, command }], { by: who, ...options, ...timed })
    },
    sendAddedElsewhere: (fromPotId, path, toPotId, amount) =>
      commands.send(
        [
          { potId: fromPotId, command: { type: 'ReportAddedElsewhere', path, amount, toPotId } },
          { potId: toPotId, command: { type: 'AddUnplanned', amount, fromPotId } }
        ],
        { by: by() }
      ),
    start: (start) => commands.send([{ potId: start.pot.potId, command: { type: 'Start', ...start } }], { by: by() })
  }
}

function updateOf({ updates }: KitchenParts, { pots, now }: View): ReadonlySignal<{ apply: () => void } | null> {
  const watched = computed(() => anyWatched(pots.value, now.value))
  return computed(() => (updates.waiting.value && !watched.value ? { apply: () => void updates.apply() } : null))
}
