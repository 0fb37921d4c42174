// Damages the built-in protocols in their turn and holds every answer to what it must be.
import { readdirSync, readFileSync } from 'node:fs'
import { readProtocol } from '../../../src/core/protocol/read.ts'
import { Chance } from '../../simulation/chance.ts'
import type { Damage } from './damage.ts'
import { readSafely } from './read-safely.ts'

const folder = new URL('../../../protocols/', import.meta.url)
export const builtInTexts = readdirSync(folder)
  .filter((name) => name.endsWith('.yaml'))
  .sort()
  .map((name) => readFileSync(new URL(name, folder), 'utf8'))

/** Every construct in few lines: most built-ins have only some, and a slip seldom meets them. */
export const dense = `strandline: 1
title: Every construct
liquor: 20:1
inputs:
  n: {ask: How often?, kind: count, default: 2, most: 5}
materials:
  dye: {kind: stock, strength: 1 %}
  acid: {kind: acid, strength: 5 %, amount: 2 % owf}
steps:
  - alongside:
      yarn:
        - soak: 30 min
      bath:
        - fill
        - add: {id: A1, amount: 1/2 of acid}
  - for each:
      band: {from: 1, to: n}
      marks: all in
      steps:
        - lower: band
  - for each:
      jar: [J1, J2]
      steps:
        - add:
            of: dye
            amounts:
              J1: 1 % owf
              J2: 2 % owf
  - repeat:
      times: n
      steps:
        - wait: 5 min after all in
  - until:
      ask: {grade: bath, enough: trace}
      at most: 2
      steps:
        - add: 1 g/L of acid
      otherwise:
        - note: {record: residue}
  - choice:
      ask: More?
      answers:
        yes:
          - add: {id: A2, amount: 10 mL of acid}
        no: []
gaps:
  - {from: A1, to: all in, at most: 2 h}
`

export const slowMs = 50
/** A quiet machine reads the longest built-in in some 7 ms: where that takes longer, so may all else. Own measure. */
const slowTimes = slowMs / 7
const longest = builtInTexts.reduce((a, b) => (b.length > a.length ? b : a), '')

export type Tally = { read: number; refused: number; slow: string[] }

/** `times` damages, in each of the ways by turns; throws with seed, number and text at the first answer that is not as it
 * must be. Most texts lose some of their steps first: that makes more kinds of text, in less time. */
export function damageAll(seed: number, times: number, ways: Record<string, Damage>): Map<string, Tally> {
  const chance = new Chance(seed)
  const all = Object.entries(ways)
  const tallies = new Map(all.map(([way]): [string, Tally] => [way, { read: 0, refused: 0, slow: [] }]))
  for (let i = 0; i < times; i++) {
    const [way, damage] = all[i % all.length] as [string, Damage]
    const tally = tallies.get(way) as Tally
    const whole = chance.of(0.2) ? dense : chance.pick(builtInTexts)
    const text = damage(chance.of(0.9) ? withSomeSteps(whole, chance) : whole, chance, builtInTexts)
    const which = `seed ${seed}, number ${i}, ${way}`
    const before = performance.now()
    const { ok } = readOne(text, which)
    if (performance.now() - before > slowMs && isSlow(text)) tally.slow.push(which)
    tally.read++
    if (!ok) tally.refused++
  }
  return tallies
}

function withSomeSteps(text: string, chance: Chance): string {
  const [head = '', steps = ''] = text.split(/(?<=^steps:\n)/m)
  const kept = steps.split(/(?=^ {2}- |^gaps:)/m).filter(() => chance.of(0.25))
  return head + (kept.length > 0 ? kept.join('') : steps)
}

/** The machine has other work to do: what was slow is read again up to three times, each time beside the longest built-in,
 * and only what is slow each time, by the clock and by that measure, is slow. */
function isSlow(text: string): boolean {
  for (let i = 0; i < 3; i++) {
    const ms = timeOf(text)
    if (ms <= slowMs || ms <= slowTimes * timeOf(longest)) return false
  }
  return true
}

function timeOf(text: string): number {
  const before = performance.now()
  readProtocol(text)
  return performance.now() - before
}

function readOne(text: string, which: string): ReturnType<typeof readProtocol> {
  try {
    return readSafely(text)
  } catch (error) {
    throw new Error(`${which}: ${error instanceof Error ? error.stack : error}\n${text}`)
  }
}

/** "line lost 790 of 834 refused", one for each way. */
export function wordsOf(tallies: Map<string, Tally>): string {
  return [...tallies].map(([way, { read, refused }]) => `${way}: ${refused} of ${read} refused`).join('; ')
}
