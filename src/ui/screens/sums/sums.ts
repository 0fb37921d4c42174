// All sums of the bench, and how one is found among them.
import { acidSums } from './list/acid.ts'
import { dyeSums } from './list/dye.ts'
import { goodsSums } from './list/goods.ts'
import { heatSums } from './list/heat.ts'
import { uptakeSums } from './list/uptake.ts'
import type { Sum } from './sum.ts'

export const sums: readonly Sum[] = [...dyeSums, ...acidSums, ...goodsSums, ...heatSums, ...uptakeSums]

/** Those in whose title, question or words each of the looked-for words begins a word. */
export function found(looked: string): Sum[] {
  const wanted = wordsOf(looked)
  return sums.filter(({ title, ask, words = '', group }) => {
    const there = wordsOf(`${title} ${ask} ${words} ${group}`)
    return wanted.every((word) => there.some((each) => each.startsWith(word)))
  })
}

function wordsOf(text: string): string[] {
  return text.toLowerCase().match(/[\p{L}\d%/]+/gu) ?? []
}
