import type { AppendFailure } from '../../session/ports.ts'

/** What a broken write means, in words for the red strip. */
export function appendFailure(error: unknown): AppendFailure {
  const name = (error as { name?: string } | null)?.name
  if (name === 'ConstraintError') return { ok: false, why: 'conflict' }
  if (name === 'QuotaExceededError') {
    return { ok: false, why: 'full', say: 'The storage of this device is full. Free some space, then save again.' }
  }
  if (name === 'VersionError') {
    return { ok: false, why: 'lost', say: 'A newer Strandline has been here. Reload this page.' }
  }
  const detail = error instanceof Error && error.message !== '' ? ` (${error.message})` : ''
  return { ok: false, why: 'lost', say: `The journal can't be written${detail}.` }
}
