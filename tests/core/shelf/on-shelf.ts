// Bottles as the screens see them.
import type { Stock } from '../../../src/core/shelf/thing.ts'
import type { OnShelf } from '../../../src/ui/shelf.ts'
import { stockY } from './bottles.ts'

export function stockAt(
  itemId: string,
  change: Partial<Stock>,
  { left, free }: { left: number; free: number }
): OnShelf {
  const thing = { ...stockY, ...change }
  return {
    item: {
      status: 'here',
      itemId,
      thing,
      addedAtMs: 0,
      making: null,
      marks: [{ kind: 'made', atMs: 0, amount: left, was: null, why: '' }],
      changes: [],
      heard: []
    },
    level: { unit: 'mL', known: left, knownAtMs: 0, drawn: 0, reserved: left - free, left, free, otherUnits: false },
    readOnly: null
  }
}
