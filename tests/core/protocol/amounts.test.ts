import { describe, expect, it } from 'vitest'
import { withSteps } from './broken-files.ts'
import { programmeFrom, stepOf } from './made.ts'

const acid = 'materials:\n  acid: {kind: acid, strength: 5 %, amount: 2 % owf}\n'
const plain = (text: string): string => text.replace(/\u00a0/g, ' ')

const setOut = (steps: string, header: string, more = {}) =>
  programmeFrom(withSteps(steps, header), more).setOut.map((one) => [
    one.label,
    one.amount.value,
    one.amount.unit,
    plain(one.sum)
  ])

describe('the list to set out', () => {
  it('has each portion as a labelled cup with its sum, top-ups as if wanted', () => {
    const steps = `
- add: half of the acid
- add: the rest of the acid
- until:
    ask: {grade: bath, enough: trace}
    at most: 2
    steps: [add: 1 % owf of acid]`
    expect(setOut(steps, acid)).toEqual([
      ['acid 1 of 4', 20, 'mL', '2 % × 100 g ÷ 5 % w/v = 40 mL; half of it 20 mL'],
      ['acid 2 of 4', 20, 'mL', '2 % × 100 g ÷ 5 % w/v = 40 mL; half of it 20 mL'],
      ['acid 3 of 4, if wanted', 20, 'mL', '1 % × 100 g ÷ 5 % w/v = 20 mL'],
      ['acid 4 of 4, if wanted', 20, 'mL', '1 % × 100 g ÷ 5 % w/v = 20 mL']
    ])
    const programme = programmeFrom(withSteps(steps, acid))
    expect(stepOf(programme, 'add-2')).toMatchObject({
      call: 'Acid 2 in',
      knot: 'Acid 2',
      dose: { cup: 'acid 2 of 4' }
    })
  })

  it('rounds cups so that they come to the whole', () => {
    // 2.5 % of 50 g at 5 % is 25 mL: two halves of 12.5 mL, and no cup holds half a millilitre.
    const header = acid.replace('2 % owf', '2.5 % owf')
    const cups = setOut('- add: 1/2 of acid\n- add: 1/2 of acid', header, { skeins: [{ tag: 'S', massG: 50 }] })
    expect(cups.map((cup) => cup[1])).toEqual([13, 12])
  })

  it('measures small amounts finer: 0.1 mL under 10 mL, 0.01 mL under 1 mL', () => {
    const doses = (massG: number) => setOut('- add: 2 % owf of acid', acid, { skeins: [{ tag: 'S', massG }] })[0]?.[1]
    expect([doses(100), doses(20), doses(1.11)]).toEqual([40, 8, 0.44])
  })

  it('weighs powders and counts grams for a litre of the liquor', () => {
    const header = 'liquor: 30:1\nmaterials:\n  salt: {kind: powder, amount: 10 % owf}\n'
    expect(setOut('- fill\n- add: all of salt\n- add: 1 g/L of salt', header)).toEqual([
      ['water', 3000, 'mL', '30 × 100 g = 3 L'],
      ['salt 1 of 2', 10, 'g', '10 % × 100 g = 10 g'],
      ['salt 2 of 2', 3, 'g', '1 g/L × 3 L = 3 g']
    ])
  })

  it('mixes a stock by its parts of dye, whatever the strengths', () => {
    const header = `materials:
  Y: {kind: stock, strength: 1 %}
  B: {kind: stock, strength: 2 %}
  mix: {kind: stock, parts: {Y: 3, B: 1}, amount: 1 % owf}\n`
    const list = setOut('- add: all of mix', header)
    // 1 g of dye: 0.75 g of Y at 1 % and 0.25 g of B at 2 %.
    expect(list.map(([label, value]) => [label, value])).toEqual([
      ['mix', 88],
      ['Y for mix', 75],
      ['B for mix', 13]
    ])
  })

  it('gives every jar what its own tab wants', () => {
    const steps =
      '- for each: {jar: [J1, J2], steps: [fill: {to: "{jar}", liquor: 40:1}, add: {of: acid, to: "{jar}", amounts: {J1: 2 % owf, J2: 1 % owf}}]}'
    const skeins = [
      { tag: 'J1', massG: 10 },
      { tag: 'J2', massG: 20 }
    ]
    expect(setOut(steps, acid, { skeins }).map(([label, value]) => [label, value])).toEqual([
      ['water, jar J1', 400],
      ['water, jar J2', 800],
      ['acid, jar J1', 4],
      ['acid, jar J2', 4]
    ])
    expect(programmeFrom(withSteps(steps, acid), { skeins }).liquorML).toBe(1200)
  })

  it('takes kitchen measures as the header says', () => {
    const header = 'kitchen: us\nmaterials:\n  acid: {kind: acid, strength: 5 %, amount: 1 cup}\n'
    expect(setOut('- add: all of acid', header)[0]?.[1]).toBe(237)
  })
})
