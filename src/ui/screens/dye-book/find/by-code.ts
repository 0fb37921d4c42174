// The code on a tag leads to its batch at once, however it came into the field: scanned, pasted or typed.
import { readCode } from '../../../../core/record/batch-code.ts'
import type { Kitchen } from '../../../kitchen.ts'
import { recordRoute } from '../routes.ts'

/** Goes to the batch of a code. What there is to say instead, or null: it went there, or the words are no code. */
export async function openByCode(kitchen: Kitchen, words: string): Promise<string | null> {
  const code = readCode(words)
  if (code.kind === 'none') return null
  if (code.kind === 'other') return `That is the code of a ${code.what}, not of a batch.`
  const { entries, damaged } = await kitchen.entries(code.potId)
  if (entries.length + damaged.length === 0) return 'No batch with this code is on this device.'
  kitchen.go(recordRoute(code.potId))
  return null
}
