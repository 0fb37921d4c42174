// What is said at the steps of making a stock. A pot's rules go by its programme's steps; here there is no pot.
import type { Caution } from './caution.ts'
import { general, rules } from './rules.ts'
import { sources } from './sources.ts'

/** The cautions of making a stock, by what is done. */
export type StockHazard = 'bench' | 'powder' | 'wet-out' | 'hot-water' | 'bottle'

const hotWater: Caution = {
  id: 'stock-hot-water',
  title: 'Near-boiling water',
  say: 'It burns at once. Stand the jug in the sink, long gloves, face away from the steam. Thick glass cracks: heat-proof jug only, and let it cool before it goes into a bottle.',
  short: 'Near-boiling water: long gloves, heat-proof jug.',
  source: `${sources.scald}; ${sources.practice}`
}

const wetOut: Caution = {
  id: 'stock-wet-out',
  title: 'Close the jar first',
  say: 'The mask stays on until the powder is wet and the jar is shut. Wipe the bench wet, do not sweep it.',
  short: 'Jar shut, bench wiped wet, then the mask off.',
  source: `${sources.hse}; ${sources.craft}`
}

const bottled: Caution = {
  id: 'stock-bottle',
  title: 'Not a food jar',
  say: 'A bottle that never held food or drink, with its label on before anything else. Locked away from children.',
  short: 'No food jar. Label it, lock it away.',
  source: sources.craft
}

/** The caution of a hazard, in the words a pot would use where it knows it. */
export function stockCautions(hazard: StockHazard): Caution[] {
  switch (hazard) {
    case 'bench':
      return general.filter(({ id }) => id === 'utensils' || id === 'health')
    case 'powder':
      return rules.filter(({ id }) => id === 'powder')
    case 'wet-out':
      return [wetOut]
    case 'hot-water':
      return [hotWater]
    case 'bottle':
      return [bottled]
  }
}
