import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { programmeOf } from '../../src/core/protocol/programme.ts'
import { readProtocol } from '../../src/core/protocol/read.ts'
import { stepsOf } from '../../src/core/protocol/tree.ts'
import { rehearse } from '../../src/session/rehearsal.ts'
import { identity, T0 } from '../core/pot/given.ts'
import { anyProtocol } from '../core/protocol/any-protocol.ts'
import { inputs } from '../core/protocol/made.ts'

const seed = 20310614

/** A bath that nobody heats never comes to 40 °C: such a wait is the writer's mistake, and a person's to end. */
const endable = (text: string): string =>
  text.replaceAll('"until":"40 °C"', '"until":"full steam"').replaceAll('10 min and until 60 °C', '10 min')

/** Longer ones take their time here, and show nothing else. */
const stepsMost = 120

describe('the programme of any valid protocol', () => {
  it(`comes to its end when a prompt person answers, whatever they answer (seed ${seed})`, () => {
    let ended = 0
    let worst = 0
    const grades = fc.infiniteStream(fc.constantFrom('clear', 'half', null))
    fc.assert(
      fc.property(anyProtocol.map(endable), grades, (text, answers) => {
        const read = readProtocol(text)
        if (!read.ok) return
        const made = programmeOf(read.protocol, inputs())
        if (!made.ok) throw new Error(JSON.stringify(made.problems))
        const steps = stepsOf(made.programme).length
        if (steps > stepsMost) return
        let calls = 0
        const person = {
          delayMs: () => {
            if (++calls > steps * 40) throw new Error(`it goes in circles: ${text}`)
            return 0
          },
          answer: (_: unknown, question: { kind: string }) => {
            const grade = question.kind === 'grade' ? answers.next().value : null
            return grade ? ({ kind: 'grade', grade, hue: null } as const) : null
          }
        }
        const whole = { title: read.protocol.title, text, version: 'v', from: 'file' as const }
        const done = rehearse(made.programme, identity(), whole, T0, person)
        expect(done.stuck, text).toBeNull()
        expect(done.state.status, text).toBe('complete')
        ended++
        worst = Math.max(worst, done.told.length)
      }),
      { numRuns: 40, seed }
    )
    expect(ended).toBeGreaterThan(20)
    expect(worst).toBeGreaterThan(50)
  }, 120_000)
})
