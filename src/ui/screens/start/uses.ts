// Yarn, water, vessels and burners of the shelf that a pot uses.
import type { Use } from '../../../core/pot/events.ts'
import { showMass, showVolume, type Units } from '../../../core/quantity/index.ts'
import { useOf } from '../../../core/shelf/label.ts'
import type { StartDraft } from '../../parts/start-draft.ts'
import type { OnShelf } from '../../shelf.ts'

/** Those of a kind that stand there. */
export function standing(things: readonly OnShelf[], kind: Use['kind']): OnShelf[] {
  return things.filter(({ item }) => item.status === 'here' && item.thing.kind === kind)
}

/** What was chosen, as its labels read. A burner is the one the pot stands on. */
export function usesOf(draft: StartDraft, burner: string, things: readonly OnShelf[]): Use[] {
  const burnerId = standing(things, 'burner').find(({ item }) => item.thing.name === burner)?.item.itemId
  const ids = [draft.uses?.yarn, draft.uses?.water, draft.uses?.pot, burnerId]
  return ids.flatMap((id) => {
    const found = things.find(({ item }) => item.itemId === id && item.status === 'here')
    const use = found ? useOf(found.item) : null
    return use ? [use] : []
  })
}

/** What choosing a thing fills in: the fibre, the alkalinity, the pot's size. Where the label says nothing of it, what was
 * typed stays. */
export function chose(
  draft: StartDraft,
  kind: 'yarn' | 'water' | 'pot',
  found: OnShelf | undefined
): Partial<StartDraft> {
  const uses = { ...draft.uses, [kind]: found?.item.itemId }
  const thing = found?.item.thing
  if (thing?.kind === 'yarn') return { uses, fibre: thing.fibre }
  if (thing?.kind === 'water' && thing.alkalinityMgPerL !== null) {
    return { uses, alkalinity: String(thing.alkalinityMgPerL) }
  }
  if (thing?.kind === 'pot' && thing.volumeML !== null) return { uses, pot: `${thing.volumeML} mL` }
  return { uses }
}

export function useWords({ item: { thing }, level }: OnShelf, units: Units): string {
  switch (thing.kind) {
    case 'yarn': {
      const free = level === null ? '' : level.free < 0 ? ', none free' : `, ${showMass(level.free, units)} free`
      return `${thing.name}${thing.lot === '' ? '' : `, lot ${thing.lot}`}: ${thing.fibre}${free}`
    }
    case 'water':
      return thing.alkalinityMgPerL === null ? thing.name : `${thing.name}: ${thing.alkalinityMgPerL} mg/L`
    case 'pot':
      return thing.volumeML === null ? thing.name : `${thing.name}: ${showVolume(thing.volumeML, units)}`
    case 'burner':
    case 'stock':
    case 'acid':
      return thing.name
  }
}
