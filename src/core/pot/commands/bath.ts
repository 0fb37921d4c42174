// What happens to the bath and the yarn besides the route: unplanned additions, top-ups, skeins in and out.
import type { PotCommand, Refusal } from '../commands.ts'
import { refuse, type Telling } from '../tell.ts'

type Of<T extends PotCommand['type']> = Extract<PotCommand, { type: T }>

export function addUnplanned(t: Telling, { amount, fromPotId, itemId }: Of<'AddUnplanned'>): Refusal | null {
  const bad = badAmount(amount.value)
  if (bad) return bad
  const { of } = amount
  const bottle = itemId === undefined ? {} : { itemId }
  t.tell({ type: 'Dosed', path: null, of, planned: null, added: amount, fromPotId: fromPotId ?? null, ...bottle })
  return null
}

/** The cup for this pot went into another: nothing went in here, and what was asked for is still asked for. */
export function addElsewhere(t: Telling, { path, amount, toPotId }: Of<'ReportAddedElsewhere'>): Refusal | null {
  const bad = badAmount(amount.value)
  if (bad) return bad
  if (toPotId === t.run.pot.potId) return refuse('wrong-answer', 'That is this very pot.').refusal
  t.tell({ type: 'DoseWentElsewhere', path, of: amount.of, amount, toPotId })
  return null
}

export function topUp(t: Telling, { volumeML, tempC, levelBefore, levelAfter }: Of<'TopUp'>): Refusal | null {
  const bad = badAmount(volumeML)
  if (bad) return bad
  t.tell({ type: 'ToppedUp', volumeML, tempC, levelBefore, levelAfter })
  return null
}

export function moveYarn(t: Telling, place: 'in' | 'out', tags: string[]): Refusal | null {
  const unknown = tags.filter((tag) => !t.run.pot.skeins.some((s) => s.tag === tag))
  if (unknown.length > 0) return refuse('no-such-skein', `This pot has no skein ${unknown.join(', ')}.`).refusal
  t.tell({ type: 'YarnMoved', place, tags, limitAtMs: null, depth: null, path: null })
  return null
}

export function swapSkeins(t: Telling, { withPotId, gave, got }: Of<'SwapSkeins'>): Refusal | null {
  const unknown = gave.filter((tag) => !t.run.pot.skeins.some((s) => s.tag === tag))
  if (unknown.length > 0) return refuse('no-such-skein', `This pot has no skein ${unknown.join(', ')}.`).refusal
  t.tell({ type: 'SkeinsSwapped', withPotId, gave, got })
  return null
}

function badAmount(value: number): Refusal | null {
  return value > 0 && value < 1e6
    ? null
    : refuse('out-of-range', 'An amount is more than 0 and under a million.').refusal
}
