// Whistles made up by chance. They are not people: how people whistle at a stove has to be heard from people.
import type { Chance } from './chance.ts'
import { edges, fromDb, levelOf, RATE_HZ, resonator } from './filters.ts'
import { inRoom, type Room, someRoom } from './room.ts'

export type WhistlePlan = {
  kind: 'rise' | 'fall'
  fromHz: number
  semitones: number
  glideSec: number
  /** Held before and after the glide. */
  headSec: number
  tailSec: number
  curve: 'straight' | 'bent at both ends' | 'slow start' | 'slow end'
  /** A small slide into the first pitch, semitones, either way. */
  scoop: number
  wobble: { semitones: number; hz: number }
  tremble: { share: number; hz: number }
  attackSec: number
  releaseSec: number
  /** Louder at the end than at the start by so much. */
  tiltDb: number
  breathDb: number
  secondDb: number
  room: Room | null
}

const LOW_HZ = 700
const HIGH_HZ = 3_600

export type Reach = { semitones: [number, number]; sec: [number, number] }

/** What somebody is asked to whistle. The recogniser is to take 3 to 14 semitones in 0.25 to 1.2 s; its edges are measured apart. */
export const usual: Reach = { semitones: [4, 12], sec: [0.3, 1.1] }

export function someWhistle(
  chance: Chance,
  { semitones: [few, many], sec: [short, long] }: Reach = usual
): WhistlePlan {
  const semitones = chance.octaves(few, many)
  const ratio = 2 ** (semitones / 12)
  const lowHz = chance.octaves(LOW_HZ, HIGH_HZ / ratio)
  const kind = chance.pick(['rise', 'fall'] as const)
  const glideSec = chance.octaves(short, long)
  const held = (): number => (chance.yes(0.5) ? 0 : chance.between(0, 0.15))
  return {
    kind,
    fromHz: kind === 'rise' ? lowHz : lowHz * ratio,
    semitones,
    glideSec,
    headSec: held(),
    tailSec: held(),
    curve: chance.pick(['straight', 'bent at both ends', 'slow start', 'slow end']),
    scoop: chance.yes(0.4) ? chance.between(-0.7, 0.7) : 0,
    wobble: { semitones: chance.between(0, 0.15), hz: chance.between(3, 8) },
    tremble: { share: chance.between(0, 0.25), hz: chance.between(3, 12) },
    attackSec: chance.between(0.02, 0.08),
    releaseSec: chance.between(0.03, 0.12),
    tiltDb: chance.between(-6, 6),
    breathDb: chance.between(-26, -6),
    secondDb: chance.between(-50, -24),
    room: someRoom(chance)
  }
}

/** The part of the way that is gone after a part of the time. */
const curves: Record<WhistlePlan['curve'], (at: number) => number> = {
  straight: (at) => at,
  'bent at both ends': (at) => at * at * (3 - 2 * at),
  'slow start': (at) => at ** 1.7,
  'slow end': (at) => 1 - (1 - at) ** 1.7
}

const TAIL_OF_ROOM_SEC = 0.5

/** Samples at a level (root of the mean square while it is whistled) of 1, with the room's echo behind. */
export function whistleOf(plan: WhistlePlan, chance: Chance): Float32Array {
  const sounding = plan.headSec + plan.glideSec + plan.tailSec
  const length = Math.round(sounding * RATE_HZ)
  const tone = new Float32Array(length + Math.round(TAIL_OF_ROOM_SEC * RATE_HZ))
  const breath = new Float32Array(tone.length)
  const mouth = resonator(plan.fromHz, plan.fromHz / 6)
  const sign = plan.kind === 'rise' ? 1 : -1
  let phase = 0
  let drift = 0
  for (let nth = 0; nth < length; nth++) {
    const sec = nth / RATE_HZ
    const gone = curves[plan.curve](Math.min(1, Math.max(0, (sec - plan.headSec) / plan.glideSec)))
    drift += chance.noise() * 0.002 - drift * 0.0005
    const scoop = plan.scoop * Math.max(0, 1 - sec / 0.05)
    const semitone =
      sign * plan.semitones * gone +
      scoop +
      drift +
      plan.wobble.semitones * Math.sin(2 * Math.PI * plan.wobble.hz * sec)
    const hz = plan.fromHz * 2 ** (semitone / 12)
    phase += (2 * Math.PI * hz) / RATE_HZ
    const loud =
      edges(sec, sounding, plan.attackSec, plan.releaseSec) *
      fromDb(plan.tiltDb * (sec / sounding - 0.5)) *
      (1 - plan.tremble.share * (0.5 + 0.5 * Math.sin(2 * Math.PI * plan.tremble.hz * sec)))
    tone[nth] = loud * (Math.sin(phase) + fromDb(plan.secondDb) * Math.sin(2 * phase))
    if (nth % 32 === 0) mouth.tune(hz, hz / 6)
    const air = chance.noise()
    breath[nth] = loud * (mouth(air) + 0.15 * air)
  }
  const breathGain = (fromDb(plan.breathDb) * levelOf(tone, 0, length)) / (levelOf(breath, 0, length) + 1e-9)
  const dry = tone.map((sample, nth) => sample + breathGain * (breath[nth] as number))
  const level = levelOf(dry, 0, length)
  return inRoom(dry, plan.room, chance).map((sample) => sample / level)
}
