import { describe, expect, it } from 'vitest'
import { type ExpectedHeat, expectedHeat } from '../../src/app/expected-heat.ts'
import type { PotCommand } from '../../src/core/pot/commands.ts'
import type { Expectations } from '../../src/core/pot/expected/expectation.ts'
import { type Kept, memoryKept } from '../../src/shell/settings/kept.ts'
import { PERSON } from '../core/pot/given.ts'
import { act, MIN, programme, ramp } from '../core/pot/programmes.ts'
import { pass, startCommand, type Table, table } from '../session/kitchen-table.ts'

const run = programme([ramp('heat', 20, 80, 2), act('off', { heat: 'off' })])

type Stove = { at: Table; kept: Kept; heat: ExpectedHeat; reads: () => number }

async function stove(at: Table = table(), kept: Kept = memoryKept()): Promise<Stove> {
  await at.session.open()
  let reads = 0
  const { journal } = at
  const counted = {
    summaries: journal.summaries,
    read: (streamId: string) => {
      reads++
      return journal.read(streamId)
    }
  }
  const { nowMs, onTick } = at.clock
  const heat = expectedHeat({ kept, journal: counted, pots: at.session.pots, nowMs, onTick })
  await heat.settle()
  return { at, kept, heat, reads: () => reads }
}

const send = ({ session }: Table, potId: string, command: PotCommand) => session.send(potId, command, { by: PERSON })
const start = (at: Table, potId: string) => send(at, potId, startCommand(potId, potId, run))

/** 20 to 80 °C in 40 min. */
async function batch({ at }: Stove, potId: string): Promise<void> {
  await start(at, potId)
  for (const tempC of [20, 35, 50, 65, 80]) {
    await send(at, potId, { type: 'ReadTemperature', tempC })
    await pass(at, 10 * MIN)
  }
  await send(at, potId, { type: 'Abort', reason: 'a test' })
  await pass(at, 1000)
}

const expectedOf = ({ at, heat }: Stove, potId: string): Expectations => {
  const pot = at.session.pots().find((one) => one.potId === potId)
  if (!pot) throw new Error(`no pot ${potId}`)
  return heat.expecter.value(pot.state).expected
}

describe('a settled batch', () => {
  it('gives the next one in the same pot its first estimate, without a start of the app between them', async () => {
    const on = await stove()
    await batch(on, 'one')
    await on.heat.settle()
    await start(on.at, 'two')
    expect(expectedOf(on, 'two').heat).toMatchObject({ kind: 'at', grounds: { by: 'batches', count: 1 } })
    // The protocol says 30 min.
    const found = expectedOf(on, 'two').heat
    const min = found?.kind === 'at' ? (found.atMs - on.at.clock.nowMs()) / MIN : 0
    expect(Math.abs(min - 40)).toBeLessThan(2)
  })

  it('is read once: the next start of the app goes by its line', async () => {
    const on = await stove()
    await batch(on, 'one')
    await on.heat.settle()
    expect(on.reads()).toBe(1)
    const next = await stove(table({ store: on.at.store, clock: on.at.clock, writerId: 'w2' }), on.kept)
    expect(next.reads()).toBe(0)
    await start(next.at, 'two')
    expect(expectedOf(next, 'two').heat).toMatchObject({ grounds: { by: 'batches', count: 1 } })
  })

  it('is read when the app starts, where its line was never written', async () => {
    const on = await stove()
    await batch(on, 'one')
    const next = await stove(table({ store: on.at.store, clock: on.at.clock, writerId: 'w2' }))
    expect(next.reads()).toBe(1)
  })

  it('whose line can’t be kept costs the estimate alone', async () => {
    const kept = { ...memoryKept(), startingWith: () => Promise.reject(new Error('full')) }
    const on = await stove(table(), kept)
    await batch(on, 'one')
    await on.heat.settle()
    await start(on.at, 'two')
    expect(expectedOf(on, 'two').heat).toMatchObject({ grounds: { by: 'rate' } })
  })
})
