// What is other in a start that is filled in from an earlier batch.
import type { BatchRecord } from '../../../../core/record/record.ts'
import type { StartDraft } from '../../../parts/start-draft.ts'

export type Again = { way: 'scaled' | 'changed' | 'overdye' | 'bath'; factor: number; field: string; value: string }

export type Changeable = { field: string; label: string; was: string }

/** What can be the one thing that is changed. */
export function changeable({ programme, substrate }: BatchRecord): Changeable[] {
  const strengths = Object.entries(programme.given?.materials ?? {}).map(([id, { name, percent }]) => ({
    field: `bottle ${id}`,
    label: `Strength of ${name || id}, %`,
    was: percent === null ? '–' : String(percent)
  }))
  return [
    { field: 'fibre', label: 'Fibre', was: substrate.fibre },
    ...programme.inputs.map(({ id, label, shown }) => ({ field: `input ${id}`, label, was: shown })),
    ...strengths
  ]
}

/** How many times as much yarn that is. */
export function scaleOf({ substrate }: BatchRecord, goodsG: number): number {
  return substrate.goodsMassG > 0 ? goodsG / substrate.goodsMassG : 1
}

export function againChange(record: BatchRecord, again: Again): (draft: StartDraft) => StartDraft {
  const { potId } = record.identity
  switch (again.way) {
    case 'scaled': {
      const { skeins } = record.substrate
      const scaled = skeins.map(({ tag, massG }) => ({ tag, mass: `${Number((massG * again.factor).toFixed(2))} g` }))
      return (draft) => ({ ...draft, skeins: scaled })
    }
    case 'overdye':
      return (draft) => ({ ...draft, yarnOf: potId })
    case 'bath':
      return (draft) => ({ ...draft, bathOf: potId })
    case 'changed':
      return (draft) => changed(draft, again)
  }
}

function changed(draft: StartDraft, { field, value }: Again): StartDraft {
  const [what = '', id = ''] = [field.slice(0, field.indexOf(' ')), field.slice(field.indexOf(' ') + 1)]
  if (field === 'fibre') return { ...draft, fibre: value }
  if (what === 'input') return { ...draft, values: { ...draft.values, [id]: value } }
  const bottle = draft.bottles[id]
  return bottle ? { ...draft, bottles: { ...draft.bottles, [id]: { ...bottle, percent: value } } } : draft
}
