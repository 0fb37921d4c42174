import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Programme } from '../../../src/core/protocol/model.ts'
import { roundDose } from '../../../src/core/protocol/programme/amounts.ts'
import { estimateOfNode } from '../../../src/core/protocol/programme/estimate.ts'
import { programmeOf } from '../../../src/core/protocol/programme.ts'
import { readProtocol } from '../../../src/core/protocol/read.ts'
import { nodeAt, sequenceOf, stepsOf } from '../../../src/core/protocol/tree.ts'
import { anyProtocol } from './any-protocol.ts'
import { schemaAllows } from './judge.ts'
import { everyNode, inputs } from './made.ts'

const seed = 20310614
const kept: { programme: Programme; text: string }[] = []
let refused = 0

/** Read once for all checks. Loops of one kind in each other come up by chance and are left out. */
const programmes = (): typeof kept => {
  if (kept.length > 0) return kept
  for (const [text, massG] of fc.sample(fc.tuple(anyProtocol, fc.double({ min: 1, max: 900, noNaN: true })), {
    numRuns: 200,
    seed
  })) {
    const read = readProtocol(text)
    if (!read.ok) {
      const codes = read.problems
        .map((p) => p.code)
        .filter((code) => code !== 'duplicate-id' && code !== 'too-many-steps')
      expect(codes, text).toEqual([])
      refused++
      continue
    }
    const programme = programmeOf(read.protocol, inputs({ skeins: [{ tag: 'S', massG }] }))
    if (!programme.ok) throw new Error(`${text}\n${JSON.stringify(programme.problems)}`)
    kept.push({ programme: programme.programme, text })
  }
  // Or the checks would prove little.
  expect(kept.length).toBeGreaterThan(refused * 3)
  return kept
}

describe('a programme of any valid protocol (seed 20310614)', () => {
  // The reading is most of the work, and this machine may be busy.
  beforeAll(() => void programmes(), 60_000)

  it('guesses least, likely and most in their order, for every node and the whole', () => {
    for (const { programme, text } of programmes()) {
      const estimates = [programme.estimate, ...everyNode(programme.steps).map(estimateOfNode)]
      const spans = estimates.flatMap(({ clock, hands }) => [clock, hands])
      const wrong = spans.filter((s) => !(s.leastMs >= 0 && s.leastMs <= s.likelyMs && s.likelyMs <= s.mostMs))
      expect(wrong, text).toEqual([])
    }
  })

  it('has one path for each node, found again in the tree, and its id as the last part of it', () => {
    for (const { programme } of programmes()) {
      const nodes = everyNode(programme.steps)
      expect(new Set(nodes.map((node) => node.path)).size).toBe(nodes.length)
      const lost = nodes.filter((node) => {
        const { siblings, index } = sequenceOf(programme, node.path)
        const last = node.path.slice(node.path.lastIndexOf('/') + 1)
        return nodeAt(programme, node.path) !== node || last !== node.id || (index >= 0 && siblings[index] !== node)
      })
      expect(lost).toEqual([])
      expect(stepsOf(programme).length).toBeLessThanOrEqual(2000)
    }
  })

  it('sets out shares that come to the whole, and leads from each cup to its step and back', () => {
    for (const { programme, text } of programmes()) {
      const cups = programme.setOut.filter((one) => one.id === 'dye' || one.id.startsWith('dye-'))
      if (cups.length > 0) {
        const percent = Number(/"amount":"([\d.]+) % owf"}/.exec(text)?.[1])
        const wholeML = percent * programme.goodsMassG
        const sum = cups.reduce((total, cup) => total + cup.amount.value, 0)
        // Rounded together, they miss the whole by half a step of the last cup at most.
        const last = cups.at(-1)?.amount.value ?? 0
        const step = last < 1 ? 0.01 : last < 10 ? 0.1 : 1
        expect(Math.abs(sum - wholeML), text).toBeLessThanOrEqual(step / 2 + 1e-6)
        for (const { amount } of cups) expect(roundDose(amount.value, 'mL')).toBe(amount.value)
      }
      const astray = programme.setOut.filter(({ id, paths, amount }) => {
        const nodes = paths.map((path) => nodeAt(programme, path))
        return !(amount.value >= 0) || nodes.some((node) => node?.node !== 'step' || node.dose?.setOutId !== id)
      })
      expect(astray).toEqual([])
    }
  })

  it('is plain data: it reads back from a journal as it was written', () => {
    for (const { programme } of programmes()) expect(JSON.parse(JSON.stringify(programme))).toEqual(programme)
  })

  it('comes from a text that the JSON Schema allows too', () => {
    for (const { text } of programmes()) expect(schemaAllows(text), text).toBe(true)
  })
})
