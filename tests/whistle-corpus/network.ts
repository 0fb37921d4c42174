// A network of one hidden layer, fitted by Adam (Kingma and Ba 2015, "Adam: a method for stochastic optimization", algorithm
// 1, from memory) on the logistic loss. Plain: it is made once, and the app only carries its weights.
import type { Chance } from './chance.ts'

export type Example = { whistled: boolean; inputs: number[] }

export type Network = {
  from: number[]
  spread: number[]
  hidden: { bias: number; inputs: number[]; out: number }[]
  base: number
}

const HIDDEN = 32
const ROUNDS = 120
const BATCH = 512
const RATE = 0.01
const SMALL = 1e-3
/** What is no whistle counts so much more than its share: a false one is worse than a missed one. */
const OTHERS = 4
const FAR = 4

export function scoreOf({ from, spread, hidden, base }: Network, inputs: readonly number[]): number {
  return outOf({ hidden, base }, scaled(inputs, from, spread))
}

export function fitted(examples: readonly Example[], chance: Chance): Network {
  const size = examples[0]?.inputs.length ?? 0
  const column = (nth: number): number[] => examples.map(({ inputs }) => inputs[nth] as number)
  const from = Array.from({ length: size }, (_, nth) => mean(column(nth)))
  const spread = from.map((middle, nth) => Math.sqrt(mean(column(nth).map((value) => (value - middle) ** 2))) + 1e-9)
  const rows = examples.map(({ inputs }) => Float64Array.from(scaled(inputs, from, spread)))
  const right = examples.filter(({ whistled }) => whistled).length
  const others = (OTHERS * right) / Math.max(1, examples.length - right)
  // All that is fitted lies in one row: the inputs' weights and the bias of each hidden one, their outputs, the base.
  const width = size + 1
  const all = new Float64Array(HIDDEN * width + HIDDEN + 1)
  for (let nth = 0; nth < HIDDEN * width; nth++) if (nth % width < size) all[nth] = normal(chance) / Math.sqrt(size)
  for (let nth = 0; nth < HIDDEN; nth++) all[HIDDEN * width + nth] = normal(chance) / Math.sqrt(HIDDEN)
  const mean1 = new Float64Array(all.length)
  const mean2 = new Float64Array(all.length)
  const order = rows.map((_, nth) => nth)
  let step = 0
  for (let round = 0; round < ROUNDS; round++) {
    shuffle(order, chance)
    const rate = RATE * 0.5 * (1 + Math.cos((Math.PI * round) / ROUNDS))
    for (let at = 0; at < order.length; at += BATCH) {
      const batch = order.slice(at, at + BATCH)
      const slope = new Float64Array(all.length)
      for (const nth of batch) {
        const { whistled } = examples[nth] as Example
        addSlope(slope, all, rows[nth] as Float64Array, whistled ? 1 : 0, (whistled ? 1 : others) / batch.length)
      }
      step += 1
      for (let nth = 0; nth < all.length; nth++) {
        const s = (slope[nth] as number) + SMALL * (all[nth] as number)
        mean1[nth] = 0.9 * (mean1[nth] as number) + 0.1 * s
        mean2[nth] = 0.999 * (mean2[nth] as number) + 0.001 * s * s
        const [m, v] = [(mean1[nth] as number) / (1 - 0.9 ** step), (mean2[nth] as number) / (1 - 0.999 ** step)]
        all[nth] = (all[nth] as number) - (rate * m) / (Math.sqrt(v) + 1e-8)
      }
    }
  }
  return { from, spread, ...layersOf(all, size) }
}

function layersOf(all: Float64Array, size: number): Pick<Network, 'hidden' | 'base'> {
  const width = size + 1
  const hidden = Array.from({ length: HIDDEN }, (_, nth) => ({
    bias: all[nth * width + size] as number,
    inputs: [...all.slice(nth * width, nth * width + size)],
    out: all[HIDDEN * width + nth] as number
  }))
  return { hidden, base: all[all.length - 1] as number }
}

/** Plain loops over flat rows: this is done some millions of times. */
function addSlope(slope: Float64Array, all: Float64Array, row: Float64Array, truth: number, weight: number): void {
  const size = row.length
  const width = size + 1
  const outs = HIDDEN * width
  const inner = new Float64Array(HIDDEN)
  let score = all[all.length - 1] as number
  for (let nth = 0; nth < HIDDEN; nth++) {
    let sum = all[nth * width + size] as number
    for (let at = 0; at < size; at++) sum += (row[at] as number) * (all[nth * width + at] as number)
    inner[nth] = Math.tanh(sum)
    score += (inner[nth] as number) * (all[outs + nth] as number)
  }
  const off = (1 / (1 + Math.exp(-score)) - truth) * weight
  slope[all.length - 1] = (slope[all.length - 1] as number) + off
  for (let nth = 0; nth < HIDDEN; nth++) {
    const value = inner[nth] as number
    slope[outs + nth] = (slope[outs + nth] as number) + off * value
    const back = off * (all[outs + nth] as number) * (1 - value * value)
    const first = nth * width
    for (let at = 0; at < size; at++) {
      slope[first + at] = (slope[first + at] as number) + back * (row[at] as number)
    }
    slope[first + size] = (slope[first + size] as number) + back
  }
}

function outOf({ hidden, base }: Pick<Network, 'hidden' | 'base'>, row: readonly number[]): number {
  return hidden.reduce((sum, { bias, inputs, out }) => {
    const inner = inputs.reduce((so, weight, nth) => so + weight * (row[nth] as number), bias)
    return sum + out * Math.tanh(inner)
  }, base)
}

function scaled(inputs: readonly number[], from: readonly number[], spread: readonly number[]): number[] {
  return inputs.map((input, nth) => {
    const away = (input - (from[nth] as number)) / (spread[nth] as number)
    return Math.max(-FAR, Math.min(FAR, away))
  })
}

function shuffle(order: number[], chance: Chance): void {
  for (let nth = order.length - 1; nth > 0; nth--) {
    const other = Math.floor(chance.unit() * (nth + 1))
    const [a, b] = [order[nth] as number, order[other] as number]
    order[nth] = b
    order[other] = a
  }
}

/** Box and Muller. */
function normal(chance: Chance): number {
  return Math.sqrt(-2 * Math.log(chance.unit() + 1e-12)) * Math.cos(2 * Math.PI * chance.unit())
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length)
}
