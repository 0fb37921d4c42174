// Lengths of time in three guesses.
import type { Span } from './model.ts'

export const noTime: Span = { leastMs: 0, likelyMs: 0, mostMs: 0 }

export function span(leastMs: number, likelyMs: number, mostMs: number): Span {
  return { leastMs: Math.min(leastMs, likelyMs), likelyMs, mostMs: Math.max(mostMs, likelyMs) }
}

export function sum(spans: Span[]): Span {
  return spans.reduce((a, b) => each(a, b, (x, y) => x + y), noTime)
}

export function longest(spans: Span[]): Span {
  return spans.reduce((a, b) => each(a, b, Math.max), noTime)
}

function each(a: Span, b: Span, join: (x: number, y: number) => number): Span {
  return {
    leastMs: join(a.leastMs, b.leastMs),
    likelyMs: join(a.likelyMs, b.likelyMs),
    mostMs: join(a.mostMs, b.mostMs)
  }
}
