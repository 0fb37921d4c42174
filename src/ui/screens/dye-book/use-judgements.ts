// Verdicts on skeins for the book's screens. They lie beside the batches' own journals.
import { useEffect, useState } from 'preact/hooks'
import type { Kitchen } from '../../kitchen.ts'
import type { KeptSwatches } from '../../swatches.ts'

type Found = Pick<KeptSwatches, 'judgements' | 'problem'>

const none: Found = { judgements: [], problem: null }

/** Of one batch, or of all there are (null). Where they can't be read, that is said and nothing thrown: no screen stays
 * empty for it. */
export async function readJudgements(kitchen: Kitchen, potId: string | null): Promise<Found> {
  if (!kitchen.swatches) return none
  try {
    return await (await kitchen.swatches()).kept(potId)
  } catch {
    return { judgements: [], problem: 'Verdicts on skeins can’t be opened.' }
  }
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
