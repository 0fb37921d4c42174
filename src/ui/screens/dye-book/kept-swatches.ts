import type { Kitchen } from '../../kitchen.ts'
import type { KeptSwatches } from '../../swatches.ts'

/** What was found of a batch's skein; what stands in the way of reading it is said in it. */
export async function keptSwatches(kitchen: Kitchen, potId: string): Promise<KeptSwatches> {
  const failed = { judgements: [], read: null, problem: 'Verdicts on the skein can’t be opened.' }
  try {
    return (await (await kitchen.swatches?.())?.kept(potId)) ?? failed
  } catch {
    return failed
  }
}
