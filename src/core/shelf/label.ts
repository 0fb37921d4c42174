// What a bottle's label says, as a pot keeps it from its start on, and what else of the shelf a pot may use.
import { gPerMLOf } from '../chemistry/amounts/formulas.ts'
import type { Use } from '../pot/events.ts'
import type { Bottle } from '../protocol/model.ts'
import type { Shelved } from './state.ts'

/** Null: it is no bottle. It gives all the rest, until somebody says otherwise. */
export function bottleOf({ itemId, thing }: Shelved): Bottle | null {
  if (thing.kind === 'stock') {
    const { name, lot, percentWV, madeOn } = thing
    return { itemId, upTo: null, name, lot, percent: percentWV, basis: 'w/v', densityGPerML: null, madeOn }
  }
  if (thing.kind !== 'acid') return null
  const { name, lot, percent, basis, densityGPerML } = thing
  return { itemId, upTo: null, name, lot, percent, basis, densityGPerML, madeOn: null }
}

/** g of what is active in a mL of it; null: it does not say. */
export function bottleGPerML({ percent, basis, densityGPerML }: Bottle): number | null {
  return percent === null ? null : gPerMLOf(percent, basis === 'w/w' ? densityGPerML : null)
}

/** Null: it is a bottle, and drawn from by a dose. */
export function useOf({ itemId, thing }: Shelved): Use | null {
  switch (thing.kind) {
    case 'stock':
    case 'acid':
      return null
    case 'yarn':
      return { kind: 'yarn', itemId, name: thing.name, lot: thing.lot, about: thing.fibre }
    case 'water': {
      const { name, alkalinityMgPerL, source } = thing
      const about = alkalinityMgPerL === null ? '' : `alkalinity ${alkalinityMgPerL} mg/L (${source})`
      return { kind: 'water', itemId, name, lot: '', about }
    }
    case 'pot': {
      const { name, volumeML, material, lid } = thing
      const about = [volumeML === null ? '' : `${volumeML} mL`, material, lid ? 'with a lid' : ''].filter(Boolean)
      return { kind: 'pot', itemId, name, lot: '', about: about.join(', ') }
    }
    case 'burner':
      return { kind: 'burner', itemId, name: thing.name, lot: '', about: thing.heat }
  }
}
