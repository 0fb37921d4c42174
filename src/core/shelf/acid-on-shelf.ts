// Which acid stands there, for its cautions: as its label says.
import { acidOf } from '../protocol/numbers/acid-of.ts'
import type { BenchAcid } from '../safety/acid-cautions.ts'
import type { Acid } from './thing.ts'

export function benchAcidOf({ acid, name, form, percent }: Acid): BenchAcid {
  const kind = acidOf(acid, name)
  if (kind === 'citric') return form === 'powder' ? 'citric' : 'citric-dissolved'
  return kind === 'acetic' ? { acetic: percent } : 'other'
}
