import { describe, expect, it } from 'vitest'
import type { PotOnStove } from '../../../src/ui/kitchen.ts'
import { sortCalls } from '../../../src/ui/screens/stove/calls.ts'
import { handsIn, handsWanted, type LivePot, livePots, nameOf, needsStove } from '../../../src/ui/screens/stove/live.ts'
import { fixtureKitchen, noon } from './fixtures.ts'
import * as made from './pots.ts'

type Journal = ReturnType<typeof made.moss>

const live = (journals: Journal[], nowMs = noon): LivePot[] => {
  const kitchen = fixtureKitchen(journals, noon)
  kitchen.tick(nowMs)
  return livePots(kitchen.pots.value as PotOnStove[])
}
const one = (journal: Journal, nowMs = noon): LivePot => live([journal], nowMs)[0] as LivePot
const none: ReadonlySet<string> = new Set()

describe('which pot has hands in it', () => {
  it('a pot between bands a minute apart has, a pot that holds has not', () => {
    expect(handsIn(one(made.plum()).state, noon)).toBe(true)
    expect(handsIn(one(made.moss()).state, noon)).toBe(false)
  })

  it('a pot whose skein hangs over it has, through lift, acid, stir and enter', () => {
    expect(handsIn(one(made.plumLifted()).state, noon)).toBe(true)
  })

  it('a pot that calls and was not come to has not', () => {
    expect(handsIn(one(made.mossLate()).state, noon)).toBe(false)
  })

  it('a stopped pot and one in trouble have not: the procedure stands', () => {
    expect(handsIn(one(made.plumStopped()).state, noon)).toBe(false)
    expect(handsIn(one(made.plumTrouble()).state, noon)).toBe(false)
  })
})

describe('which pot hangs on the rod', () => {
  it('heat or hands hang it there; cooling with the heat off lays it on the bench until it calls', () => {
    expect(needsStove(one(made.moss()))).toBe(true)
    expect(needsStove(one(made.fernCools()))).toBe(false)
    expect(needsStove(one(made.fernCools(), noon + 60 * 60_000))).toBe(true)
  })

  it('a pot in trouble hangs there whatever it was at', () => {
    expect(needsStove(one(made.plumTrouble()))).toBe(true)
  })
})

describe('who wants hands next', () => {
  it('is told in the order of time over all pots', () => {
    const wanted = handsWanted(live([made.moss(), made.plum(), made.ochre()]), noon)
    expect(wanted.map((w) => nameOf(w.pot))).toEqual(['Plum', 'Moss', 'Ochre'])
    expect(wanted.map((w) => w.what)).toEqual(['Band 5', 'Bath grade', '80 °C'])
  })
})

describe('a call', () => {
  it('fills the screen where no pot has hands in it', () => {
    const { full, strips } = sortCalls(live([made.mossLate(), made.heather()]), noon, null, none)
    expect(full && nameOf(full.pot)).toBe('Moss')
    expect(strips).toEqual([])
  })

  it('comes as a strip while another pot has hands in it', () => {
    const { full, strips } = sortCalls(live([made.mossLate(), made.plum()]), noon, null, none)
    expect(full).toBeNull()
    expect(strips.map((s) => nameOf(s.pot))).toEqual(['Moss'])
  })

  it('of the pot with hands in it goes before a later one that is more urgent', () => {
    const { full, strips } = sortCalls(live([made.mossLate(), made.plumLifted()]), noon, null, none)
    expect(full && nameOf(full.pot)).toBe('Plum')
    expect(strips.map((s) => nameOf(s.pot))).toEqual(['Moss'])
  })

  it('stays until it is answered, though another becomes more urgent', () => {
    const pots = live([made.slateAsks(), made.mossLate()])
    const first = sortCalls(pots, noon, null, none)
    expect(first.full && nameOf(first.full.pot)).toBe('Moss')
    const slate = pots.find((p) => nameOf(p) === 'Slate') as LivePot
    const shown = `${slate.potId} ${slate.alerts[0]?.key}`
    const { full } = sortCalls(pots, noon, shown, none)
    expect(full && nameOf(full.pot)).toBe('Slate')
  })

  it('laid aside stands as a strip', () => {
    const pots = live([made.mossLate()])
    const key = `${pots[0]?.potId} ${pots[0]?.alerts[0]?.key}`
    const { full, strips } = sortCalls(pots, noon, null, new Set([key]))
    expect(full).toBeNull()
    expect(strips).toHaveLength(1)
  })

  it('of a stopped pot or one in trouble never fills the screen', () => {
    const later = noon + 10 * 60_000
    for (const journal of [made.plumStopped(), made.plumTrouble()]) {
      expect(sortCalls(live([journal], later), later, null, none).full).toBeNull()
    }
  })
})
