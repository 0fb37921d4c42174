// The form with the shelf beside it: which bottles may serve a material, what they give, and what is short.
import type { Bottle, InputProblem, Material, Protocol } from '../../../core/protocol/model.ts'
import { acidOf } from '../../../core/protocol/numbers/acid-of.ts'
import type { Units } from '../../../core/quantity/index.ts'
import { bottleOf } from '../../../core/shelf/label.ts'
import { type Chosen, planDraws, servedBy } from '../../../core/shelf/plan-draws.ts'
import type { BottleDraft, StartDraft } from '../../parts/start-draft.ts'
import type { OnShelf } from '../../shelf.ts'
import type { FromShelf } from './given.ts'
import { type Worked, workOut } from './programme.ts'

/** So much is wanting of what a material's bottles hold. */
export type Short = {
  material: string
  label: string
  bottle: string
  unit: 'mL' | 'g'
  wanted: number
  short: number
  /** The share of what is wanted that is there. */
  covered: number
  /** Others of the same on the shelf with something free, the fullest first. */
  others: OnShelf[]
}

export type WorkedFromShelf = Worked & { shorts: Short[] }

/** Things that may serve a material, those put away left out. */
export function servers(things: readonly OnShelf[], material: Material): OnShelf[] {
  return things.filter(({ item: { status, thing } }) => {
    if (status === 'away') return false
    if (material.kind === 'stock') return thing.kind === 'stock'
    if (thing.kind !== 'acid') return false
    return material.kind === 'acid' ? thing.form === 'liquid' : material.kind === 'powder' && thing.form === 'powder'
  })
}

/** Works the form out with what the chosen bottles hold: first as if the first of each gave it all, then as they share it. */
export function workOutFromShelf(
  protocol: Protocol,
  draft: StartDraft,
  units: Units,
  keptBoil: string,
  seen: readonly OnShelf[] | null
): WorkedFromShelf {
  const things = seen ?? []
  const { chosen, problems } = seen === null ? notReadYet(draft) : chosenOf(protocol, draft, things)
  const worked = (shelf: FromShelf): Worked => {
    const made = workOut(protocol, draft, units, keptBoil, shelf)
    return problems.length === 0 ? made : { ...made, programme: null, problems: [...made.problems, ...problems] }
  }
  const served = (bottles: readonly Bottle[], id: string, planned: Parameters<typeof servedBy>[1]) => {
    const given = servedBy(bottles, planned)
    const acid = draft.bottles[id]?.acid ?? acidOf(...acidWords(things, bottles[0]))
    return given === null ? [] : [[id, { ...given, ...(acid && { acid }) }] as const]
  }
  const of = (plan: ReturnType<typeof planDraws> | null): FromShelf =>
    Object.fromEntries(Object.entries(chosen).flatMap(([id, bottles]) => served(bottles, id, plan?.get(id) ?? null)))
  const alone = worked(of(null))
  if (alone.programme === null || Object.keys(chosen).length === 0) return { ...alone, shorts: [] }
  const free = new Map(
    things.flatMap(({ item, level }) => (level === null ? [] : [[item.itemId, level.free] as const]))
  )
  const plan = planDraws(alone.programme, chosen, free)
  const shorts = [...plan].flatMap(([id, planned]): Short[] => {
    const { short, covered, wanted, unit } = planned
    const bottles = chosen[id] ?? []
    const last = bottles.at(-1)
    if (short <= 0 || last === undefined || unit === 'count') return []
    const label = protocol.materials.find((material) => material.id === id)?.label ?? id
    const others = othersOf(things, bottles)
    return [{ material: id, label, bottle: last.name, unit, wanted, short, covered, others }]
  })
  return { ...worked(of(plan)), shorts }
}

/** The same with what is short of a material made to fit; null: it can't be made to. Doses are rounded, so what fits by
 * the figures may miss by a mL: a little less is tried then. */
export function fitting<T extends { draft: Partial<StartDraft> }>(
  material: string,
  covered: number,
  make: (share: number) => T | null,
  shortsOf: (change: Partial<StartDraft>) => readonly Short[]
): T | null {
  for (const less of [1, 0.99, 0.97, 0.94, 0.9]) {
    const made = make(covered * less)
    if (made === null) return null
    if (shortsOf(made.draft).every((short) => short.material !== material)) return made
  }
  return null
}

function notReadYet(draft: StartDraft): { chosen: Chosen; problems: InputProblem[] } {
  const waiting = Object.entries(draft.bottles).filter(([, { shelf = [] }]) => shelf.length > 0)
  const [what, instead] = ['The shelf is still being read.', 'Wait a moment.']
  return {
    chosen: {},
    problems: waiting.map(([id]) => ({ code: 'not-read', field: `materials.${id}.shelf`, what, instead }))
  }
}

function acidWords(things: readonly OnShelf[], bottle: Bottle | undefined): string[] {
  const thing = things.find(({ item }) => item.itemId === bottle?.itemId)?.item.thing
  return thing?.kind === 'acid' ? [thing.acid, thing.name] : []
}

function chosenOf(
  protocol: Protocol,
  draft: StartDraft,
  things: readonly OnShelf[]
): { chosen: Chosen; problems: InputProblem[] } {
  const problems: InputProblem[] = []
  const chosen: Record<string, Bottle[]> = {}
  for (const material of protocol.materials) {
    const ids = draft.bottles[material.id]?.shelf ?? []
    const standing = servers(things, material)
    const bottles = ids.flatMap((id) => {
      const found = standing.find(({ item }) => item.itemId === id)
      const bottle = found ? bottleOf(found.item) : null
      if (bottle) return [bottle]
      const name = things.find(({ item }) => item.itemId === id)?.item.thing.name ?? 'That bottle'
      const what = `${name} is not on the shelf any more.`
      const field = `materials.${material.id}.shelf`
      problems.push({ code: 'not-on-shelf', field, what, instead: 'Choose another, or type what the label says.' })
      return []
    })
    if (bottles.length > 0) chosen[material.id] = bottles
  }
  return { chosen, problems }
}

/** Of the same dye or acid as the first bottle. */
function othersOf(things: readonly OnShelf[], bottles: readonly Bottle[]): OnShelf[] {
  const first = things.find(({ item }) => item.itemId === bottles[0]?.itemId)?.item.thing
  const same = ({ item: { status, thing } }: OnShelf): boolean => {
    if (status === 'away') return false
    if (first?.kind === 'stock' && thing.kind === 'stock') return alike(first.dye, thing.dye)
    if (first?.kind === 'acid' && thing.kind === 'acid')
      return first.form === thing.form && alike(first.acid, thing.acid)
    return false
  }
  return things
    .filter((one) => same(one) && bottles.every(({ itemId }) => itemId !== one.item.itemId))
    .filter(({ level }) => level === null || level.free > 0)
    .sort((a, b) => (b.level?.free ?? Number.POSITIVE_INFINITY) - (a.level?.free ?? Number.POSITIVE_INFINITY))
}

function alike(a: string, b: string): boolean {
  return a.trim().toLowerCase() === b.trim().toLowerCase()
}

/** A material's draft with these bottles. */
export function withBottles(draft: StartDraft, material: string, ids: readonly string[]): Partial<StartDraft> {
  const bottle = draft.bottles[material] as BottleDraft
  return { bottles: { ...draft.bottles, [material]: { ...bottle, shelf: [...ids] } } }
}
