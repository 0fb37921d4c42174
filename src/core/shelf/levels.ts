// What is left of everything on the shelf: worked out, never written down. Known last, less what was drawn since.
import type { PotState } from '../pot/state.ts'
import { type Draw, poured } from './draws.ts'
import type { Shelved } from './state.ts'
import { stillNeeded } from './still-needed.ts'
import { unitOf } from './thing.ts'

/** What one pot drew: the line beside its summary. */
export type PotDraws = { potId: string; draws: readonly Draw[] }

/** In the thing's own unit (thing.ts). `left` below 0: more was drawn than was there, so the level is wrong. `free`: what is
 * left once the running pots have had theirs. */
export type Level = {
  unit: 'mL' | 'g'
  /** When it was last made, measured or told, and how much there was. */
  known: number
  knownAtMs: number
  drawn: number
  reserved: number
  left: number
  free: number
  /** Drawn in another unit than it is counted in: not taken off. */
  otherUnits: boolean
}

/** The level of each thing that is counted and whose level was ever told, by its id. */
export function leftOn(
  items: readonly Shelved[],
  pots: readonly PotDraws[],
  running: readonly PotState[]
): Map<string, Level> {
  const draws = new Map<string, Draw[]>()
  const enter = (draw: Draw): void => {
    const of = draws.get(draw.itemId)
    if (of) of.push(draw)
    else draws.set(draw.itemId, [draw])
  }
  for (const pot of pots) pot.draws.forEach(enter)
  items.flatMap(drawnByMaking).forEach(enter)
  const reserved = reservedBy(running, pots)
  const levels = new Map<string, Level>()
  for (const item of items) {
    const level = levelOf(item, draws.get(item.itemId) ?? [], reserved.get(item.itemId) ?? 0)
    if (level !== null) levels.set(item.itemId, level)
  }
  return levels
}

function levelOf({ thing, marks }: Shelved, draws: readonly Draw[], reserved: number): Level | null {
  const unit = unitOf(thing)
  const at = marks.findLastIndex(({ kind }) => kind !== 'refilled')
  const last = marks[at]
  if (unit === null || last === undefined) return null
  // Its own entries come in their order; a pot's come by their time, for they lie in another journal.
  const refilled = sum(marks.slice(at + 1))
  const mine = draws.filter(({ atMs }) => atMs > last.atMs)
  const drawn = sum(mine.filter((draw) => draw.unit === unit))
  const left = last.amount + refilled - drawn
  const otherUnits = mine.some((draw) => draw.unit !== unit && draw.unit !== 'use' && draw.amount > 0)
  const known = { unit, known: last.amount + refilled, knownAtMs: last.atMs }
  return { ...known, drawn, reserved, left, free: left - reserved, otherUnits }
}

/** What the running pots may still take of each thing, by its id. */
export function reservedBy(running: readonly PotState[], pots: readonly PotDraws[]): Map<string, number> {
  const reserved = new Map<string, number>()
  for (const state of running) {
    if (state.status !== 'running' && state.status !== 'held') continue
    const drawn = pots.find(({ potId }) => potId === state.pot.potId)?.draws ?? []
    for (const [material, { amount }] of stillNeeded(state)) {
      const bottles = state.programme.given?.materials[material]?.shelf ?? []
      const had = sum(drawn.filter((draw) => bottles.some(({ itemId }) => itemId === draw.itemId)))
      for (const { itemId, amount: gives } of poured(bottles, had, amount)) {
        reserved.set(itemId, (reserved.get(itemId) ?? 0) + gives)
      }
    }
  }
  return reserved
}

/** A stock that was thinned or mixed drew from the stocks it was made of. */
export function drawnByMaking({ making, marks }: Shelved): Draw[] {
  const made = marks.find(({ kind }) => kind === 'made')
  if (making === null || made === undefined) return []
  const { atMs } = made
  return making.from.map(({ itemId, volumeML }) => ({ itemId, atMs, amount: volumeML, unit: 'mL' }))
}

function sum(all: readonly { amount: number }[]): number {
  return all.reduce((total, { amount }) => total + amount, 0)
}
