// Who is spoken of next, for all pots together: never two sentences at once.
import type { RungAlert } from '../rung.ts'
import { type Mouth, mouthOf } from './mouth.ts'
import { type Memory, memoryOf } from './told.ts'
import { alertTurns, cueName, cueTurns, isUrgent, mostUrgent, type PotCue, type Turn } from './turns.ts'
import type { Voice } from './voice.ts'

/** The words, from whoever knows the pots. */
export type Words = {
  /** `again`: it was said before. Null: there is no such pot any more. */
  alert(alert: RungAlert, again: boolean): string | null
  /** The coming cues of all pots; none where nobody wants to be guided. */
  cues(): readonly PotCue[]
  /** The clock that the cues go by, ms. */
  nowMs(): number
}

export type Speaker = {
  /** The alerts that stand now: a level. */
  stand(alerts: readonly RungAlert[]): void
  /** Says what is due, if anything; to be asked at every look at the clock. */
  look(): void
  /** A sentence of no pot, as soon as no pot wants to be spoken of. True: it was said. */
  once(text: string): Promise<boolean>
  hush(): void
  onSpeaking(listener: (speaking: boolean) => void): () => void
}

/** What a sentence takes that was said before, or that comes ahead of its time. */
const SENTENCE_MS = 3_000

type Wish = { text: string; done: (said: boolean) => void }
type Parts = { voice: Voice; words: Words; nowMs: () => number; toneMs: (alert: RungAlert) => number }

/** `nowMs`: real time, monotonic. `toneMs`: so long an alert sounds first, and nobody would understand a word. */
export function speaker(
  voice: Voice,
  words: Words,
  nowMs: () => number,
  toneMs: (alert: RungAlert) => number = () => 0
): Speaker {
  const parts: Parts = { voice, words, nowMs, toneMs }
  const mouth = mouthOf(voice)
  const memory = memoryOf(nowMs)
  const wishes: Wish[] = []
  let alerts: readonly RungAlert[] = []
  let lastPotId: string | null = null
  const look = (): void => {
    if (voice.state() !== 'ready') return
    const next = nextTurn(parts, memory, alerts)
    const saying = mouth.saying()
    if (saying !== null) {
      if (next === null || !breaksOff(next, saying.turn)) return
      cutOff(mouth, memory)
    }
    if (next !== null) {
      lastPotId = begin(parts, mouth, memory, next, lastPotId, look)
      return
    }
    const wish = wishes.shift()
    if (wish === undefined) return
    lastPotId = null
    mouth.say(null, wish.text, (said) => {
      wish.done(said)
      look()
    })
  }
  return {
    stand(next) {
      alerts = next
      const turn = mouth.saying()?.turn
      // What was answered need not be heard to its end.
      if (turn?.kind === 'alert' && !isAmong(turn.alert, next)) cutOff(mouth, memory)
    },
    look,
    once(text) {
      if (voice.state() !== 'ready') return Promise.resolve(false)
      return new Promise((done) => {
        wishes.push({ text, done })
        look()
      })
    },
    hush() {
      cutOff(mouth, memory)
      for (const { done } of wishes.splice(0)) done(false)
    },
    onSpeaking: mouth.onSpeaking
  }
}

function nextTurn({ words, nowMs, toneMs }: Parts, memory: Memory, alerts: readonly RungAlert[]): Turn | null {
  const cues = words.cues()
  const potNowMs = words.nowMs()
  memory.keep(alerts, cues)
  const coming = cues.filter(
    (cue) => cue.urgency === 'now' && cue.atMs > potNowMs && !memory.cuesSaid.has(cueName(cue))
  )
  const untilCountMs = Math.min(...coming.map((cue) => cue.atMs - potNowMs))
  const turns = alertTurns(alerts, memory.told, nowMs(), toneMs).filter(
    (turn) => !canWait(turn) || untilCountMs > SENTENCE_MS
  )
  return mostUrgent([...turns, ...cueTurns(cues, memory.cuesSaid, potNowMs)])
}

/** Where a count would come before its end, it does not begin. */
function canWait(turn: Turn): boolean {
  return turn.kind === 'alert' && (!turn.first || turn.alert.alert.urgency === 'soon')
}

/** Begins to say it; returns the pot it is of. */
function begin(
  { words }: Parts,
  mouth: Mouth,
  memory: Memory,
  turn: Turn,
  lastPotId: string | null,
  then: () => void
): string | null {
  if (turn.kind === 'alert') {
    const text = words.alert(turn.alert, memory.knows(turn.alert))
    memory.said(turn.alert)
    if (text === null) return lastPotId
    mouth.say(turn, text, then)
    return turn.alert.potId
  }
  const { cue } = turn
  // "Three, two, one" is of the pot that was spoken of last, or it says its pot.
  const text = cue.pot === null || lastPotId === cue.potId ? cue.say : `${cue.pot}. ${cue.say}`
  memory.cueSaid(cue)
  mouth.say(turn, text, (said) => {
    if (said) memory.counted(cue)
    then()
  })
  return cue.potId
}

function cutOff(mouth: Mouth, memory: Memory): void {
  const turn = mouth.saying()?.turn
  mouth.cut()
  if (turn?.kind === 'alert') memory.unsaid(turn.alert)
}

function isAmong({ potId, alert }: RungAlert, alerts: readonly RungAlert[]): boolean {
  return alerts.some((each) => each.potId === potId && each.alert.key === alert.key)
}

/** Only what is late and gets worse breaks in, once, and never on its like: two of them would cut each other for ever. */
function breaksOff(next: Turn, over: Turn | null): boolean {
  if (next.kind !== 'alert' || !next.first || !isGraveLate(next)) return false
  if (over?.kind !== 'alert') return true
  return !isGraveLate(over) && !isAmong(over.alert, [next.alert])
}

function isGraveLate(turn: Extract<Turn, { kind: 'alert' }>): boolean {
  return isUrgent(turn.alert) && turn.alert.alert.escalates
}
