// The form worked out: its programme, its numbers, its cautions, and what is short on the shelf.
import { useMemo } from 'preact/hooks'
import { type KeptNumbers, keptOf } from '../../../core/protocol/numbers/kept.ts'
import type { Numbers } from '../../../core/protocol/numbers/numbers.ts'
import type { Units } from '../../../core/quantity/index.ts'
import { cautionsBeforeStart } from '../../../core/safety/before-start.ts'
import type { Caution } from '../../../core/safety/caution.ts'
import type { Kitchen, StoredProtocol } from '../../kitchen.ts'
import { FREE_ID } from '../../parts/free-pot.ts'
import type { StartDraft } from '../../parts/start-draft.ts'
import { unitsOf } from '../../parts/units-of.ts'
import type { OnShelf } from '../../shelf.ts'
import { type Short, type WorkedFromShelf, workOutFromShelf } from './from-shelf.ts'
import { numbersOfDraft, workOutFree } from './programme.ts'
import { shortWords } from './shorts.tsx'

export type FormWorked = {
  worked: WorkedFromShelf
  /** Null: there is no programme yet, or a free pot has none. */
  numbers: Numbers | null
  /** As the pot's record keeps them. */
  kept: KeptNumbers | null
  cautions: Caution[]
  /** What would be short with that changed. */
  shortsOf: (change: Partial<StartDraft>) => readonly Short[]
}

/** `potName`: what the pot is called; `things` null: the shelf is not read yet. */
export function useWorked(
  kitchen: Kitchen,
  { id, protocol }: StoredProtocol,
  draft: StartDraft,
  potName: string,
  things: readonly OnShelf[] | null
): FormWorked {
  const { boilsAt } = kitchen.settings.value
  const units = unitsOf(kitchen.settings.value)
  const free = id === FREE_ID
  const worked = useMemo(
    () =>
      free
        ? { ...workOutFree(protocol, draft, units), shorts: [] }
        : workOutFromShelf(protocol, draft, units, boilsAt, things),
    [protocol, free, draft, units.mass, units.temperature, units.volume, boilsAt, things]
  )
  const { programme, shorts, inputs } = worked
  const numbers = useMemo(
    () => (programme && !free ? numbersOfDraft(protocol, draft, units, programme) : null),
    [programme, free]
  )
  const cautions = useMemo(() => (programme ? cautionsBeforeStart(programme) : []), [programme])
  return {
    worked,
    numbers,
    kept: numbers && keptWith(keptOf(numbers, inputs.boilC, units), shorts, potName, units),
    cautions,
    shortsOf: (change) => workOutFromShelf(protocol, { ...draft, ...change }, units, boilsAt, things).shorts
  }
}

/** What was short when the pot was started all the same stands among its flags. */
function keptWith(kept: KeptNumbers, shorts: readonly Short[], potName: string, units: Units): KeptNumbers {
  const told = shorts.map((short) => ({ code: 'short', say: shortWords(short, potName, units) }))
  return { ...kept, flags: [...told, ...kept.flags] }
}
