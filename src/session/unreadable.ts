import type { AppendFailure } from './ports.ts'

export function unreadable(error: unknown): AppendFailure {
  const why = error instanceof Error ? error.message : String(error)
  return { ok: false, why: 'lost', say: `The journal can't be read (${why}).` }
}
