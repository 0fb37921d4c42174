// Whatever is told of a pot, in whatever order, and however it ends: the protocol made of it is one that the reader takes.
import { describe, expect, it } from 'vitest'
import type { PotCommand } from '../../../../src/core/pot/commands.ts'
import type { By } from '../../../../src/core/pot/events.ts'
import { freeProgramme, opened } from '../../../../src/core/protocol/free-pot.ts'
import type { Programme } from '../../../../src/core/protocol/model.ts'
import { readProtocol } from '../../../../src/core/protocol/read.ts'
import { Chance } from '../../../simulation/chance.ts'
import { programmeByChance } from '../../../simulation/chance-programme.ts'
import { answerFor, anyCommand } from '../../../simulation/commands-by-chance.ts'
import { Counts } from '../../../simulation/counts.ts'
import { Bench, PERSON } from '../../pot/given.ts'
import { inputs } from '../../protocol/made.ts'
import { madeOf } from './rehearsed.ts'

const SEEDS = 150
const names = [
  'citric acid',
  'stock Y',
  'water',
  'the salt',
  'a: "b" {c}',
  '½ of it',
  '#',
  'owf',
  'and until 40 °C',
  'Vinegar'
]

function dayOf(seed: number): Bench {
  const chance = new Chance(seed)
  const bench = Bench.start(planFor(chance))
  const turns = chance.whole(0, 60)
  for (let i = 0; i < turns && (bench.state.status === 'running' || bench.state.status === 'held'); i++) {
    const command = commandFor(chance, bench)
    const by: By = PERSON
    bench.try(named(chance, command), chance.of(0.1) ? chance.whole(0, 200_000) : 0, `c${seed}.${i}`, by)
    bench.pass(chance.of(0.4) ? 0 : chance.whole(0, 40))
  }
  return bench
}

function planFor(chance: Chance): Programme {
  if (chance.of(0.7)) return programmeByChance(chance.branch(), new Counts())
  const made = freeProgramme(inputs())
  if (!made.ok) throw new Error('no free pot')
  return opened(made.programme)
}

function commandFor(chance: Chance, bench: Bench): PotCommand {
  const state = bench.run
  const known = bench.state as Exclude<Bench['state'], { status: 'idle' }>
  const active = state.active[chance.whole(0, Math.max(0, state.active.length - 1))]
  const answer = active && chance.of(0.6) ? answerFor(chance, known, active, true) : null
  return answer ?? anyCommand(chance, known, bench.nowMs, bench.entries)
}

/** Names as people write them. */
function named(chance: Chance, command: PotCommand): PotCommand {
  if (command.type === 'AddUnplanned') return { ...command, amount: { ...command.amount, of: chance.pick(names) } }
  if (command.type === 'NoteDeed' && command.word === 'do') return { ...command, say: 'Stir {x}: #1 "so"' }
  if (command.type === 'WriteNote') return { ...command, text: `{x}: "y"\n- heat: the boil ${'z'.repeat(300)}` }
  return command
}

describe('the protocol made of any batch', () => {
  it(`is read without a problem (seeds 1 to ${SEEDS})`, () => {
    const refused: string[] = []
    let lines = 0
    for (let seed = 1; seed <= SEEDS; seed++) {
      const made = madeOf(dayOf(seed).entries)
      const read = readProtocol(made.text)
      lines += made.text.split('\n').length
      if (!read.ok) refused.push(`seed ${seed}: ${JSON.stringify(read.problems.slice(0, 2))}\n${made.text}`)
    }
    expect(refused).toEqual([])
    // Or there was little to read.
    expect(lines).toBeGreaterThan(SEEDS * 20)
  })
})
