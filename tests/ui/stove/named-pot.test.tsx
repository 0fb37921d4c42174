// @vitest-environment happy-dom
import { describe, expect, it } from 'vitest'
import { atTheStove, call, open, settle, tap, text } from './hands.tsx'
import * as made from './pots.ts'

atTheStove()

const shown = (): string | null | undefined => document.querySelector('.bath[data-shown]')?.getAttribute('aria-label')

describe('the Stove opened for one pot, as a notice opens it', () => {
  it('shows that pot large, and leaves the address ready for the next notice', async () => {
    const ochre = made.ochre()
    const kitchen = await open(made.moss(), made.plum(), ochre)
    kitchen.signals.route.value = `#/stove/${encodeURIComponent(ochre.potId)}`
    await settle()
    expect(shown()).toBe('Ochre')
    expect(kitchen.route.value).toBe('#/stove')
  })

  it('puts its call before the call of another pot, though it was laid aside', async () => {
    const [late, asks] = [made.mossLate(), made.slateAsks()]
    const kitchen = await open(late, asks)
    const name = (): string => text(call())
    const first = name().includes('Moss') ? 'Moss' : 'Slate'
    const other = first === 'Moss' ? { potId: asks.potId, name: 'Slate' } : { potId: late.potId, name: 'Moss' }
    await tap(/pots/i, call())
    kitchen.signals.route.value = `#/stove/${other.potId}`
    await settle()
    expect(name()).toContain(other.name)
  })

  it('stays as it is where there is no such pot', async () => {
    const kitchen = await open(made.moss(), made.plum())
    const before = shown()
    kitchen.signals.route.value = '#/stove/%E0%A4%A'
    await settle()
    expect(shown()).toBe(before)
    expect(kitchen.route.value).toBe('#/stove')
  })
})
