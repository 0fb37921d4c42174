// What the tests of reading share: the value, or a failure that shows the problem.
import { expect } from 'vitest'
import type { QuantityProblem, Read } from '../../../src/core/quantity/index.ts'

export function valueIn<T>(read: Read<T>): T {
  if (!read.ok) throw new Error(`refused: ${JSON.stringify(read.problem)}`)
  return read.value
}

export function problemIn(read: Read<unknown>): QuantityProblem {
  if (read.ok) throw new Error(`not refused: ${JSON.stringify(read.value)}`)
  expect(read.problem.instead).toMatch(/\S/)
  return read.problem
}
