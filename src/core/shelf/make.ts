// Making a stock: what is wanted becomes amounts, and amounts become acts one after the other.

import { makeUpStock } from '../chemistry/amounts/depth.ts'
import { dilute } from '../chemistry/amounts/dilution.ts'
import { mixedGPerML } from '../chemistry/amounts/formulas.ts'
import { isRefused } from '../chemistry/answer.ts'
import type { InputProblem } from '../protocol/model.ts'
import type { StockHazard } from '../safety/stock-making.ts'
import type { MadeFrom, Making } from './events.ts'
import type { MixedPart } from './thing.ts'

/** A bottle to make it from, as its label reads. */
export type Source = Omit<MadeFrom, 'volumeML'>

export type StockWish =
  | { how: 'powder'; percentWV: number; volumeML: number; powderLot: string; water: string }
  | { how: 'dilution'; from: Source | null; percentWV: number; volumeML: number; water: string }
  | { how: 'mix'; from: { source: Source; parts: number }[]; volumeML: number }

/** `percentWV`: how strong it comes out. `parts`: what a mix keeps of what it is mixed of. */
export type StockPlan = { making: Making; percentWV: number; parts: MixedPart[] }
export type Planned = { ok: true; plan: StockPlan } | { ok: false; problems: InputProblem[] }

/** Works out a stock. Powder: g = % w/v · mL / 100, made up to the mark. Dilution: C1 V1 = C2 V2. Mix: parts of dye by
 * mass, each out of a stock of its own strength, poured together without water. Refuses with every wrong field. */
export function planStock(wish: StockWish): Planned {
  switch (wish.how) {
    case 'powder': {
      const made = makeUpStock({ stockPercentWV: wish.percentWV, volumeML: wish.volumeML })
      if (isRefused(made))
        return refuse(made.problems.map((problem) => renamed(problem, { stockPercentWV: 'percentWV' })))
      const { volumeML, powderLot, water, percentWV } = wish
      return planned({ how: 'powder', volumeML, powderG: made.powderG, powderLot, from: [], water }, percentWV)
    }
    case 'dilution': {
      const { from, percentWV, volumeML, water } = wish
      if (from === null) return refuse([noSource])
      const made = dilute({ fromPercentWV: from.percentWV, toPercentWV: percentWV, toML: volumeML })
      if (isRefused(made)) {
        const names = { fromPercentWV: 'from', toPercentWV: 'percentWV', toML: 'volumeML' }
        return refuse(made.problems.map((problem) => renamed(problem, names)))
      }
      const poured = [{ ...from, volumeML: made.takeML }]
      return planned({ how: 'dilution', volumeML, powderG: null, powderLot: '', from: poured, water }, percentWV)
    }
    case 'mix':
      return mixed(wish)
  }
}

function mixed({ from, volumeML }: Extract<StockWish, { how: 'mix' }>): Planned {
  const problems: InputProblem[] = from.flatMap(({ parts }, i) =>
    parts > 0 && parts <= 1e6 ? [] : [{ code: 'outside', field: `parts.${i}`, ...partsWrong }]
  )
  if (from.length < 2) problems.push(tooFew)
  const twice = from.some(({ source }, i) => from.findIndex((one) => one.source.itemId === source.itemId) < i)
  if (twice) problems.push({ ...tooFew, what: 'One bottle is in it twice.', instead: 'Give each bottle once.' })
  if (!(volumeML > 0 && volumeML <= 1e6)) problems.push(noVolume)
  if (problems.length > 0) return refuse(problems)
  const gPerML = mixedGPerML(from.map(({ parts, source }) => ({ parts, gPerML: source.percentWV / 100 })))
  const all = from.reduce((sum, { parts }) => sum + parts, 0)
  const poured = from.map(({ parts, source }) => ({
    ...source,
    volumeML: ((parts / all) * gPerML * volumeML * 100) / source.percentWV
  }))
  const kept = from.map(({ parts, source }) => ({ name: source.name, parts, itemId: source.itemId }))
  return planned({ how: 'mix', volumeML, powderG: null, powderLot: '', from: poured, water: '' }, gPerML * 100, kept)
}

