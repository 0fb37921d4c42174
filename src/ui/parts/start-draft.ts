// What a dyer has typed for a pot that is not started yet. It outlives a change of screen and a reload of the tab; the
// Dye book fills one in for the same pot again.
import type { Skein, Use } from '../../core/pot/events.ts'
import type { AcidKind, Carries, Programme } from '../../core/protocol/model.ts'
import { showNumber } from '../../core/quantity/index.ts'
import type { StoredProtocol } from '../kitchen.ts'

export type SkeinDraft = { tag: string; mass: string }

/** What is really in a bottle, as typed. */
export type BottleDraft = {
  name: string
  percent: string
  basis: 'w/v' | 'w/w'
  density: string
  /** Which acid it is; left out: its name may tell. */
  acid?: AcidKind | undefined
  /** The bottles on the shelf that serve it, in their order; none: what is typed here stands. */
  shelf?: string[]
}

export type StartDraft = {
  colourway: string
  colour: string
  /** The dyer chose the colour; else it follows the colourway's name. */
  colourChosen: boolean
  burner: string
  otherBurner: string
  fibre: string
  skeins: SkeinDraft[]
  values: Record<string, string>
  bottles: Record<string, BottleDraft>
  room: string
  boil: string
  /** Set-out ids that stand on the bench. */
  setOut: string[]
  /** The pot whose bath is used again, and the one whose yarn is dyed over; '' none. */
  bathOf: string
  yarnOf: string
  /** What the numbers count on; drafts from before lack it. */
  pot?: string
  alkalinity?: string
  carries?: Carries
  countAll?: boolean
  keptML?: number | undefined
  lengthen?: boolean
  /** Yarn, water, vessel and burner of the shelf, by their ids. */
  uses?: { [K in Use['kind']]?: string | undefined }
  /** The pot this is the same again as. */
  earlier?: { name: string; goodsG: number; liquorML: number | null }
}

const drafts = new Map<string, StartDraft>()
const KEY = 'strandline start '

export function draftOf(protocolId: string): StartDraft | null {
  const known = drafts.get(protocolId)
  if (known) return known
  try {
    const text = sessionStorage.getItem(KEY + protocolId)
    return text === null ? null : (JSON.parse(text) as StartDraft)
  } catch {
    return null
  }
}

export function keepDraft(protocolId: string, draft: StartDraft): void {
  drafts.set(protocolId, draft)
  try {
    sessionStorage.setItem(KEY + protocolId, JSON.stringify(draft))
  } catch {
    // No room or no leave: the draft lives as long as the page.
  }
}

export function dropDraft(protocolId: string): void {
  drafts.delete(protocolId)
  try {
    sessionStorage.removeItem(KEY + protocolId)
  } catch {
    // As above.
  }
}

export type EarlierPot = {
  colourway: string
  colour: string
  burner: string
  fibre: string
  skeins: readonly Skein[]
  uses?: readonly Use[]
}

/** The form of a pot that was run, for the same again. Cups are set out anew, and the burner is chosen anew where
 * another pot stands. */
export function draftFrom(pot: EarlierPot, programme: Programme): StartDraft {
  const given = programme.given
  const shown = Object.fromEntries(programme.inputs.map((input) => [input.id, input.shown]))
  const typed = Object.fromEntries(Object.entries(given?.values ?? {}).map(([id, value]) => [id, String(value)]))
  const bottles = Object.entries(given?.materials ?? {}).map(([id, bottle]): [string, BottleDraft] => [
    id,
    {
      name: bottle.name,
      percent: bottle.percent === null ? '' : showNumber(bottle.percent, 3),
      basis: bottle.basis,
      density: bottle.densityGPerML === null ? '' : showNumber(bottle.densityGPerML, 3),
      ...(bottle.acid && { acid: bottle.acid }),
      ...(bottle.shelf && { shelf: bottle.shelf.map(({ itemId }) => itemId) })
    }
  ])
  return {
    colourway: pot.colourway,
    colour: pot.colour,
    colourChosen: true,
    burner: pot.burner,
    otherBurner: '',
    fibre: pot.fibre,
    skeins: pot.skeins.map((skein) => ({ tag: skein.tag, mass: `${skein.massG} g` })),
    values: { ...shown, ...typed },
    bottles: Object.fromEntries(bottles),
    room: given?.roomC == null ? '' : `${given.roomC} °C`,
    boil: given?.boilC == null ? '' : `${given.boilC} °C`,
    setOut: [],
    bathOf: '',
    yarnOf: '',
    ...numbersFrom(programme, pot.colourway),
    uses: Object.fromEntries((pot.uses ?? []).map(({ kind, itemId }) => [kind, itemId]))
  }
}

function numbersFrom({ given, goodsMassG, liquorML }: Programme, name: string): Partial<StartDraft> {
  return {
    earlier: { name, goodsG: goodsMassG, liquorML },
    ...(given?.potML != null && { pot: `${given.potML} mL` }),
    ...(given?.alkalinityMgPerL != null && { alkalinity: String(given.alkalinityMgPerL) }),
    ...(given?.carries && { carries: given.carries }),
    ...(given?.countAll && { countAll: true }),
    ...(given?.liquorMostML != null && { keptML: given.liquorMostML }),
    ...(given?.lengthen && { lengthen: true })
  }
}

// A protocol opened from disk, or found in an old pot's journal, has no place among the stored ones.
const opened = new Map<string, StoredProtocol>()

export function keepOpened(stored: StoredProtocol): void {
  opened.set(stored.id, stored)
}

export function openedProtocols(): StoredProtocol[] {
  return [...opened.values()]
}

/** The protocols to choose from: those the kitchen knows and those opened since. */
export function withOpened(known: readonly StoredProtocol[]): StoredProtocol[] {
  return [...known, ...openedProtocols().filter((each) => known.every((k) => k.id !== each.id))]
}
