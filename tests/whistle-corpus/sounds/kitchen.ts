// What sounds in a kitchen beside people and music. All made up; the shapes are from memory, no recording was at hand.
import type { Chance } from '../chance.ts'
import { edges, fromDb, highPass, lowPass, RATE_HZ, resonator } from '../filters.ts'

const samplesOf = (sec: number): number => Math.round(sec * RATE_HZ)
const silence = (sec: number): Float32Array => new Float32Array(samplesOf(sec))

function add(out: Float32Array, at: number, sample: number): void {
  if (at >= 0 && at < out.length) out[at] = (out[at] as number) + sample
}

/** Timers, ovens, doorbells: single beeps, pairs, chirps from one pitch to another, a siren now and then. */
export function beeps(chance: Chance, seconds: number): Float32Array {
  const out = silence(seconds)
  for (let sec = chance.between(0, 1); sec < seconds; sec += chance.octaves(0.4, 4)) {
    const hz = chance.octaves(600, 4_000)
    const other = chance.yes(0.4) ? hz * 2 ** (chance.between(-12, 12) / 12) : hz
    const long = chance.octaves(0.05, 0.6)
    const square = chance.yes(0.5)
    const count = chance.pick([1, 2, 3, 4])
    for (let nth = 0; nth < count; nth++) {
      beep(out, sec, long, nth % 2 === 0 ? hz : other, square)
      sec += long * chance.pick([1, 1.5, 2])
    }
  }
  return out
}

function beep(out: Float32Array, sec: number, long: number, hz: number, square: boolean): void {
  const first = samplesOf(sec)
  const length = samplesOf(long)
  for (let nth = 0; nth < length; nth++) {
    const turn = 2 * Math.PI * hz * (nth / RATE_HZ)
    const third = square && hz * 3 < RATE_HZ / 2 ? Math.sin(3 * turn) / 3 : 0
    add(out, first + nth, edges(nth, length, 60, 60) * (Math.sin(turn) + third))
  }
}

/** Simmers, begins to sing, rises to its pitch and stays, two tones that beat; taken off, its pitch and loudness fall. */
export function kettle(chance: Chance, seconds: number): Float32Array {
  const out = silence(seconds)
  for (let sec = 0; sec < seconds; ) {
    const simmer = chance.between(2, 10)
    const rise = chance.octaves(1.2, 8)
    const sing = chance.octaves(1, 15)
    const fall = chance.octaves(0.5, 3)
    const hz = chance.octaves(900, 3_300)
    const way = chance.between(2, 9)
    const total = simmer + rise + sing + fall
    // A stretch that ends in the middle of a song would be a kettle that falls silent at once: none does.
    if (sec + total > seconds) break
    const steam = resonator(hz, 900)
    const [mix, ratio] = [chance.between(0, 0.7), chance.between(1.05, 1.5)]
    let phase = 0
    let flutter = 0
    for (let nth = 0; nth < total * RATE_HZ && samplesOf(sec) + nth < out.length; nth++) {
      const at = nth / RATE_HZ
      const up = Math.min(1, Math.max(0, (at - simmer) / rise))
      const down = Math.min(1, Math.max(0, (at - simmer - rise - sing) / fall))
      flutter += chance.noise() * 0.004 - flutter * 0.001
      phase += (2 * Math.PI * hz * 2 ** ((way * (Math.sqrt(up) - 1 - down) + flutter) / 12)) / RATE_HZ
      const loud = up * up * (1 - down)
      add(
        out,
        samplesOf(sec) + nth,
        loud * (Math.sin(phase) + mix * Math.sin(ratio * phase)) + 0.3 * (0.2 + up) * (1 - down) * steam(chance.noise())
      )
    }
    sec += total
  }
  return out
}

/** A hood: broad noise that falls off above, the hum of the motor with its harmonics, the tone of the blades. */
export function fan(chance: Chance, seconds: number): Float32Array {
  const out = silence(seconds)
  const dull = lowPass(chance.octaves(300, 3_000))
  const [hum, blades] = [chance.between(45, 62), chance.octaves(150, 1_400)]
  const [humLoud, bladesLoud, rush] = [chance.between(0, 0.3), chance.between(0, 0.25), chance.between(0.05, 0.4)]
  const hiss = highPass(800)
  let hunting = 0
  let phase = 0
  for (let nth = 0; nth < out.length; nth++) {
    hunting += chance.noise() * 1e-4 - hunting * 1e-5
    phase += (2 * Math.PI * blades * (1 + hunting)) / RATE_HZ
    const white = chance.noise()
    const turn = 2 * Math.PI * hum * (nth / RATE_HZ)
    out[nth] =
      dull(white) +
      rush * hiss(white) * 0.3 +
      humLoud * (Math.sin(turn) + 0.5 * Math.sin(2 * turn)) * 0.3 +
      bladesLoud * Math.sin(phase) * 0.3
  }
  return out
}

