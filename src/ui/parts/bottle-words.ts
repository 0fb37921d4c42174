// What is said of a bottle that stands on the shelf.
import { showMass, showPercent, showVolume, type Units } from '../../core/quantity/index.ts'
import type { OnShelf } from '../shelf.ts'

/** "stock Y, lot Y-3". */
export function nameOf({ item: { thing } }: OnShelf): string {
  const lot = 'lot' in thing ? thing.lot : ''
  return lot === '' ? thing.name : `${thing.name}, lot ${lot}`
}

/** What is free of it, then what its label says: a narrow field cuts the end. */
export function labelWords({ item: { thing }, level }: OnShelf, units: Units): string {
  const facts: string[] = []
  if (level !== null) {
    const shown = level.unit === 'mL' ? showVolume : showMass
    facts.push(level.free < 0 ? 'none free' : `${shown(level.free, units)} free`)
  }
  if (thing.kind === 'stock') facts.push(`${showPercent(thing.percentWV, units)} w/v`, madeWords(thing.madeOn))
  if (thing.kind === 'acid' && thing.percent !== null) facts.push(`${showPercent(thing.percent, units)} ${thing.basis}`)
  return facts.filter(Boolean).join(', ')
}

function madeWords(madeOn: string | null): string {
  return madeOn === null ? '' : `made ${madeOn}`
}
