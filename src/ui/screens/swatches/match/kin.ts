// What batches are called, and what the yarn and the bath of one came from.
import { useEffect, useState } from 'preact/hooks'
import type { Kitchen } from '../../../kitchen.ts'
import type { Names } from './side.ts'

const none: Names = new Map()

export function useNames(kitchen: Pick<Kitchen, 'book'>): Names {
  const [names, setNames] = useState(none)
  useEffect(() => {
    // Without the book readings go by when they were taken.
    kitchen.book(0, Number.MAX_SAFE_INTEGER).then(
      (lines) => setNames(new Map(lines.map(({ potId, batchName }) => [potId, batchName]))),
      () => {}
    )
  }, [kitchen])
  return names
}

const nobody: readonly string[] = []

export function useParents(kitchen: Pick<Kitchen, 'entries'>, batchId: string | null): readonly string[] {
  const [parents, setParents] = useState(nobody)
  useEffect(() => {
    let here = true
    setParents(nobody)
    if (batchId === null) return
    // Without them any other batch can be chosen all the same.
    kitchen.entries(batchId).then(
      ({ entries }) => {
        const start = entries.find(({ event }) => event.type === 'PotStarted')?.event
        if (!here || start?.type !== 'PotStarted') return
        const { parentBatchId, bath } = start.pot
        setParents([parentBatchId, bath.parentBatchId].filter((id) => id !== null))
      },
      () => {}
    )
    return () => {
      here = false
    }
  }, [kitchen, batchId])
  return parents
}
