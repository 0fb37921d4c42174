// Every built-in protocol, and protocols by chance: done by a person who is late and adds their own amounts, made a
// protocol of, and done again by one who is not late. The same acts come in the same order, at the same times.
import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Programme, Step } from '../../../../src/core/protocol/model.ts'
import { grades } from '../../../../src/core/protocol/model.ts'
import { programmeOf } from '../../../../src/core/protocol/programme.ts'
import { readProtocol } from '../../../../src/core/protocol/read.ts'
import type { RehearsalPerson } from '../../../../src/session/rehearsal-person.ts'
import { Chance } from '../../../simulation/chance.ts'
import { anyProtocol } from '../../protocol/any-protocol.ts'
import { inputs, programmeFrom } from '../../protocol/made.ts'
import { actsOf, again, entriesOf, madeOf, run } from './rehearsed.ts'

const folder = new URL('../../../../protocols/', import.meta.url)
const files = readdirSync(folder).filter((file) => file.endsWith('.yaml'))

/** Up to 20 s before an act are left to the next wait, and a wait is rounded by up to half a minute. */
const toleranceMs = 20_000 + 30_000

function lateBy(seed: number, mostS: number): RehearsalPerson {
  const chance = new Chance(seed)
  return {
    delayMs: () => (chance.of(0.5) ? 0 : chance.whole(1, mostS) * 1000),
    answer: (_step: Step, question) =>
      question.kind === 'grade' ? { kind: 'grade', grade: chance.pick(grades), hue: null } : null
  }
}

function compare(programme: Programme, person: RehearsalPerson): void {
  const first = run(programme, person)
  const made = madeOf(entriesOf(first))
  expect(made.leftOut, made.text).toBe(0)
  const second = again(made)
  const rises = second.told.filter(({ event }) => event.type === 'HeatSet' && event.on).length
  const done = actsOf(first, programme)
  const redone = actsOf(second.told, second.programme)
  expect(
    redone.map(({ what }) => what),
    made.text
  ).toEqual(done.map(({ what }) => what))
  // A rehearsed bath that is not where the programme presumes at a second heat is read again and again until it is.
  if (rises > 1) return
  const off = done
    .map((act, i) => ({ what: act.what, atS: act.atMs / 1000, offS: ((redone[i]?.atMs ?? 0) - act.atMs) / 1000 }))
    .filter(({ offS }) => Math.abs(offS) > toleranceMs / 1000)
  expect(off, made.text).toEqual([])
}

describe('a protocol made of what was done', () => {
  for (const file of files) {
    for (const seed of [1, 2, 3]) {
      it(`${file}, done by a late person (seed ${seed}), is done again with the same acts at the same times`, () => {
        const programme = programmeFrom(readFileSync(new URL(file, folder), 'utf8'))
        compare(programme, lateBy(seed, 300))
      })
    }
  }

  it('so is any valid protocol (seed 20310614)', () => {
    let compared = 0
    for (const [i, drawn] of fc.sample(anyProtocol, { numRuns: 120, seed: 20310614 }).entries()) {
      // A bath that nobody heats never gets there: a rehearsal would read it for ever.
      const text = drawn.replaceAll('"until":"40 °C"', '"until":"full steam"').replaceAll(' and until 60 °C', '')
      const read = readProtocol(text)
      if (!read.ok) continue
      const programme = programmeOf(read.protocol, inputs())
      if (!programme.ok) continue
      compare(programme.programme, lateBy(i, 120))
      compared += 1
    }
    expect(compared).toBeGreaterThan(80)
  })
})
