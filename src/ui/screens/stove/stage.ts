// What the Stove itself knows: which pot is shown, what is open over it, what was just said. Nothing of the domain.
import { type Signal, signal } from '@preact/signals'
import type { PotCommand } from '../../../core/pot/commands.ts'
import type { Amount, Question } from '../../../core/protocol/model.ts'
import type { Kitchen, SendOptions, Sent, Via } from '../../kitchen.ts'
import type { ReadyPhoto } from '../../media.ts'
import { type Call, keyOf, sortCalls } from './calls.ts'
import { cueAtMs, pressesInTheAct } from './cue.ts'
import { type LivePot, livePots } from './live.ts'

export type Open =
  | { kind: 'read'; potId: string }
  | { kind: 'ask'; potId: string; path: string; question: Question }
  | { kind: 'not-yet'; potId: string; path: string }
  | { kind: 'amount'; potId: string; path: string; planned: Amount }
  | { kind: 'more'; potId: string }
  | { kind: 'deeds'; potId: string }
  | { kind: 'note'; potId: string }
  | { kind: 'resume'; potId: string }
  | { kind: 'finish'; potId: string }
  | { kind: 'trouble'; potId: string }
  /** `during`: the call that filled the screen when it was opened. A later one comes first. */
  | { kind: 'photo' | 'voice'; potId: string; during: string | null }

/** A picture on its way to the journal. It outlives its sheet, which steps aside for a call. */
export type PhotoDraft =
  | { kind: 'reading' }
  | { kind: 'failed'; say: string }
  | { kind: 'ready'; photo: ReadyPhoto; what: string; commandId: string }

export type { Via } from '../../kitchen.ts'

/** What last touched the app. */
export type Hand = { via: Via }

export type Stage = {
  shown: Signal<string | null>
  open: Signal<Open | null>
  /** Calls laid aside to look at the pots, by key. */
  aside: Signal<ReadonlySet<string>>
  /** Collisions that the dyer has been told of. */
  clashesSeen: Signal<ReadonlySet<string>>
  /** The call that fills the screen. */
  called: Signal<string | null>
  /** How long ago the act was, as the dyer said; null: nothing was said. Goes back to that after each answer. */
  agoMs: Signal<number | null>
  busy: Signal<boolean>
  /** Pictures not yet kept, by pot. */
  photos: Signal<Readonly<Record<string, PhotoDraft | undefined>>>
  hand: Hand
  /** How often the call was asked for once more. */
  saidAgain: Signal<number>
  /** A refusal or a failed write, in words. */
  said: Signal<{ potId: string; say: string } | null>
  /** What the last answer was, for the undo strip. */
  answered: Signal<{ potId: string; commandAtMs: number } | null>
  send(potId: string, command: PotCommand, via?: Via, more?: SendOptions): Promise<Sent>
  /** A deed that may need more than one command; stops at the first that fails. */
  sendAll(potId: string, commands: PotCommand[], via?: Via, more?: SendOptions): Promise<Sent>
  /** Written down beside what goes on; nobody waits for it. */
  note(potId: string, command: PotCommand): void
  close(): void
  /** All skeins of a pot, by their tags. */
  tagsOf(potId: string): string[]
}

/** The sheet that lies open; null also while it steps aside for a call that came after it. */
export function openNow({ open, called }: Pick<Stage, 'open' | 'called'>): Open | null {
  const sheet = open.value
  if (sheet === null || !('during' in sheet)) return sheet
  return called.value === null || called.value === sheet.during ? sheet : null
}

/** When it was done: as the dyer said, or at the cue, or now. */
function timeOf(
  kitchen: Kitchen,
  stage: Stage,
  potId: string,
  [command, ...others]: PotCommand[],
  via: Via
): Pick<SendOptions, 'agoMs' | 'cueAtMs'> {
  const agoMs = stage.agoMs.peek()
  const counted = agoMs === null && command?.type === 'MarkDone' && others.length === 0 && !pressesInTheAct(via)
  if (!counted) return { agoMs: agoMs ?? 0 }
  return { agoMs: 0, cueAtMs: cueNow(kitchen, potId, command.path) }
}

/** The cue of an open act that an answer would mean now. */
export function cueNow(kitchen: Kitchen, potId: string, path: string): number | null {
  const pot = livePots(kitchen.pots.value).find((each) => each.potId === potId)
  return pot ? cueAtMs(pot.state, path, kitchen.now.value, kitchen.settings.value.voice === 'guide') : null
}

/** That pot is large; what it calls comes first, though it was laid aside. */
export function bringUp({ shown, aside, called }: Stage, pot: LivePot): void {
  const keys = sortCalls([pot], 0, null, new Set())
  shown.value = pot.potId
  if (keys.full) called.value = keyOf(keys.full)
  aside.value = new Set([...aside.peek()].filter((key) => !key.startsWith(`${pot.potId} `)))
}

/** The same, asked for on the Stove: what would still lie over that pot is laid aside. */
export function showPot(kitchen: Kitchen, stage: Stage, pot: LivePot): void {
  bringUp(stage, pot)
  const { called, aside } = stage
  const over = (): Call | null => {
    const { full } = sortCalls(livePots(kitchen.pots.peek()), kitchen.now.peek(), called.peek(), aside.peek())
    return full && full.pot.potId !== pot.potId ? full : null
  }
  for (let call = over(); call !== null; call = over()) aside.value = new Set([...aside.peek(), keyOf(call)])
}

export function makeStage(kitchen: Kitchen): Stage {
  const stage: Stage = {
    shown: signal(null),
    open: signal(null),
    aside: signal(new Set()),
    clashesSeen: signal(new Set()),
    called: signal(null),
    agoMs: signal(null),
    busy: signal(false),
    photos: signal({}),
    hand: { via: 'tap' },
    saidAgain: signal(0),
    said: signal(null),
    answered: signal(null),
    send: (potId, command, via, more) => stage.sendAll(potId, [command], via, more),
    sendAll: async (potId, commands, via = stage.hand.via, more = {}) => {
      stage.busy.value = true
      stage.said.value = null
      let sent: Sent = { ok: true }
      try {
        for (const command of commands) {
          sent = await kitchen.send(potId, command, { ...timeOf(kitchen, stage, potId, commands, via), via, ...more })
          if (!sent.ok) break
        }
      } finally {
        stage.busy.value = false
      }
      if (sent.ok) {
        // What stands after an undo is an earlier act: nothing new was written down.
        const undid = commands.some(({ type }) => type === 'Undo')
        stage.answered.value = undid ? null : { potId, commandAtMs: kitchen.now.peek() }
        stage.agoMs.value = null
      } else stage.said.value = { potId, say: sent.say }
      return sent
    },
    note: (potId, command) => {
      void kitchen.send(potId, command)
    },
    tagsOf: (potId) => {
      const pot = livePots(kitchen.pots.peek()).find((p) => p.potId === potId)
      return pot?.state.pot.skeins.map((skein) => skein.tag) ?? []
    },
    close: () => {
      stage.open.value = null
      stage.agoMs.value = null
    }
  }
  return stage
}
