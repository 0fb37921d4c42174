// What a person or the clock may ask of a pot. Imperative; the time, the id and the source come as data in the header,
// so that the engine itself knows no clock.
import type { Amount, Grade, Programme } from '../protocol/model.ts'
import type { KeptNumbers } from '../protocol/numbers/kept.ts'
import type {
  Answer,
  BathFate,
  By,
  Check,
  CupsRead,
  DeedWord,
  EntryRef,
  PhReading,
  PotIdentity,
  ProtocolText,
  ResultValue,
  Skein,
  TroubleEnd,
  TroubleKind
} from './events.ts'
import type { PhotoMedia, VoiceMedia } from './media.ts'

export type PotCommand =
  | {
      type: 'Start'
      pot: PotIdentity
      protocol: ProtocolText
      programme: Programme
      checks: Check[]
      cautionsShown: string[]
      numbers?: KeptNumbers
    }
  /** The shown act is done; `added` is what really went in where it was a dose. */
  | { type: 'MarkDone'; path: string; added?: Amount; reason?: string }
  | { type: 'AnswerStep'; path: string; answer: Answer }
  | { type: 'NotYet'; path: string; byMs: number; reason: string }
  | { type: 'Skip'; path: string; reason: string }
  /** Ends a wait before its time. */
  | { type: 'EndEarly'; path: string; reason: string }
  /** The water level was looked at (a dry-out hazard). */
  | { type: 'MarkLooked'; path: string }
  | { type: 'DoOnceMore'; path: string; reason: string }
  | { type: 'MoveDeadline'; path: string; dueAtMs: number; reason: string }
  /** `itemId`: the bottle on the shelf it came out of. */
  | { type: 'AddUnplanned'; amount: Amount; fromPotId?: string; itemId?: string }
  | { type: 'ReportAddedElsewhere'; path: string | null; amount: Amount; toPotId: string }
  | { type: 'TopUp'; volumeML: number; tempC: number | null; levelBefore: string | null; levelAfter: string | null }
  | { type: 'PutSkeinsIn'; tags: string[] }
  | { type: 'TakeSkeinsOut'; tags: string[] }
  | { type: 'SwapSkeins'; withPotId: string; gave: string[]; got: Skein[] }
  /** Something was done that no other command tells. `lower` says how deep ("1/4 of the skein"), `do` says what. */
  | { type: 'NoteDeed'; word: DeedWord; say: string }
  | { type: 'ChangeBurner'; burner: string }
  | { type: 'ChangeHeat'; on: boolean; level: string | null }
  | { type: 'ReadTemperature'; tempC: number }
  /** `lot`: what stands on the strips' box. */
  | { type: 'ReadPh'; reading: PhReading; lot?: string }
  | { type: 'Judge'; of: string; grade: Grade; hue: string | null; cups?: CupsRead }
  | { type: 'CallTrouble'; kind: TroubleKind }
  | { type: 'SettleTrouble'; beganAtMs: number; tempC: number | null; outcome: TroubleEnd }
  | { type: 'HandOver'; to: string }
  | { type: 'Hold'; reason: string | null }
  | { type: 'Resume'; heldTimeCounts: boolean }
  | { type: 'WriteNote'; text: string }
  | { type: 'TellResult'; what: string; own: boolean; value: ResultValue }
  | { type: 'NotePhoto'; what: string; media?: PhotoMedia | null }
  | { type: 'NoteVoice'; media: VoiceMedia }
  | { type: 'TrimMedia'; sha256: string; why: string }
  | { type: 'ShowCaution'; caution: string; path: string | null }
  | { type: 'Undo' }
  | { type: 'Correct'; entry: EntryRef; field: string; was: string; now: string; why: string }
  | { type: 'Abort'; reason: string }
  | { type: 'Finish'; bath: BathFate }
  /** The clock was set: open deadlines move by it. */
  | { type: 'ShiftClock'; byMs: number }
  /** One due moment passed; `key` is the key of the Due it answers. Stamped with the due time. `told`: by what an alert
   * could be noticed. */
  | { type: 'PassDue'; key: string; told?: readonly string[] }

/** `atMs`: when it happened (wall clock UTC); for PassDue the due time itself. */
export type CommandHeader = { commandId: string; atMs: number; by: By }

export type RefusalCode =
  | 'not-started'
  | 'already-started'
  | 'ended'
  | 'no-such-step'
  | 'step-not-open'
  | 'needs-answer'
  | 'needs-record'
  | 'stopped'
  | 'wrong-answer'
  | 'out-of-range'
  | 'needs-reason'
  | 'not-a-wait'
  | 'nothing-to-undo'
  | 'not-held'
  | 'already-held'
  | 'in-trouble'
  | 'not-in-trouble'
  | 'steps-left'
  | 'nothing-due'
  | 'in-the-future'
  | 'before-start'
  | 'no-such-entry'
  | 'no-such-skein'
  | 'empty'
  | 'too-long'
  | 'no-such-media'
  | 'no-room'

/** A refusal is a value; `say` is what the screen shows. */
export type Refusal = { code: RefusalCode; say: string }
