// Verdicts on skeins for the book's screens. They lie beside the batches' own journals.
import { useEffect, useState } from 'preact/hooks'
import type { Kitchen } from '../../kitchen.ts'
import type { KeptSwatches } from '../../swatches.ts'
import { keptSwatches } from './kept-swatches.ts'

type Found = Pick<KeptSwatches, 'judgements' | 'problem'>

const none: Found = { judgements: [], problem: null }

/** Of one batch, or of all there are (null). */
export async function readJudgements(kitchen: Kitchen, potId: string | null): Promise<Found> {
  return kitchen.swatches ? keptSwatches(kitchen, potId) : none
}

/** Null while they are read. */
export function useJudgements(kitchen: Kitchen, potIds: readonly string[]): Found | null {
  const [read, setRead] = useState<Found | null>(null)
  const asked = potIds.join(' ')
  useEffect(() => {
    let here = true
    setRead(null)
    Promise.all(potIds.map((potId) => readJudgements(kitchen, potId))).then((all) => {
      const judgements = all.flatMap((each) => each.judgements)
      const problem = all.find((each) => each.problem !== null)?.problem ?? null
      if (here) setRead({ judgements, problem })
    })
    return () => {
      here = false
    }
  }, [kitchen, asked])
  return read
}
