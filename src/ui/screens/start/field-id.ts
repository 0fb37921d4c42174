// Which field on the screen a problem belongs to.
import type { InputProblem, Protocol } from '../../../core/protocol/model.ts'
import type { StartDraft } from '../../parts/start-draft.ts'

/** The element id of a field's input; null: it has none on this screen. */
export function fieldId(field: string): string | null {
  const skein = /^skeins\.(\d+)\.(tag|mass)$/.exec(field)
  if (skein) return `start-${skein[2]}-${skein[1]}`
  const bottle = /^materials\.(.+)\.(name|percent|density|acid)$/.exec(field)
  if (bottle) return `start-bottle-${bottle[1]}-${bottle[2]}`
  const shelf = /^materials\.(.+)\.shelf$/.exec(field)
  if (shelf) return `start-bottle-${shelf[1]}-shelf-0`
  const value = /^values\.(.+)$/.exec(field)
  if (value) return `start-value-${value[1]}`
  return own[field] ?? null
}

/** Goes to a field, opening what it is folded in. */
export function toField(id: string): boolean {
  const node = document.getElementById(id)
  const fold = node?.closest('details')
  if (fold) fold.open = true
  node?.focus()
  return node !== null
}

const own: Record<string, string> = {
  colourway: 'start-colourway',
  burner: 'start-other-burner',
  fibre: 'start-fibre',
  bathOf: 'start-bath-of',
  yarnOf: 'start-yarn-of',
  roomC: 'start-room',
  boilC: 'start-boil',
  potML: 'start-pot-holds',
  alkalinity: 'start-alkalinity',
  carries: 'start-carries'
}

/** The programme names a field by the input's, material's or skein's name; this screen knows it by its place. */
export function placed(problem: InputProblem, protocol: Protocol, draft: StartDraft): InputProblem {
  const { field, code } = problem
  if (fieldId(field) !== null) return problem
  if (protocol.inputs.some((input) => input.id === field)) return { ...problem, field: `values.${field}` }
  if (field === 'skeins') return { ...problem, field: 'skeins.0.mass' }
  const tag = /^skeins\.(.*)$/.exec(field)?.[1]
  if (tag !== undefined) {
    const index = draft.skeins.findIndex((skein) => skein.tag.trim() === tag)
    return { ...problem, field: `skeins.${Math.max(0, index)}.${code.startsWith('tag') ? 'tag' : 'mass'}` }
  }
  if (/^materials\./.test(field))
    return { ...problem, field: `${field}.${code.startsWith('density') ? 'density' : 'percent'}` }
  return problem
}
