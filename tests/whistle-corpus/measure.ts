// What is counted: whistles heard, heard the wrong way round, and heard where there was none.
import { createRecogniser, type Heard, type RecogniserOptions } from '../../src/shell/whistle/recogniser.ts'
import { fromDb, levelOf, RATE_HZ } from './filters.ts'
import { type Kind, piece, whistleChance } from './kinds.ts'
import type { Part } from './sounds/speech.ts'
import { type Reach, someWhistle, type WhistlePlan, whistleOf } from './whistle.ts'

type Weigh = RecogniserOptions['weigh']

export const LEAD_SEC = 0.6
const AFTER_SEC = 0.6
/** A stretch of the sound from which a place is taken for each whistle. */
const GROUND_SEC = 40

export type Mixed = { plan: WhistlePlan; samples: Float32Array }

export type Grounds = (nth: number) => Float32Array

/** A few stretches of a kind, each at a level (root of the mean square over all of it) of 1. */
export function groundsOf(kind: Kind, part: Part, count: number, first = 0): Grounds {
  const made = new Map<number, Float32Array>()
  return (nth) => {
    const which = nth % count
    const known = made.get(which)
    if (known) return known
    const sound = piece(kind, part, first + which, GROUND_SEC)
    const level = levelOf(sound) + 1e-9
    const ground = sound.map((sample) => sample / level)
    made.set(which, ground)
    return ground
  }
}

/** The nth whistle of a part in the sound, `db` over the sound's level. */
export function mixed(grounds: Grounds, part: Part, nth: number, db: number, reach?: Reach): Mixed {
  const chance = whistleChance(part, nth)
  const plan = someWhistle(chance, reach)
  const whistle = whistleOf(plan, chance)
  const ground = grounds(nth)
  const lead = Math.round(LEAD_SEC * RATE_HZ)
  const length = lead + whistle.length + Math.round(AFTER_SEC * RATE_HZ)
  const from = Math.floor(chance.unit() * (ground.length - length))
  const samples = ground.slice(from, from + length)
  const gain = fromDb(db)
  whistle.forEach((sample, at) => {
    samples[lead + at] = (samples[lead + at] as number) + gain * sample
  })
  // A tenth of full scale for the sound: any level will do, the recogniser does not go by it.
  return { plan, samples: samples.map((sample) => sample * 0.1) }
}

export function hear(samples: Float32Array, weigh?: Weigh): Heard[] {
  const recogniser = createRecogniser(weigh ? { sampleRateHz: RATE_HZ, weigh } : { sampleRateHz: RATE_HZ })
  return recogniser.push(samples)
}

export type Hits = { whistles: number; hit: number; wrong: number; twice: number }

export const noHits = (): Hits => ({ whistles: 0, hit: 0, wrong: 0, twice: 0 })

/** A hit is the right direction; any wrong one beside it makes it wrong. */
export function count(hits: Hits, { plan, samples }: Mixed, weigh?: Weigh): Hits {
  const heard = hear(samples, weigh)
  const wrong = heard.some(({ kind }) => kind !== plan.kind)
  const right = heard.filter(({ kind }) => kind === plan.kind).length
  return {
    whistles: hits.whistles + 1,
    hit: hits.hit + (!wrong && right > 0 ? 1 : 0),
    wrong: hits.wrong + (wrong ? 1 : 0),
    twice: hits.twice + (!wrong && right > 1 ? 1 : 0)
  }
}

/** At a level of a tenth of full scale. */
export function pieceAtLevel(kind: Kind, part: Part, nth: number, seconds: number): Float32Array {
  const sound = piece(kind, part, nth, seconds)
  const level = levelOf(sound) + 1e-9
  return sound.map((sample) => (sample * 0.1) / level)
}

export type Quiet = { seconds: number; heard: Heard[]; cpuMs: number }

export const PIECE_SEC = 60

/** So many hours of a kind of sound without a whistle, and what was heard in it. `after`: hours that are passed over, where
 * what was heard in them was heeded since. */
export function listen(kind: Kind, part: Part, hours: number, after = 0, weigh?: Weigh): Quiet {
  const found: Quiet = { seconds: 0, heard: [], cpuMs: 0 }
  const recogniser = createRecogniser(weigh ? { sampleRateHz: RATE_HZ, weigh } : { sampleRateHz: RATE_HZ })
  // Other pieces than those that whistles are mixed with.
  const first = 1_000 + Math.round((after * 3_600) / PIECE_SEC)
  for (let nth = first; found.seconds < hours * 3_600; nth++) {
    const sound = pieceAtLevel(kind, part, nth, PIECE_SEC)
    const startMs = performance.now()
    found.heard.push(...recogniser.push(sound))
    found.cpuMs += performance.now() - startMs
    found.seconds += PIECE_SEC
  }
  return found
}
