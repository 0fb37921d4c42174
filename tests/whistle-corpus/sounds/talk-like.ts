// Talk without words: a buzz through four formants that move from vowel to vowel, with hisses, stops and pauses.
import type { Chance } from '../chance.ts'
import { highPass, RATE_HZ, type Resonator, resonator } from '../filters.ts'

/** First three formants of vowels, Hz; from memory of the textbook table for grown men. */
const vowels = [
  [270, 2290, 3010],
  [390, 1990, 2550],
  [530, 1840, 2480],
  [660, 1720, 2410],
  [730, 1090, 2440],
  [570, 840, 2410],
  [440, 1020, 2240],
  [300, 870, 2240],
  [640, 1190, 2390],
  [490, 1350, 1690]
] as const

type Voice = { hz: number; tract: number; breath: number; liveliness: number }

const STEP = 80

/** `seconds` of one or two people talking. */
export function talkLike(chance: Chance, seconds: number): Float32Array {
  const out = new Float32Array(Math.round(seconds * RATE_HZ))
  const voices = Array.from({ length: chance.yes(0.4) ? 2 : 1 }, () => someVoice(chance))
  let at = 0
  while (at < out.length) {
    at = phrase(out, at, chance.pick(voices), chance)
    at += Math.round(chance.octaves(0.15, 1.5) * RATE_HZ)
  }
  return out
}

function someVoice(chance: Chance): Voice {
  // Men, women, children.
  const [low, high, tract] = chance.pick([
    [85, 150, 1],
    [160, 260, 1.15],
    [250, 400, 1.3]
  ] as const)
  return { hz: chance.octaves(low, high), tract, breath: chance.between(0.02, 0.2), liveliness: chance.between(1, 5) }
}

function phrase(out: Float32Array, from: number, voice: Voice, chance: Chance): number {
  let at = from
  const syllables = 2 + Math.floor(chance.unit() * 12)
  // An "ooh" or "hey": one long vowel with a wide swing of the voice.
  if (chance.yes(0.08))
    return vowel(
      out,
      at,
      { ...voice, hz: voice.hz * chance.between(1, 1.8), liveliness: 9 },
      chance,
      chance.between(0.3, 0.9)
    )
  for (let nth = 0; nth < syllables && at < out.length; nth++) {
    const fallen = { ...voice, hz: voice.hz * (1.1 - (0.25 * nth) / syllables) }
    if (chance.yes(0.5)) at = hiss(out, at, chance)
    else at += Math.round(chance.between(0.01, 0.08) * RATE_HZ)
    at = vowel(out, at, fallen, chance, chance.between(0.06, 0.28))
  }
  return at
}

function hiss(out: Float32Array, from: number, chance: Chance): number {
  const length = Math.round(chance.between(0.02, 0.14) * RATE_HZ)
  const shape = resonator(chance.octaves(2_000, 6_500), chance.between(800, 2_500))
  const loud = chance.between(0.2, 1)
  for (let nth = 0; nth < length && from + nth < out.length; nth++) {
    out[from + nth] = loud * shape(chance.noise()) * Math.sin((Math.PI * nth) / length)
  }
  return from + length
}

function vowel(out: Float32Array, from: number, voice: Voice, chance: Chance, seconds: number): number {
  const length = Math.round(seconds * RATE_HZ)
  const [first, last] = [chance.pick(vowels), chance.pick(vowels)]
  const formants: Resonator[] = [
    resonator(500, 60),
    resonator(1500, 90),
    resonator(2500, 130),
    resonator(3500 * voice.tract, 200)
  ]
  const bright = highPass(300)
  const [swing, bend] = [chance.noise() * voice.liveliness, chance.noise() * voice.liveliness]
  let phase = 0
  let hz = voice.hz
  for (let nth = 0; nth < length && from + nth < out.length; nth++) {
    const gone = nth / length
    if (nth % STEP === 0) {
      hz = voice.hz * 2 ** ((swing * gone + bend * gone * (1 - gone) * 2 + chance.noise() * 0.15) / 12)
      for (let which = 0; which < 3; which++) {
        const formantHz = ((first[which] as number) * (1 - gone) + (last[which] as number) * gone) * voice.tract
        ;(formants[which] as Resonator).tune(Math.min(7_000, formantHz), 60 + formantHz * 0.04)
      }
    }
    phase += hz / RATE_HZ
    if (phase >= 1) phase -= 1
    // A sawtooth that falls off above: near enough to what the folds of the throat give.
    const buzz = 1 - 2 * phase + voice.breath * chance.noise()
    const [f1, f2, f3, f4] = formants as [Resonator, Resonator, Resonator, Resonator]
    const said = f1(buzz) + 0.6 * f2(buzz) + 0.35 * f3(buzz) + 0.2 * f4(buzz)
    out[from + nth] = (out[from + nth] as number) + bright(said) * Math.sin(Math.PI * gone) ** 0.5
  }
  return from + length
}
