import { describe, expect, it } from 'vitest'
import type { TroubleKind } from '../../../src/core/pot/events.ts'
import { troubleLines } from '../../../src/core/safety/trouble.ts'

const kinds: TroubleKind[] = ['boil-over', 'power-cut', 'gas-out', 'dropped-skein', 'burn', 'must-leave', 'other']

describe('trouble', () => {
  it.each(kinds)('%s: the first line is the act, and heat or gas goes off in it', (kind) => {
    const { act, then } = troubleLines(kind)
    expect(act).toMatch(/^(Heat off|Turn the ring off|Gas off at the tap)\b/)
    expect(act.length).toBeLessThanOrEqual(50)
    expect(then.length).toBeGreaterThanOrEqual(2)
  })

  it('gas: tap, window, no switches, no relighting', () => {
    const said = [troubleLines('gas-out').act, ...troubleLines('gas-out').then].join(' ')
    for (const word of ['tap', 'window', 'No switches', 'no relighting']) expect(said).toContain(word)
  })

  it('power: the ring may restart, the hood is dead', () => {
    const said = [troubleLines('power-cut').act, ...troubleLines('power-cut').then].join(' ')
    for (const word of ['restart', 'hood is dead', 'window']) expect(said).toContain(word)
  })

  it('burn: cool running water for 20 min, help if large, face, child or eye', () => {
    const said = [troubleLines('burn').act, ...troubleLines('burn').then].join(' ')
    for (const word of ['Cool running water', '20 min', 'Large', 'face', 'child', 'eye', 'call for help'])
      expect(said).toContain(word)
  })

  it('who must leave turns the heat off, then asks somebody to stay', () => {
    expect(troubleLines('must-leave').act).toBe('Heat off. Then ask somebody to stay.')
  })
})
