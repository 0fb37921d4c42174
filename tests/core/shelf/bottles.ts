// Pots whose materials stand on the shelf, and things that stand there, for the shelf's tests.
import type { Entry } from '../../../src/core/pot/entry.ts'
import type { Bottle, Programme, ProgrammeInputs } from '../../../src/core/protocol/model.ts'
import type { ShelfCommand } from '../../../src/core/shelf/commands.ts'
import { decideItem } from '../../../src/core/shelf/decide.ts'
import type { ShelfEvent } from '../../../src/core/shelf/events.ts'
import { foldItem } from '../../../src/core/shelf/evolve.ts'
import type { Shelved } from '../../../src/core/shelf/state.ts'
import type { Acid, Stock, Yarn } from '../../../src/core/shelf/thing.ts'
import { PERSON, T0 } from '../pot/given.ts'
import { dose, type Plan, programme } from '../pot/programmes.ts'

export const DAY = 86_400_000

export function bottle(itemId: string, upTo: number | null = null, change: Partial<Bottle> = {}): Bottle {
  const label = { name: 'vinegar', lot: 'L1', percent: 5, basis: 'w/v' as const, densityGPerML: null, madeOn: null }
  return { itemId, upTo, ...label, ...change }
}

type Given = Record<string, Bottle[]>

/** The programme of these steps, its materials served by bottles of the shelf. */
export function served(plans: Plan[], by: Given): Programme {
  const materials: ProgrammeInputs['materials'] = {}
  for (const [id, shelf] of Object.entries(by)) {
    materials[id] = { name: shelf[0]?.name ?? id, percent: 5, basis: 'w/v', densityGPerML: null, shelf }
  }
  const given = { skeins: [], values: {}, materials, roomC: null, boilC: null }
  return { ...programme(plans), given }
}

/** A dose out of the material of that id, `name` on its bottle. */
export function from(id: string, mL: number, material = 'acid', name = 'vinegar'): Plan {
  const amount = { value: mL, unit: 'mL' as const, of: name, asEntered: `${mL} mL` }
  return dose(id, mL, name, { dose: { amount, cup: id, setOutId: material, from: [{ material, each: 1 }] } })
}

export const stockY: Stock = {
  kind: 'stock',
  name: 'stock Y',
  dye: 'C.I. Acid Yellow, milling',
  percentWV: 1,
  lot: 'Y-3',
  madeOn: '2031-06-01',
  parts: [],
  note: ''
}

export const vinegar: Acid = {
  kind: 'acid',
  name: 'vinegar',
  acid: 'acetic',
  form: 'liquid',
  percent: 5,
  basis: 'w/v',
  densityGPerML: null,
  lot: 'L1',
  note: ''
}

export const merino: Yarn = { kind: 'yarn', name: 'base A', fibre: 'wool', treated: 'no', lot: '77', note: '' }

/** A thing and its entries, by commands that must be taken; each comes a minute after the one before. */
export class OnTheShelf {
  entries: Entry<ShelfEvent>[] = []
  nowMs = T0 - DAY
  readonly itemId: string

  constructor(itemId: string, ...commands: ShelfCommand[]) {
    this.itemId = itemId
    for (const command of commands) this.do(command)
  }

  do(command: ShelfCommand, commandId = `c${this.entries.length + 1}`): ShelfEvent[] {
    const decision = this.try(command, commandId)
    if (!decision.ok) throw new Error(`refused: ${decision.refusal.say}`)
    for (const event of decision.events) this.#append(event, commandId)
    this.nowMs += 60_000
    return decision.events
  }

  try(command: ShelfCommand, commandId = `c${this.entries.length + 1}`): ReturnType<typeof decideItem> {
    return decideItem(this.itemId, foldItem(this.entries), command, { commandId, atMs: this.nowMs, by: PERSON })
  }

  get item(): Shelved {
    const state = foldItem(this.entries)
    if (state.status === 'none') throw new Error('nothing stands there')
    return state
  }

  #append(event: ShelfEvent, commandId: string): void {
    const seq = this.entries.length + 1
    const after = seq > 1 ? { writerId: 'w', seq: seq - 1 } : null
    const when = { atMs: this.nowMs, recordedAtMs: this.nowMs, bootId: 'b', monoMs: 0, tzOffsetMin: 0 }
    const place = { v: 2, streamId: `stock/${this.itemId}`, writerId: 'w', seq, after }
    this.entries.push({ ...place, ...when, commandId, by: PERSON, crc: '', event })
  }
}

export function acidOf(level: number | null, itemId = 'a1'): OnTheShelf {
  return new OnTheShelf(itemId, { type: 'AddThing', thing: vinegar, level })
}
