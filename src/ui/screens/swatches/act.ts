import type { Signal } from '@preact/signals'
import type { Kitchen } from '../../kitchen.ts'
import type { KitchenSwatches } from '../../swatches.ts'
import type { Draft } from './draft.ts'

/** What each way of judging is given. `kept`: to be called when something was stored. */
export type Act = { kitchen: Kitchen; swatches: KitchenSwatches; draft: Signal<Draft>; kept: () => void }
