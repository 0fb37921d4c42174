// @vitest-environment happy-dom
import { describe, expect, it } from 'vitest'
import { freeProgramme } from '../../../src/core/protocol/free-pot.ts'
import { inputs } from '../../core/protocol/made.ts'
import { brew, type FixtureKitchen, noon } from './fixtures.ts'
import { atTheStove, call, key, open, openWith, sent, sheet, tap, text } from './hands.tsx'

atTheStove()

const MIN = 60_000

function programme() {
  const made = freeProgramme(inputs())
  if (!made.ok) throw new Error('no free pot')
  return made.programme
}

/** A free pot that began half an hour ago; `heat`: its heat is on since so many minutes. */
function free(heatMin: number | null): Parameters<typeof open>[0] {
  const on = { type: 'ChangeHeat', on: true, level: null } as const
  const told = heatMin === null ? [] : [{ atMs: noon - heatMin * MIN, command: on }]
  const startedAtMs = noon - 30 * MIN
  return brew({ colourway: 'Fern', colour: '#285f57', programme: programme(), startedAtMs, told }, noon)
}

const told = async (...names: (string | RegExp)[]): Promise<FixtureKitchen> => {
  const kitchen = await open(free(null))
  await tap('Fern: what was done')
  for (const name of names) await tap(name, sheet())
  return kitchen
}

describe('a free pot on the Stove', () => {
  it('shows the time since the last deed and since the start, and that the heat is on', async () => {
    await open(free(5))
    const bath = text(document.querySelector('.bath'))
    expect(bath).toContain('Since the last deed')
    expect(bath).toContain('5:00')
    expect(bath).toContain('Heat is on. Stay by the pot. On for 30 min')
  })

  it.each([
    [['Heat on'], { type: 'ChangeHeat', on: true }],
    [['Skeins in'], { type: 'PutSkeinsIn' }],
    [['Turn'], { type: 'NoteDeed', word: 'turn', say: '' }],
    [['Stir'], { type: 'NoteDeed', word: 'do', say: 'Stir the bath' }],
    [['Air'], { type: 'NoteDeed', word: 'air' }],
    [['Lower to', '1/4'], { type: 'NoteDeed', word: 'lower', say: '1/4 of the skein' }],
    [['Fill', 'It is in'], { type: 'AddUnplanned', amount: { unit: 'mL', of: 'water' } }],
    [['Add', 'It is in'], { type: 'AddUnplanned', amount: { value: 10, unit: 'mL', of: 'vinegar' } }],
    [['Call me', '10 min'], { type: 'MoveDeadline', path: 'free', dueAtMs: noon + 10 * MIN }],
    [['Finish'], { type: 'MarkDone', path: 'free' }]
  ] as const)('%s tells it in two taps at most', async (names, command) => {
    const kitchen = await told(...names)
    expect(sent(kitchen)).toMatchObject([command])
  })

  it('is filled in the dyer’s own measure', async () => {
    const kitchen = await openWith((one) => void one.changeSettings({ volume: 'us' }), [free(null)])
    await tap('Fern: what was done')
    await tap('Fill', sheet())
    expect(text(sheet())).toContain('2 US quarts')
    await tap('Water: 0.25 more', sheet())
    await tap('It is in', sheet())
    const amount = { value: 2.25 * 946.352946, unit: 'mL', of: 'water', asEntered: '2.25 US quarts' }
    expect(sent(kitchen)).toEqual([{ type: 'AddUnplanned', amount }])
  })

  it('takes what went in by the spoon, and begins anew where a figure would be far off', async () => {
    const kitchen = await openWith((one) => void one.changeSettings({ volume: 'us' }), [free(null)])
    await tap('Fern: what was done')
    await tap('Add', sheet())
    await tap('How much: 10 more', sheet())
    await tap('tbsp', sheet())
    await tap('How much: 0.25 more', sheet())
    expect(text(sheet())).toContain('1.25 US tbsp')
    await tap('It is in', sheet())
    const amount = { value: 1.25 * 14.78676478125, unit: 'mL', of: 'vinegar', asEntered: '1.25 US tbsp' }
    expect(sent(kitchen)).toEqual([{ type: 'AddUnplanned', amount }])
  })

  it('keeps a figure from mL to g', async () => {
    const kitchen = await told('Add', 'How much: 10 more', 'g', 'It is in')
    expect(sent(kitchen)).toMatchObject([{ amount: { value: 20, unit: 'g', asEntered: '20 g' } }])
  })

  it('is told by pedal too: the first press shows where the foot is', async () => {
    const kitchen = await open(free(null))
    await key('PageDown')
    expect(sheet()).not.toBeNull()
    for (let i = 0; i < 20 && document.activeElement?.textContent !== 'Turn'; i++) await key('PageUp')
    await key('PageDown')
    expect(sent(kitchen)).toMatchObject([{ type: 'NoteDeed', word: 'turn' }])
  })

  it('says the caution of the acid before it is in', async () => {
    await told('Add')
    expect(text(sheet())).toContain('Acid of unknown strength')
  })

  it('calls when the heat is on and nothing was told for 15 min, and "seen" ends no step', async () => {
    const kitchen = await open(free(16))
    expect(text(call())).toContain('Heat is on. Look at the pot')
    await tap('Fern: seen', call())
    expect(sent(kitchen)).toMatchObject([{ type: 'MarkLooked', path: 'free' }])
  })
})
