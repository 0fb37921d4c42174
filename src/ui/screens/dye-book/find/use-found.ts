// All lines of the book with what their journals say, ready to be looked through.
import { useEffect, useState } from 'preact/hooks'
import { type Found, type Looked, lookable } from '../../../../core/record/find.ts'
import { foundWord, latestByBatch } from '../../../../core/record/skein-verdict.ts'
import type { BookLine, Kitchen } from '../../../kitchen.ts'
import { readJudgements } from '../use-judgements.ts'

/** `unread`: how many journals are still to be looked through. `failed`: why that stopped, if it did.
 * `skeinProblem`: what is wrong with the verdicts on skeins. */
export type WholeBook = { all: Looked<BookLine>[]; unread: number; skeinProblem: string | null; failed?: string }

/** So many journals are looked through between two drawings. */
const DRAW_EVERY = 64

/** Null until `wanted`, and while the lines are read. */
export function useWholeBook(kitchen: Kitchen, wanted: boolean): WholeBook | null {
  const [book, setBook] = useState<WholeBook | null>(null)
  useEffect(() => {
    if (!wanted) return
    const reading = { here: true }
    readBook(kitchen, (next) => {
      if (reading.here) setBook(next)
      return reading.here
    }).catch((error: unknown) => {
      const failed = error instanceof Error ? error.message : String(error)
      if (reading.here) setBook((was) => ({ ...(was ?? { all: [], unread: 0, skeinProblem: null }), failed }))
    })
    return () => {
      reading.here = false
    }
  }, [kitchen, wanted])
  return book
}

async function readBook(kitchen: Kitchen, tell: (book: WholeBook) => boolean): Promise<void> {
  const found = await kitchen.found?.()
  const [lines, kept, skeins] = await Promise.all([
    kitchen.book(0, Number.MAX_SAFE_INTEGER),
    found?.kept() ?? new Map<string, Found>(),
    readJudgements(kitchen, null)
  ])
  const latest = latestByBatch(skeins.judgements)
  const looked = (line: BookLine, what: Found | null): Looked<BookLine> => {
    const verdict = latest.get(line.potId)
    return lookable(line, what, verdict ? foundWord(verdict) : '')
  }
  const all = lines.map((line) => looked(line, kept.get(line.potId) ?? null))
  const unread = lines.filter((line) => kept.get(line.potId)?.entries !== line.entries)
  let left = found ? unread.length : 0
  const now = (): WholeBook => ({ all: [...all], unread: left, skeinProblem: skeins.problem })
  if (!tell(now()) || left === 0) return
  const placeOf = new Map(lines.map((line, i) => [line.potId, i]))
  let undrawn = 0
  await found?.lookThrough(unread, (more) => {
    for (const each of more) {
      const place = placeOf.get(each.potId)
      const line = place === undefined ? undefined : lines[place]
      if (place !== undefined && line) all[place] = looked(line, each)
    }
    left -= more.length
    undrawn += more.length
    if (undrawn < DRAW_EVERY && left > 0) return true
    undrawn = 0
    return tell(now())
  })
}
