import { afterAll, afterEach, describe, expect, it, vi } from 'vitest'
import { runDay } from './day.ts'
import { setPlant } from './plant.ts'
import { type PlantedBug, plantedBugs } from './planted-bugs.ts'

vi.mock('../../src/app/ladder.ts', async (original) => {
  const [honest, { open }] = [await original<typeof import('../../src/app/ladder.ts')>(), await import('./plant.ts')]
  return { ...honest, ladder: open('ladder', honest.ladder) }
})
vi.mock('../../src/core/pot/advance.ts', async (original) => {
  const [honest, { open }] = [
    await original<typeof import('../../src/core/pot/advance.ts')>(),
    await import('./plant.ts')
  ]
  return { ...honest, afterRoundAsk: open('afterRoundAsk', honest.afterRoundAsk) }
})
vi.mock('../../src/core/pot/alerts-due.ts', async (original) => {
  const [honest, { open }] = [
    await original<typeof import('../../src/core/pot/alerts-due.ts')>(),
    await import('./plant.ts')
  ]
  return { ...honest, alertsDue: open('alertsDue', honest.alertsDue) }
})
vi.mock('../../src/core/pot/decide.ts', async (original) => {
  const [honest, { open }] = [
    await original<typeof import('../../src/core/pot/decide.ts')>(),
    await import('./plant.ts')
  ]
  return { ...honest, decide: open('decide', honest.decide) }
})
vi.mock('../../src/core/pot/evolve.ts', async (original) => {
  const [honest, { open }] = [
    await original<typeof import('../../src/core/pot/evolve.ts')>(),
    await import('./plant.ts')
  ]
  return { ...honest, evolve: open('evolve', honest.evolve), evolveDraft: open('evolve', honest.evolveDraft) }
})
vi.mock('../../src/core/pot/fold.ts', async (original) => {
  const [honest, { open }] = [await original<typeof import('../../src/core/pot/fold.ts')>(), await import('./plant.ts')]
  return { ...honest, fold: open('fold', honest.fold) }
})
vi.mock('../../src/core/pot/next-due.ts', async (original) => {
  const [honest, { open }] = [
    await original<typeof import('../../src/core/pot/next-due.ts')>(),
    await import('./plant.ts')
  ]
  return { ...honest, nextDue: open('nextDue', honest.nextDue) }
})
vi.mock('../../src/core/pot/timing.ts', async (original) => {
  const [honest, { open }] = [
    await original<typeof import('../../src/core/pot/timing.ts')>(),
    await import('./plant.ts')
  ]
  return { ...honest, timingOf: open('timingOf', honest.timingOf) }
})
vi.mock('../../src/session/pass-moments.ts', async (original) => {
  const [honest, { open }] = [
    await original<typeof import('../../src/session/pass-moments.ts')>(),
    await import('./plant.ts')
  ]
  return { ...honest, passMoments: open('passMoments', honest.passMoments) }
})
vi.mock('../../src/session/write-ahead.ts', async (original) => {
  const [honest, { open }] = [
    await original<typeof import('../../src/session/write-ahead.ts')>(),
    await import('./plant.ts')
  ]
  return { ...honest, writeAhead: open('writeAhead', honest.writeAhead) }
})

const SEEDS_MOST = 500
const found: string[] = []

/** The first seed whose day tells of the bug, in the words that are meant for it. */
async function catchBug({ plant = {}, journal, caughtBy }: PlantedBug): Promise<{ seed: number; by: string } | null> {
  setPlant(plant)
  for (let seed = 1; seed <= SEEDS_MOST; seed++) {
    const { complaints } = await runDay(seed, { journal })
    const by = complaints.find((complaint) => caughtBy.test(complaint))
    if (by !== undefined) return { seed, by }
  }
  return null
}

describe(`a planted bug is caught within ${SEEDS_MOST} seeds`, () => {
  afterEach(() => setPlant({}))
  afterAll(() => console.log(found.join('\n')))

  for (const bug of plantedBugs) {
    it(bug.name, async () => {
      const caught = await catchBug(bug)
      found.push(`${bug.name}: ${caught === null ? 'not caught' : `seed ${caught.seed}: ${caught.by}`}`)
      expect(caught).not.toBeNull()
    })
  }

  it('and without one, the same days hold', async () => {
    const complaints: string[] = []
    for (let seed = 1; seed <= 20; seed++) complaints.push(...(await runDay(seed)).complaints)
    expect(complaints).toEqual([])
  })
})
