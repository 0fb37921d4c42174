// Music without a tune: chords, plucked and blown lines, slides, a beat. No piece is imitated.
import type { Chance } from '../chance.ts'
import { edges, fromDb, highPass, RATE_HZ } from '../filters.ts'

type Instrument = {
  /** Level of each partial, dB. */
  partials: number[]
  attackSec: number
  /** Time in which it dies away; none for what is blown or bowed. */
  decaySec: number | null
  vibrato: number
  /** How often a note slides into the next one. */
  slides: number
}

const instruments: Instrument[] = [
  { partials: [0, -6, -10, -14, -18, -22], attackSec: 0.005, decaySec: 0.8, vibrato: 0, slides: 0.02 },
  { partials: [0, -4, -6, -9, -12, -14, -18, -20], attackSec: 0.06, decaySec: null, vibrato: 0.3, slides: 0.15 },
  { partials: [0, -14, -22, -30], attackSec: 0.05, decaySec: null, vibrato: 0.2, slides: 0.08 },
  { partials: [-3, 0, -4, -6, -10, -12], attackSec: 0.04, decaySec: null, vibrato: 0.25, slides: 0.1 },
  { partials: [0, -20, -9, -26, -14], attackSec: 0.03, decaySec: null, vibrato: 0.1, slides: 0.05 }
]
const scale = [0, 2, 4, 5, 7, 9, 11]

export function musicLike(chance: Chance, seconds: number): Float32Array {
  const out = new Float32Array(Math.round(seconds * RATE_HZ))
  const beatSec = chance.between(0.3, 0.75)
  const key = chance.between(45, 57)
  const lines = 1 + Math.floor(chance.unit() * 3)
  for (let which = 0; which < lines; which++)
    melody(out, chance, chance.pick(instruments), key + 12 * Math.floor(chance.between(0, 3.5)), beatSec)
  if (chance.yes(0.7)) chords(out, chance, key, beatSec)
  if (chance.yes(0.6)) drums(out, chance, beatSec)
  return out
}

const hzOf = (note: number): number => 440 * 2 ** ((note - 69) / 12)

function melody(out: Float32Array, chance: Chance, by: Instrument, low: number, beatSec: number): void {
  let degree = Math.floor(chance.unit() * 7)
  const total = out.length / RATE_HZ
  for (let sec = 0; sec < total; ) {
    const length = beatSec * chance.pick([0.25, 0.5, 0.5, 1, 1, 2])
    degree = Math.min(13, Math.max(0, degree + Math.round(chance.between(-3, 3))))
    const note = low + 12 * Math.floor(degree / 7) + (scale[degree % 7] as number)
    const slide = chance.yes(by.slides) ? chance.between(-5, 5) : 0
    if (!chance.yes(0.15)) tone(out, sec, length * chance.between(0.7, 1.05), note, by, chance, slide)
    sec += length
  }
}

function chords(out: Float32Array, chance: Chance, key: number, beatSec: number): void {
  const by = chance.pick(instruments)
  const total = out.length / RATE_HZ
  for (let sec = 0; sec < total; sec += 4 * beatSec) {
    const root = Math.floor(chance.unit() * 7)
    for (const step of [0, 2, 4]) {
      const degree = root + step
      tone(out, sec, 4 * beatSec, key + 12 * Math.floor(degree / 7) + (scale[degree % 7] as number), by, chance, 0)
    }
  }
}

function tone(
  out: Float32Array,
  fromSec: number,
  sec: number,
  note: number,
  by: Instrument,
  chance: Chance,
  slide: number
): void {
  const first = Math.round(fromSec * RATE_HZ)
  const length = Math.round(sec * RATE_HZ)
  const loud = chance.between(0.4, 1)
  const wave = waveOf(by)
  const base = hzOf(note)
  const attack = by.attackSec * RATE_HZ
  const slideFor = 0.6 * length
  let phase = 0
  let hz = base
  let level = 0
  for (let nth = 0; nth < length && first + nth < out.length; nth++) {
    if (nth % 16 === 0) {
      const bend = slide * Math.max(0, 1 - nth / slideFor) + by.vibrato * Math.sin((2 * Math.PI * 5.5 * nth) / RATE_HZ)
      hz = base * 2 ** (bend / 12)
      const fading = by.decaySec === null ? 1 : Math.exp((-3 * nth) / (by.decaySec * RATE_HZ))
      level = loud * edges(nth, length, attack, 0.04 * RATE_HZ) * fading
    }
    phase += hz / RATE_HZ
    phase -= Math.floor(phase)
    out[first + nth] = (out[first + nth] as number) + level * (wave[Math.floor(phase * WAVE)] as number)
  }
}

const WAVE = 1024
const waves = new Map<Instrument, Float32Array>()

/** One turn of the wave, worked out once. */
function waveOf(by: Instrument): Float32Array {
  const known = waves.get(by)
  if (known) return known
  const wave = Float32Array.from({ length: WAVE }, (_, nth) =>
    by.partials.reduce((sum, db, part) => sum + fromDb(db) * Math.sin((2 * Math.PI * (part + 1) * nth) / WAVE), 0)
  )
  waves.set(by, wave)
  return wave
}

function drums(out: Float32Array, chance: Chance, beatSec: number): void {
  const total = out.length / RATE_HZ
  for (let beat = 0; beat * beatSec < total; beat++) {
    const first = Math.round(beat * beatSec * RATE_HZ)
    const bright = highPass(beat % 2 === 0 ? 50 : 2_500)
    for (let nth = 0; nth < 2_400 && first + nth < out.length; nth++) {
      const fading = Math.exp(-nth / 400)
      const thump = beat % 2 === 0 ? Math.sin(2 * Math.PI * (60 + 80 * Math.exp(-nth / 300)) * (nth / RATE_HZ)) : 0
      out[first + nth] = (out[first + nth] as number) + fading * (thump + 0.4 * bright(chance.noise()))
    }
  }
}
