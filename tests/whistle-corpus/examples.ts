// What the recogniser weighs in the part of the corpus that may be tuned on, for fit.ts. Listening takes most of an hour;
// what was heard of each kind is kept in .work/whistle-examples and used again until its file is deleted.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import type { Glide } from '../../src/shell/whistle/glide.ts'
import { HOP_MS } from '../../src/shell/whistle/peaks.ts'
import { createRecogniser } from '../../src/shell/whistle/recogniser.ts'
import type { Traits } from '../../src/shell/whistle/traits.ts'
import { canBeWhistled } from '../../src/shell/whistle/whistled.ts'
import { RATE_HZ } from './filters.ts'
import { type Kind, kinds } from './kinds.ts'
import { groundsOf, hear, LEAD_SEC, mixed, PIECE_SEC, pieceAtLevel } from './measure.ts'
import { type Reach, usual, type WhistlePlan } from './whistle.ts'

/** From the nth whistle of its kind at that loudness over the sound; without, from sound in which nobody whistled. */
export type Weighed = { glide: Glide; traits: Traits; whistle?: { nth: number; db: number; isIt: boolean } }

/** How much is enough is chosen on the one with a network fitted to the other: they share no seed. */
export type Share = 'fit' | 'choice'
const firsts: Record<Share, number> = { fit: 1_000, choice: 50_000 }

export const whistles: Record<Share, number> = { fit: 500, choice: 150 }
export const loudnesses = [20, 10, 5, 0] as const

const KEPT = resolve(import.meta.dirname, '../../.work/whistle-examples')
const GROUNDS = 40
/** Of every three whistles one may be as short, as long, as narrow or as wide as the recogniser is to take. */
const wide: Reach = { semitones: [3, 14], sec: [0.25, 1.2] }
/** Hours listened to: the longer the more there is in it that glides. */
const hours: Record<string, number> = {
  water: 24,
  'music-like': 16,
  kettle: 10,
  clanks: 36,
  beeps: 8,
  'talk-like': 18,
  fan: 1
}
const OTHER_HOURS = 4
const TALK_HOURS = 2.5
const CHOICE_SHARE = 1 / 3

export function hoursOf({ name }: Kind, share: Share): number {
  const all = hours[name] ?? (name.startsWith('talk') ? TALK_HOURS : OTHER_HOURS)
  return share === 'fit' ? all : all * CHOICE_SHARE
}

/** Of what could be whistled, as whistled.ts said when it was listened to. */
export function examplesOf(kind: Kind): Record<Share, Weighed[]> {
  const file = resolve(KEPT, `${kind.name}.json`)
  if (!existsSync(file)) {
    const heard = { fit: listenTo(kind, 'fit'), choice: listenTo(kind, 'choice') }
    mkdirSync(KEPT, { recursive: true })
    writeFileSync(
      file,
      JSON.stringify(heard, (_, value) => (typeof value === 'number' ? Number(value.toPrecision(6)) : value))
    )
  }
  return JSON.parse(readFileSync(file, 'utf8'))
}

const listenTo = (kind: Kind, share: Share): Weighed[] => [...ofWhistles(kind, share), ...ofSound(kind, share)]

function ofWhistles(kind: Kind, share: Share): Weighed[] {
  const grounds = groundsOf(kind, 'tune', GROUNDS, firsts[share])
  const order = kinds().there.findIndex(({ name }) => name === kind.name)
  const found: Weighed[] = []
  for (let nth = 0; nth < whistles[share]; nth++) {
    // No two kinds have a whistle in common.
    const seed = firsts[share] + order * 1_000 + nth
    for (const db of loudnesses) {
      const { plan, samples } = mixed(grounds, 'tune', seed, db, nth % 3 === 2 ? wide : usual)
      hear(samples, (glide, traits) => {
        if (canBeWhistled(glide, traits)) found.push({ glide, traits, whistle: { nth, db, isIt: isOf(glide, plan) } })
        return false
      })
    }
  }
  return found
}

/** What glides the same way before the whistle or after it is none. */
function isOf(
  { kind, firstFrame, lastFrame }: Glide,
  { kind: meant, headSec, glideSec, tailSec }: WhistlePlan
): boolean {
  const [fromMs, toMs] = [1_000 * LEAD_SEC, 1_000 * (LEAD_SEC + headSec + glideSec + tailSec)]
  return kind === meant && lastFrame * HOP_MS > fromMs && firstFrame * HOP_MS < toMs
}

function ofSound(kind: Kind, share: Share): Weighed[] {
  const found: Weighed[] = []
  const recogniser = createRecogniser({
    sampleRateHz: RATE_HZ,
    weigh(glide, traits) {
      if (canBeWhistled(glide, traits)) found.push({ glide, traits })
      return false
    }
  })
  const pieces = (hoursOf(kind, share) * 3_600) / PIECE_SEC
  // After those that whistles are laid over.
  for (let nth = GROUNDS; nth < GROUNDS + pieces; nth++) {
    recogniser.push(pieceAtLevel(kind, 'tune', firsts[share] + nth, PIECE_SEC))
  }
  return found
}
