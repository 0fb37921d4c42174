// One command in, events or a refusal out, as for pots. The level is derived, so no command is refused for it: more may
// be drawn than was made, and then the screen says that the level is wrong.
import type { CommandHeader } from '../pot/commands.ts'
import type { InputProblem } from '../protocol/model.ts'
import { levelProblem, makingProblems, thingProblems } from './check.ts'
import type { ShelfCommand, ShelfRefusal, ShelfRefusalCode } from './commands.ts'
import type { ShelfEvent } from './events.ts'
import type { ShelfState, Shelved } from './state.ts'
import { unitOf } from './thing.ts'

export type ShelfDecision = { ok: true; events: ShelfEvent[] } | { ok: false; refusal: ShelfRefusal }

/** Decides a command against a thing. Pure; the time is `header.atMs`. A repeated command id yields no events. */
export function decideItem(
  itemId: string,
  state: ShelfState,
  command: ShelfCommand,
  header: CommandHeader
): ShelfDecision {
  if (state.status !== 'none' && state.heard.includes(header.commandId)) return { ok: true, events: [] }
  if (command.type === 'AddThing' || command.type === 'MakeStock') {
    if (state.status !== 'none') return refuse('there-already', 'That stands on the shelf already.')
    return command.type === 'AddThing' ? add(itemId, command, header.atMs) : make(itemId, command, header.atMs)
  }
  if (state.status === 'none') return refuse('not-there', 'No such thing is on the shelf.')
  return standing(state, command, header.atMs)
}

type Of<T extends ShelfCommand['type']> = Extract<ShelfCommand, { type: T }>

function add(itemId: string, { thing, level }: Of<'AddThing'>, atMs: number): ShelfDecision {
  const problems = thingProblems(thing, atMs)
  const wrong = level === null ? null : levelProblem(thing, level, 'level')
  if (wrong !== null) problems.push(wrong)
  if (problems.length > 0) return refuseFields(problems)
  const counted = unitOf(thing) === null ? null : level
  return tell({ type: 'ShelfItemAdded', itemId, thing, level: counted })
}

function make(itemId: string, { thing, making }: Of<'MakeStock'>, atMs: number): ShelfDecision {
  const problems = [...thingProblems(thing, atMs), ...makingProblems(making)]
  if (problems.length > 0) return refuseFields(problems)
  return tell({ type: 'ShelfItemAdded', itemId, thing, level: null }, { type: 'StockMade', making })
}

function standing(
  state: Shelved,
  command: Exclude<ShelfCommand, { type: 'AddThing' | 'MakeStock' }>,
  atMs: number
): ShelfDecision {
  const { thing } = state
  switch (command.type) {
    case 'ChangeThing': {
      if (command.thing.kind !== thing.kind) return refuse('wrong-fields', 'One thing can’t become another.')
      const problems = thingProblems(command.thing, atMs)
      if (problems.length > 0) return refuseFields(problems)
      return tell({ type: 'ShelfItemChanged', was: thing, now: command.thing, why: command.why.trim() })
    }
    case 'Refill': {
      if (thing.kind === 'stock') return refuse('not-counted', 'A stock made anew is a bottle of its own: make it.')
      if (unitOf(thing) === null) return notCounted
      const wrong = levelProblem(thing, command.amount, 'amount', true)
      return wrong ? refuseFields([wrong]) : tell({ type: 'Refilled', amount: command.amount })
    }
    case 'CorrectLevel': {
      if (unitOf(thing) === null) return notCounted
      const wrong = [levelProblem(thing, command.now, 'now'), whyProblem(command.why)].filter((one) => one !== null)
      if (wrong.length > 0) return refuseFields(wrong)
      return tell({ type: 'LevelCorrected', was: command.was, now: command.now, why: command.why.trim() })
    }
    case 'PutAway':
      return state.status === 'away' ? away : tell({ type: 'PutAway', why: command.why.trim() })
    case 'BringBack':
      return state.status === 'away' ? tell({ type: 'BroughtBack' }) : refuse('not-away', 'It stands on the shelf.')
    case 'UseUp':
      if (unitOf(thing) === null) return notCounted
      return state.status === 'away' ? away : tell({ type: 'UsedUp', was: command.was })
    case 'Discard':
      if (thing.kind !== 'stock' && thing.kind !== 'acid') return notCounted
      return state.status === 'away'
        ? away
        : tell({ type: 'StockDiscarded', was: command.was, how: command.how.trim() })
  }
}

function whyProblem(why: string): InputProblem | null {
  if (why.trim() !== '') return null
  const instead = 'Spilled, measured anew, written down wrong: the old figure stays beside it.'
  return { code: 'needs-reason', field: 'why', what: 'Say why the level is corrected.', instead }
}

function tell(...events: ShelfEvent[]): ShelfDecision {
  return { ok: true, events }
}

function refuse(code: ShelfRefusalCode, say: string): ShelfDecision {
  return { ok: false, refusal: { code, say, problems: [] } }
}

const notCounted = refuse('not-counted', 'What is left of it is not counted.')
const away = refuse('away', 'It is put away. Bring it back first.')

function refuseFields(problems: InputProblem[]): ShelfDecision {
  const say = problems.map(({ what, instead }) => `${what} ${instead}`).join(' ')
  return { ok: false, refusal: { code: 'wrong-fields', say, problems } }
}