/** A tap, drops, bubbles that chirp, and a pot being filled, whose tone rises as the room above the water shrinks. */
export function water(chance: Chance, seconds: number): Float32Array {
  const out = silence(seconds)
  const rush = highPass(chance.octaves(300, 2_500))
  const soft = lowPass(chance.octaves(2_000, 7_000))
  const flow = chance.yes(0.7) ? chance.between(0.1, 1) : 0
  const fillSec = chance.between(4, 25)
  const column = resonator(400, 120)
  for (let nth = 0; nth < out.length; nth++) {
    const white = chance.noise()
    if (nth % 160 === 0) {
      const full = (nth / RATE_HZ / fillSec) % 1
      column.tune(250 / (1 - 0.85 * full), 90 + 200 * full)
    }
    out[nth] = flow * (soft(rush(white)) + 0.6 * column(white))
  }
  for (let sec = 0; sec < seconds; sec += chance.octaves(0.01, 0.6)) bubble(out, sec, chance)
  return out
}

/** Rings and rises as it comes up (Minnaert's bubble): tens of milliseconds. */
function bubble(out: Float32Array, sec: number, chance: Chance): void {
  const first = samplesOf(sec)
  const length = samplesOf(chance.octaves(0.015, 0.12))
  const [hz, rise, loud] = [chance.octaves(400, 3_000), chance.between(0, 0.8), chance.octaves(0.1, 1.5)]
  let phase = 0
  for (let nth = 0; nth < length; nth++) {
    phase += (2 * Math.PI * hz * (1 + (rise * nth) / length)) / RATE_HZ
    add(out, first + nth, loud * Math.exp((-4 * nth) / length) * Math.sin(phase))
  }
}

/** A knife on a board: knocks, dull and woody, two to eight a second. */
export function chopping(chance: Chance, seconds: number): Float32Array {
  const out = silence(seconds)
  let sec = 0
  while (sec < seconds) {
    const strokes = 3 + Math.floor(chance.unit() * 25)
    const everySec = chance.octaves(0.12, 0.5)
    const woods = [chance.octaves(150, 500), chance.octaves(500, 1_200), chance.octaves(1_200, 3_000)]
    for (let nth = 0; nth < strokes; nth++) {
      knock(out, sec, woods, chance)
      sec += everySec * chance.between(0.85, 1.15)
    }
    sec += chance.between(0.3, 3)
  }
  return out
}

function knock(out: Float32Array, sec: number, woods: number[], chance: Chance): void {
  const first = samplesOf(sec)
  const rings = woods.map((hz) => resonator(hz * chance.between(0.95, 1.05), hz / 6))
  const loud = chance.between(0.5, 1)
  for (let nth = 0; nth < 1_600; nth++) {
    const struck = nth < 40 ? chance.noise() * 4 : 0
    add(
      out,
      first + nth,
      loud * rings.reduce((sum, ring) => sum + ring(struck), 0) + 0.3 * struck * Math.exp(-nth / 20)
    )
  }
}

/** Lids, spoons, pots: modes that ring on, a lid that settles faster and faster, metal dragged over metal. */
export function clanks(chance: Chance, seconds: number): Float32Array {
  const out = silence(seconds)
  for (let sec = 0; sec < seconds; sec += chance.octaves(0.1, 2.5)) {
    const modes = Array.from({ length: 3 + Math.floor(chance.unit() * 6) }, () => ({
      hz: chance.octaves(300, 6_500),
      decaySec: chance.octaves(0.03, 1.2),
      loud: fromDb(chance.between(-20, 0)),
      // A wet or swinging vessel bends its tone.
      bend: chance.yes(0.15) ? chance.between(-0.12, 0.12) : 0
    }))
    const hits = chance.yes(0.2) ? 8 : 1
    let gap = chance.between(0.1, 0.3)
    for (let nth = 0; nth < hits; nth++) {
      for (const mode of modes) ring(out, sec, mode)
      if (hits > 1) sec += gap
      gap *= 0.85
    }
    if (chance.yes(0.1)) scrape(out, sec, chance)
  }
  return out
}

function ring(
  out: Float32Array,
  sec: number,
  { hz, decaySec, loud, bend }: { hz: number; decaySec: number; loud: number; bend: number }
): void {
  const first = samplesOf(sec)
  const length = samplesOf(Math.min(2, 3 * decaySec))
  let phase = 0
  let level = loud
  const fading = Math.exp(-1 / (decaySec * RATE_HZ))
  for (let nth = 0; nth < length; nth++) {
    phase += (2 * Math.PI * hz * (1 + (bend * nth) / length)) / RATE_HZ
    level *= fading
    add(out, first + nth, level * Math.sin(phase))
  }
}

function scrape(out: Float32Array, sec: number, chance: Chance): void {
  const first = samplesOf(sec)
  const length = samplesOf(chance.between(0.15, 0.8))
  const [from, to] = [chance.octaves(800, 4_000), chance.octaves(800, 4_000)]
  const squeal = resonator(from, 150)
  for (let nth = 0; nth < length; nth++) {
    if (nth % 80 === 0) squeal.tune(from + ((to - from) * nth) / length, 150)
    add(out, first + nth, edges(nth, length, 800, 800) * (squeal(chance.noise()) * 3 + 0.2 * chance.noise()))
  }
}
