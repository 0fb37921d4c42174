import { expect, it } from 'vitest'
import * as chemistry from '../../../src/core/chemistry/index.ts'

it('every function tells its formula and its source, and nothing is told of one that is not there', () => {
  const told = Object.keys(chemistry.about).sort()
  const functions = Object.entries(chemistry)
    .filter(([name, value]) => typeof value === 'function' && name !== 'isRefused')
    .map(([name]) => name)
  expect(told).toEqual(functions.sort())
  for (const { formula, source } of Object.values(chemistry.about)) {
    expect(formula.length).toBeGreaterThan(10)
    expect(source.length).toBeGreaterThan(9)
  }
})
