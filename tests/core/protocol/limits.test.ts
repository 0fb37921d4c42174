// A file is hostile input: each limit is held where it is said to be, and is named where it is passed.
import { describe, expect, it } from 'vitest'
import { programmeOf } from '../../../src/core/protocol/programme.ts'
import { readProtocol } from '../../../src/core/protocol/read.ts'
import { withSteps } from './broken-files.ts'
import { inputs, protocolFrom } from './made.ts'

type Limit = { name: string; within: string; over: string; code: string; named: string }

const lines = (n: number): string => `${withSteps('- rinse')}${'#\n'.repeat(n - 5)}`
const bytes = (n: number): string => {
  const text = withSteps('- rinse')
  return `${text}# ${'x'.repeat(n - text.length - 2)}`
}
// Commas in a comment are signs as well: what comes before the parser can't tell a comment.
const signs = (n: number): string => `${withSteps('- rinse')}# ${','.repeat(n - 4)}`
const nested = (levels: number): string => {
  const deepest = (n: number): string => (n === 0 ? 'rinse' : `{repeat: {times: 1, steps: [${deepest(n - 1)}]}}`)
  return `strandline: 1\ntitle: T\nsteps: [${deepest(levels)}]\n`
}
const twice = (inner: string, rounds: number): string => `repeat: {times: ${rounds}, steps: [${inner}]}`
const jars = (n: number): string => Array.from({ length: n }, (_, i) => `J${i + 1}`).join(', ')
const input = (most: number): string => `inputs:\n  n: {ask: How often?, kind: count, default: ${most}}\n`

const limits: Limit[] = [
  { name: 'bytes', within: bytes(256 * 1024), over: bytes(256 * 1024 + 1), code: 'too-large', named: '256 kB' },
  { name: 'lines', within: lines(6000), over: lines(6001), code: 'too-large', named: '6000 lines' },
  { name: 'signs', within: signs(10_000), over: signs(10_001), code: 'too-large', named: '10000 brackets' },
  // Three levels a repeat: the map of the step, that of its fields, the list of its steps.
  { name: 'nesting', within: nested(7), over: nested(8), code: 'nested-too-deep', named: '24 levels' },
  {
    name: 'written steps',
    within: withSteps('- turn\n'.repeat(500)),
    over: withSteps('- turn\n'.repeat(501)),
    code: 'too-many-steps',
    named: '500'
  },
  {
    name: 'steps written out',
    within: withSteps(`- ${twice(twice('turn', 40), 50)}`),
    over: withSteps(`- ${twice(twice('turn', 40), 51)}`),
    code: 'too-many-steps',
    named: '2000'
  },
  {
    name: 'rounds of a repeat',
    within: withSteps(`- ${twice('turn', 60)}`),
    over: withSteps(`- ${twice('turn', 61)}`),
    code: 'out-of-limits',
    named: '60'
  },
  {
    name: 'rounds that an answer gives',
    within: withSteps('- repeat: {times: n, steps: [turn]}', input(60)),
    over: withSteps('- repeat: {times: n, steps: [turn]}', input(61)),
    code: 'out-of-limits',
    named: '60'
  },
  {
    name: 'passes of an until',
    within: withSteps('- until: {ask: {grade: bath, enough: trace}, at most: 60, steps: [turn]}'),
    over: withSteps('- until: {ask: {grade: bath, enough: trace}, at most: 61, steps: [turn]}'),
    code: 'out-of-limits',
    named: '60'
  },
  {
    name: 'items',
    within: withSteps(`- for each: {jar: [${jars(60)}], steps: [turn]}`),
    over: withSteps(`- for each: {jar: [${jars(61)}], steps: [turn]}`),
    code: 'out-of-limits',
    named: '60'
  },
  {
    name: 'one length of time',
    within: withSteps('- hold: 60 days'),
    over: withSteps('- hold: 61 days'),
    code: 'out-of-range',
    named: '60 days'
  },
  {
    name: 'the estimated length',
    within: withSteps('- repeat: {times: 3, steps: [hold: 20 days]}'),
    over: withSteps('- repeat: {times: 3, steps: [hold: 20.1 days]}'),
    code: 'lasts-too-long',
    named: '60 days'
  }
]

describe('the limit on', () => {
  it.each(limits)('$name lets its last through, and the next is told what the limit is', (limit) => {
    const { within, over, code, named } = limit
    const read = readProtocol(within)
    expect(read.ok ? [] : read.problems).toEqual([])
    const refused = readProtocol(over)
    if (refused.ok) throw new Error('the text over the limit was taken')
    const [first] = refused.problems
    expect(first?.code).toBe(code)
    expect(`${first?.what} ${first?.instead}`).toContain(named)
  })

  it('the estimated length holds for what is typed at the start as well', () => {
    const header = 'inputs:\n  each: {ask: How long?, kind: time, default: 6 min}\n'
    const protocol = protocolFrom(withSteps('- repeat: {times: 60, steps: [hold: "{each}"]}', header))
    expect(programmeOf(protocol, inputs({ values: { each: '24 h' } })).ok).toBe(true)
    const long = programmeOf(protocol, inputs({ values: { each: '30 h' } }))
    expect(long).toMatchObject({
      ok: false,
      problems: [{ code: 'lasts-too-long', what: 'It may take 75 days.', instead: expect.stringContaining('60 days') }]
    })
  })
})
