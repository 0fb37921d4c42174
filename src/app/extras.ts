// What the first drawing of the Stove can do without: fetched and put together right after it. Nothing in here may be
// needed to sound a call, to answer it or to store it.

import type { CalendarPot } from '../core/calendar/calendar-of.ts'
import { drawsOf } from '../core/shelf/draws.ts'
import type { ClockPort, IdPort, JournalPort } from '../session/ports.ts'
import type { Session } from '../session/types.ts'
import { onDropped } from '../shell/arrivals/dropped.ts'
import { onLaunched } from '../shell/arrivals/launched.ts'
import { badgeRung } from '../shell/badge/badge-rung.ts'
import { saveTextFile } from '../shell/files/files.ts'
import { headset } from '../shell/media-session/headset.ts'
import { browserNotices } from '../shell/notices/notices.ts'
import { noticesRung } from '../shell/notices/notices-rung.ts'
import { onPress } from '../shell/notices/presses.ts'
import type { Rung } from '../shell/rung.ts'
import type { Kept } from '../shell/settings/kept.ts'
import { type Sharing, sharing } from '../shell/sharing/sharing.ts'
import type { Player } from '../shell/sound/player.ts'
import { storageNow } from '../shell/storage-persistence/persistence.ts'
import { vibrationRung } from '../shell/vibration/vibration-rung.ts'
import { whistleEar } from '../shell/whistle/whistle-ear.ts'
import type { KitchenBackup } from '../ui/backup.ts'
import type { Kitchen } from '../ui/kitchen.ts'
import type { BroughtIn } from '../ui/sharing.ts'
import { type Arrivals, arrivals } from './arrivals.ts'
import type { BackupParts } from './backup/parts.ts'
import { type CalendarFiles, calendarFiles } from './calendar-files.ts'
import type { Commands } from './commands.ts'
import { type Checks, deviceChecks } from './device-check.ts'
import { type ExpectedHeat, expectedHeat } from './expected-heat.ts'
import { type HeadsetOnStove, headsetOnStove } from './headset.ts'
import { answerPress, noticeSay } from './notices.ts'
import { potRoute } from './route.ts'
import { type KeptSettings, levelOf } from './settings.ts'
import { type Speech, speechOf } from './speech.ts'
import { anyWatched } from './watched.ts'
import { type Whistle, whistle } from './whistle.ts'

export type Extras = {
  drawsOf: typeof drawsOf
  rungs: Rung[]
  speech: Speech
  checks: Checks
  calendar: CalendarFiles
  heat: ExpectedHeat
  headset: HeadsetOnStove
  whistle: Whistle
  sharing: Sharing
  arrivals: Arrivals
  backup: NonNullable<Kitchen['backup']>['value']
}

export type ExtrasParts = {
  /** Of the app's databases: a rehearsal has names of its own. */
  name: string
  rehearsal: boolean
  clock: ClockPort
  settings: KeptSettings['settings']
  pots: Session['pots']
  journal: Pick<JournalPort, 'read' | 'summaries'>
  owns: () => boolean
  commands: Commands
  player: Player
  kept: Kept
  newId: () => string
  onTick: (tick: () => void) => void
  route: () => string
  go: (route: string) => void
  bringIn: (file: File) => Promise<BroughtIn>
  ids: IdPort
  /** Reads the live pots anew. */
  open: Session['open']
  /** A person has to see that pot. */
  look: (potId: string) => void
  /** Keeps the page awake as for a watched pot. */
  awake: (on: boolean) => void
}

export function makeExtras(parts: ExtrasParts): Extras {
  const { clock, settings, pots, owns, kept, onTick, rehearsal } = parts
  const monoMs = (): number => performance.now()
  const speech = speechOf({ clock, settings, pots, owns })
  onTick(speech.look)
  const checks = deviceChecks(kept, Date.now, onTick, parts.awake)
  void checks.load()
  const now = { pots, settings: () => settings.value }
  const heat = expectedHeat({ kept, journal: parts.journal, pots, nowMs: clock.nowMs, onTick })
  const ahead = (): CalendarPot[] => pots().map((pot) => ({ ...pot, ...heat.expecter.value(pot.state) }))
  const calendar = calendarFiles({ kept, clock, ...now, pots: ahead, saveFile: saveTextFile, rehearsal })
  const rungs = [noticesOf(parts), vibrationRung(monoMs), badgeRung(monoMs), speech]
  return {
    drawsOf,
    rungs,
    speech,
    checks,
    calendar,
    heat,
    headset: headsetOnStove(headset(), parts.go),
    whistle: whistleOf(parts, speech),
    sharing: sharing(),
    arrivals: arrivalsOf(parts),
    backup: backupOf(parts)
  }
}

function backupOf({ name, kept, ids, clock, pots, owns, open }: ExtrasParts): Extras['backup'] {
  const backupParts: BackupParts = {
    name,
    kept,
    ids,
    nowMs: clock.nowMs,
    watched: () => anyWatched(pots(), clock.nowMs()),
    owns,
    merged: async () => void (await open()),
    room: storageNow
  }
  const loaded = () => import('./backup/kitchen-backup.ts')
  // What can't be tidied now is tidied at the next start; nothing of it is in sight meanwhile.
  loaded()
    .then(({ tidyRestore }) => tidyRestore(backupParts))
    .catch(() => {})
  let made: Promise<KitchenBackup> | null = null
  return () => {
    made ??= loaded().then(({ kitchenBackup }) => kitchenBackup(backupParts))
    made.catch(() => {
      made = null
    })
    return made
  }
}

function arrivalsOf({ bringIn, route, go, pots }: ExtrasParts): Arrivals {
  const on = (status: string): boolean => status === 'running' || status === 'held'
  const made = arrivals({ bringIn, route, go, potsOn: () => pots().some(({ state }) => on(state.status)) })
  const take = (files: File[]): void => void made.take(files)
  onDropped(take)
  onLaunched(take)
  return made
}

function whistleOf({ clock, settings, pots, owns, player, onTick }: ExtrasParts, speech: Speech): Whistle {
  return whistle({
    ear: whistleEar(),
    on: () => settings.value.whistle,
    watched: () => owns() && anyWatched(pots(), clock.nowMs()),
    onTick,
    onSpeaking: speech.onSpeaking,
    onSounding: player.onSounding,
    sayBack(words) {
      const level = levelOf(settings.value)
      if (settings.value.voice !== 'off') void speech.trySpeech(words)
      else if (level !== null) player.play('soon', level)
    }
  })
}

function noticesOf({ name, clock, settings, pots, owns, commands, newId, look }: ExtrasParts): Rung {
  const pressed = { name, owns, pots, nowMs: clock.nowMs, commands, dyer: () => settings.value.dyer || null }
  onPress(async (press) => {
    const answer = await answerPress(pressed, press)
    if (answer === 'look') look(press.potId)
    return answer
  })
  const by = newId()
  return noticesRung({
    notices: browserNotices(name, by),
    say: (one) => noticeSay(one, pots(), settings.value, clock.nowMs()),
    data: { of: name, by },
    urlOf: (potId) => `${location.pathname}${location.search}${potRoute(potId)}`,
    nowMs: () => performance.now()
  })
}