const partsWrong = { what: 'That is no part.', instead: 'Give a number above 0, for example 3.' }
const noSource: InputProblem = {
  code: 'missing',
  field: 'from',
  what: 'No bottle is chosen.',
  instead: 'Choose the stronger stock it is made from.'
}
const tooFew: InputProblem = {
  code: 'missing',
  field: 'from',
  what: 'A mix is made from two bottles or more.',
  instead: 'Choose another bottle.'
}
const noVolume: InputProblem = {
  code: 'outside',
  field: 'volumeML',
  what: 'That is no volume.',
  instead: 'Give more than 0 and at most 1000 L.'
}

function planned(making: Making, percentWV: number, parts: MixedPart[] = []): Planned {
  return { ok: true, plan: { making, percentWV, parts } }
}

function refuse(problems: InputProblem[]): Planned {
  return { ok: false, problems }
}

function renamed(problem: InputProblem, names: Record<string, string>): InputProblem {
  return { ...problem, field: names[problem.field] ?? problem.field }
}

/** One act of making a stock. `amount`: what is measured at it. */
export type MakingAct = {
  id: string
  act: string
  say: string
  amount: { value: number; unit: 'mL' | 'g'; of: string } | null
  hazards: StockHazard[]
}

/** The acts, in order: dissolved first, then made up to the mark; never so much water added. Common practice, no source.
 * `dye`: what the powder is. */
export function actsOf({ how, volumeML, powderG, from }: Making, dye: string): MakingAct[] {
  const toTheMark: MakingAct = {
    id: 'mark',
    act: 'Make up to the mark',
    say: 'Cold now, fill up with water to the mark. Not so much water added: so much in all.',
    amount: { value: volumeML, unit: 'mL', of: 'in all' },
    hazards: []
  }
  const pours = from.map(
    (one, i): MakingAct => ({
      id: `pour-${i}`,
      act: `Measure ${one.name}`,
      say: 'Shake it first, and warm it where crystals lie at the bottom.',
      amount: { value: one.volumeML, unit: 'mL', of: lotOf(one) },
      hazards: []
    })
  )
  switch (how) {
    case 'powder':
      return [clear, ...powderActs(powderG ?? 0, dye), toTheMark, bottle]
    case 'dilution':
      return [clear, ...pours, toTheMark, bottle]
    case 'mix':
      return [clear, ...pours, together, bottle]
  }
}

function lotOf({ name, lot }: MadeFrom): string {
  return lot === '' ? name : `${name}, lot ${lot}`
}

const clear: MakingAct = {
  id: 'clear',
  act: 'Clear the bench',
  say: 'Dye tools only, damp paper down, the label at hand. Food, children and pets out.',
  amount: null,
  hazards: ['bench']
}

const bottle: MakingAct = {
  id: 'bottle',
  act: 'Into its bottle',
  say: 'Stir or shake until it is even. Into the bottle, stopper on.',
  amount: null,
  hazards: ['bottle']
}

const together: MakingAct = {
  id: 'together',
  act: 'Pour them together',
  say: 'Stir until the colour is even. No water: it is as strong as its parts make it.',
  amount: null,
  hazards: []
}

function powderActs(powderG: number, dye: string): MakingAct[] {
  return [
    {
      id: 'weigh',
      act: 'Weigh the powder',
      say: 'Mask, goggles, gloves. Still air: fan off, window shut, nothing steaming near.',
      amount: { value: powderG, unit: 'g', of: dye },
      hazards: ['powder']
    },
    {
      id: 'paste',
      act: 'Wet it to a paste',
      say: 'A little cool water, stirred in until no dry powder is left.',
      amount: null,
      hazards: ['wet-out']
    },
    {
      id: 'dissolve',
      act: 'Dissolve it',
      say: 'Pour on near-boiling water to about half of the volume. Stir until nothing lies at the bottom.',
      amount: null,
      hazards: ['hot-water']
    },
    {
      id: 'cool',
      act: 'Let it cool',
      say: 'To the warmth of the room: a hot volume shrinks, and the stock would come out too strong.',
      amount: null,
      hazards: []
    }
  ]
}
