// What only shows when the whole is gone through, told at the step it is about.
import { describe, expect, it } from 'vitest'
import { readProtocol } from '../../../src/core/protocol/read.ts'
import { withSteps } from './broken-files.ts'

const acid = 'materials:\n  acid: {kind: acid, strength: 5 %, amount: 2 % owf}\n'

/** Codes with the steps they are placed at. */
const told = (steps: string, header = ''): string[] => {
  const read = readProtocol(withSteps(steps, header))
  return read.ok ? [] : read.problems.map((p) => `${p.code} ${p.where}`)
}

describe('shares', () => {
  it('count once for each round of a loop, and for the dearest answer of a choice', () => {
    expect(told('- repeat: {times: 3, steps: [add: 1/2 of acid]}', acid)).toEqual([
      'shares-over-whole steps[0].repeat.steps[0].add'
    ])
    expect(told('- repeat: {times: 2, steps: [add: 1/2 of acid]}', acid)).toEqual([])
    const choice = (share: string) =>
      `- add: 1/2 of acid\n- choice: {ask: Which?, answers: {a: [add: ${share} of acid], b: [rinse]}}`
    expect(told(choice('2/3'), acid)).toEqual(['shares-over-whole steps[1].choice.answers.a[0].add'])
    expect(told(choice('1/2'), acid)).toEqual([])
  })

  it('leave something for the rest, which is taken once', () => {
    expect(told('- add: all of acid\n- add: the rest of acid', acid)).toEqual(['shares-over-whole steps[1].add'])
    expect(told('- add: 1/2 of acid\n- add: the rest of acid', acid)).toEqual([])
    expect(told('- repeat: {times: 1, steps: [add: the rest of acid]}', acid)).toEqual([
      'rest-unclear steps[0].repeat.steps[0].add'
    ])
  })
})

describe('heat', () => {
  it('may be turned off in every answer, and in a branch of its own', () => {
    expect(
      told('- heat: 80 °C\n- choice: {ask: Which?, answers: {a: [heat: off], b: [hold: 5 min, heat: off]}}')
    ).toEqual([])
    expect(told('- alongside:\n    a: [soak: 30 min]\n    b: [heat: 80 °C]\n- heat: off')).toEqual([])
    expect(told('- until: {ask: {grade: bath, enough: clear}, at most: 2, steps: [heat: 80 °C, heat: off]}')).toEqual(
      []
    )
  })

  it('stays on through an until that may turn it on, and through the rounds of a loop', () => {
    const until = '- until: {ask: {grade: bath, enough: clear}, at most: 2, steps: [heat: 80 °C]}'
    expect(told(until)).toEqual(['heat-left-on steps[0].until.steps[0].heat'])
    expect(told('- repeat: {times: 2, steps: [wait: {for: 5 min, away: true}, heat: 80 °C]}\n- heat: off')).toEqual([
      'away-with-heat-on steps[0].repeat.steps[0].wait'
    ])
  })

  it('forbids to be away in a branch while another one heats', () => {
    expect(told('- alongside:\n    a: [soak: {for: 1 h, away: true}]\n    b: [heat: 80 °C, heat: off]')).toEqual([
      'away-with-heat-on steps[0].alongside.a[0].soak'
    ])
  })
})

describe('moments', () => {
  it('of an otherwise, of one answer and of an until are not sure to come', () => {
    const wait = '- wait: 5 min after R'
    const inOtherwise =
      '- until: {ask: {grade: bath, enough: clear}, at most: 2, steps: [turn], otherwise: [rinse: {id: R}]}'
    const inOneAnswer = '- choice: {ask: Which?, answers: {a: [rinse: {id: R}], b: []}}'
    expect(told(`${inOtherwise}\n${wait}`)).toEqual(['moment-may-not-come steps[1].wait'])
    expect(told(`${inOneAnswer}\n${wait}`)).toEqual(['moment-may-not-come steps[1].wait'])
    expect(
      told('- until: {ask: {grade: bath, enough: clear}, at most: 2, steps: [rinse: {id: R}, wait: 5 min after R]}')
    ).toEqual([])
  })

  it('that wait for each other are told, and so is one that would come after', () => {
    const each = '- alongside:\n    a: [wait: B, rinse: {id: A}]\n    b: [wait: A, rinse: {id: B}]'
    expect(told(each)).toEqual(['moment-comes-later steps[0].alongside.a[0].wait'])
    expect(told('- wait: R\n- rinse: {id: R}')).toEqual(['moment-comes-later steps[0].wait'])
    expect(told('- repeat: {times: 3, steps: [rinse: {id: R}, hold: {for: 5 min, from: R}]}')).toEqual([])
  })
})

describe('grams for a litre', () => {
  it('are refused at their step where nothing says how many litres', () => {
    expect(told('- rinse\n- add: 1 g/L of acid', acid)).toEqual(['liquor-missing steps[1].add'])
    expect(told('- fill: 2 L\n- add: 1 g/L of acid', acid)).toEqual([])
    expect(told('- add: all of acid', acid.replace('2 % owf', '1 g/L'))).toEqual(['liquor-missing steps[0].add'])
  })
})

describe('size', () => {
  it('is counted at the most that an input can ask for', () => {
    const loops = (most: number) =>
      told(
        '- repeat: {times: n, steps: [repeat: {times: n, steps: [rinse]}]}',
        `inputs:\n  n: {ask: n?, kind: count, default: 2, most: ${most}}\n`
      )
    expect(loops(40)).toEqual([])
    expect(loops(50)).toEqual(['too-many-steps steps'])
  })
})
