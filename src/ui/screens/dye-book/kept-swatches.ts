import type { Kitchen } from '../../kitchen.ts'
import type { KeptSwatches } from '../../swatches.ts'

/** What was found of a batch's skein, or of all there are (null). Where it can't be read, that is said and nothing thrown:
 * no screen stays empty for it. */
export async function keptSwatches(kitchen: Kitchen, potId: string | null): Promise<KeptSwatches> {
  const nothing = { judgements: [], comparisons: [], readings: [], read: null }
  const failed = { ...nothing, problem: 'Verdicts on skeins can’t be opened.' }
  try {
    return (await (await kitchen.swatches?.())?.kept(potId)) ?? failed
  } catch {
    return failed
  }
}
