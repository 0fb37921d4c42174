import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  afterMinMost,
  draftOfId,
  idOfDraft,
  type PlannedRehearsal,
  plannedOf,
  rehearsalOfOne,
  rehearsalRoute,
  rehearsalSpeeds
} from '../../../src/ui/parts/rehearsal-route.ts'

const planned: fc.Arbitrary<PlannedRehearsal> = fc.record({
  answers: fc.constantFrom('own', 'prompt', 'slow', 'forgetful'),
  speed: fc.constantFrom(...rehearsalSpeeds),
  pots: fc.array(
    fc.record({
      protocolId: fc.string({ minLength: 1, unit: 'grapheme' }),
      afterMin: fc.integer({ min: 0, max: afterMinMost })
    }),
    { minLength: 1, maxLength: 6 }
  )
})

describe('a rehearsal as a route', () => {
  it('is read back as it was, whatever its protocols are called', () => {
    fc.assert(
      fc.property(planned, (plan) => {
        expect(plannedOf(rehearsalRoute(plan))).toEqual(plan)
      })
    )
  })

  it('of one protocol is answered by the dyer at sixty times the pace', () => {
    expect(rehearsalOfOne('dip-gradient')).toBe('#/rehearse/own/60/dip-gradient')
  })

  it('without a protocol names none', () => {
    for (const route of ['#/rehearse', '#/rehearse/', '#/rehearse/own/60', '#/rehearse/own/60/', '#/stove/own/60/x']) {
      expect(plannedOf(route)).toBeNull()
    }
  })

  it('with figures that can’t be goes at the usual pace, from the start, with six pots at most', () => {
    expect(plannedOf('#/rehearse/nobody/7/a@-3/b@soon/c@999999')).toEqual({
      answers: 'own',
      speed: 60,
      pots: [
        { protocolId: 'a', afterMin: 0 },
        { protocolId: 'b', afterMin: 0 },
        { protocolId: 'c', afterMin: afterMinMost }
      ]
    })
    expect(plannedOf(`#/rehearse/own/60/${'a/'.repeat(9)}`)?.pots).toHaveLength(6)
    expect(plannedOf('#/rehearse/own/60/%E0%A4%A')?.pots).toEqual([{ protocolId: '%E0%A4%A', afterMin: 0 }])
  })

  it('knows a draft from a protocol', () => {
    expect(draftOfId(idOfDraft('d1'))).toBe('d1')
    expect(draftOfId('dip-gradient')).toBeNull()
  })
})
