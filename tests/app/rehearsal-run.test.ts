import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { beginRehearsal } from '../../src/app/rehearsal-run.ts'
import { keptSettings } from '../../src/app/settings.ts'
import { storedProtocols } from '../../src/app/stored-protocols.ts'
import type { Programme } from '../../src/core/protocol/model.ts'
import { memoryKept } from '../../src/shell/settings/kept.ts'
import { memoryPlayer } from '../../src/shell/sound/memory-player.ts'
import type { RehearsalAnswers, RehearsalRun } from '../../src/ui/rehearsing.ts'
import { T0 } from '../core/pot/given.ts'
import { act, gradeOf, programme, until, wait } from '../core/pot/programmes.ts'

const MIN = 60_000
const hands = (min: number) => ({ hands: { leastMs: 0, likelyMs: min * MIN, mostMs: min * MIN } })
const tenThenLift = (): Programme => programme([wait('soak', 10 * MIN), act('lift', hands(3)), wait('drip', MIN)])

let running: RehearsalRun[] = []
let player = memoryPlayer()
let real = false

async function begin(
  plans: { plan: Programme; afterMin?: number }[],
  answers: RehearsalAnswers,
  speed = 60
): Promise<RehearsalRun> {
  let ids = 0
  const pots = plans.map(({ plan, afterMin = 0 }) => ({
    programme: plan,
    protocol: { title: 'Test', text: '', version: 'v', from: 'file' as const },
    startsMs: afterMin * MIN
  }))
  const run = await beginRehearsal(
    {
      settings: keptSettings(memoryKept(), 'en-GB'),
      protocols: storedProtocols(memoryKept()),
      player,
      newId: () => `id${++ids}`,
      nowMs: () => T0,
      realPots: () => real
    },
    { pots, answers, speed }
  )
  running.push(run)
  return run
}

/** Real time as the page has it. */
const pass = (ms: number): Promise<unknown> => vi.advanceTimersByTimeAsync(ms)
const calls = (run: RehearsalRun): string[] =>
  run.kitchen.pots.value.flatMap(({ alerts }) => alerts.filter(({ kind }) => kind !== 'headsUp').map(({ key }) => key))

const answerLift = async (run: RehearsalRun): Promise<void> => {
  const [pot] = run.kitchen.pots.value
  expect(await run.kitchen.send(pot?.potId ?? '', { type: 'MarkDone', path: 'lift' })).toEqual({ ok: true })
}

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval', 'setTimeout', 'clearTimeout', 'performance'] })
  player = memoryPlayer()
  void player.unlock()
  real = false
})
afterEach(() => {
  for (const run of running) run.close()
  running = []
  vi.useRealTimers()
})

describe('a rehearsal on the screen', () => {
  it('goes at its pace, and stands while it is paused', async () => {
    const run = await begin([{ plan: tenThenLift() }], 'own')
    await pass(2_000)
    expect(run.passedMs.value).toBeGreaterThan(1.9 * MIN)
    expect(run.passedMs.value).toBeLessThan(2.1 * MIN)
    run.pause(true)
    const stood = run.passedMs.value
    await pass(5_000)
    expect(run.passedMs.value).toBe(stood)
    run.pause(false)
    run.setSpeed(300)
    await pass(1_000)
    expect(run.passedMs.value - stood).toBeGreaterThan(4.7 * MIN)
    expect(run.passedMs.value - stood).toBeLessThan(5.3 * MIN)
  })

  it('a page that was asleep does not make up for it', async () => {
    const run = await begin([{ plan: tenThenLift() }], 'own')
    await pass(100)
    vi.setSystemTime(Date.now() + 3_600_000)
    const slept = performance.now() + 3_600_000
    vi.spyOn(performance, 'now').mockImplementation(() => slept)
    await pass(50)
    vi.restoreAllMocks()
    expect(run.passedMs.value).toBeLessThan(2 * MIN)
  })

  it('stops at a call for the dyer, goes no faster than the stove then, and on when it is answered', async () => {
    const run = await begin([{ plan: tenThenLift() }], 'own', 600)
    await pass(1_500)
    expect(calls(run)).toHaveLength(1)
    expect(run.passedMs.value).toBeGreaterThanOrEqual(10 * MIN)
    expect(run.passedMs.value).toBeLessThan(10 * MIN + 2_000)
    expect(run.goes.value).toBe(1)
    await answerLift(run)
    await pass(100)
    expect(run.goes.value).toBe(600)
  })

  it('a call sounds once, and not at all while a real pot is on or somebody else answers', async () => {
    const run = await begin([{ plan: tenThenLift() }], 'own', 600)
    await pass(4_000)
    expect(player.played).toHaveLength(1)
    run.close()
    real = true
    await begin([{ plan: tenThenLift() }], 'own', 600)
    await pass(4_000)
    expect(player.played).toHaveLength(1)
    real = false
    await begin([{ plan: tenThenLift() }], 'prompt', 600)
    await pass(4_000)
    expect(player.played).toHaveLength(1)
  })

  it('somebody prompt brings it to its end: what it took, and what called', async () => {
    const run = await begin([{ plan: tenThenLift() }], 'prompt', 600)
    await pass(3_000)
    expect(run.report.value?.pots).toMatchObject([{ name: 'Plum', title: 'Test', tookMs: 11 * MIN }])
    expect(run.report.value?.acts).toMatchObject([{ pot: 'Plum', act: 'lift', atMs: 10 * MIN, waitedMs: 0 }])
    expect(run.report.value?.meetings).toEqual([])
    expect(run.goes.value).toBe(0)
  })

  it('the dyer’s own answers bring it to its end as well, also while it is paused', async () => {
    for (const paused of [false, true]) {
      const run = await begin([{ plan: tenThenLift() }], 'own', 1)
      await run.toNextCall()
      await answerLift(run)
      await run.toNextCall()
      expect(run.passedMs.value).toBe(11 * MIN)
      run.pause(paused)
      expect(run.report.value).toBeNull()
      const potId = run.kitchen.pots.value[0]?.potId ?? ''
      expect(await run.kitchen.send(potId, { type: 'Finish', bath: 'dropped' })).toEqual({ ok: true })
      await pass(10)
      expect(run.report.value?.pots).toMatchObject([{ name: 'Plum', tookMs: 11 * MIN }])
      expect(run.report.value?.acts).toMatchObject([{ pot: 'Plum', act: 'lift', atMs: 10 * MIN, waitedMs: 0 }])
    }
  })

  it('is not over while a pot is still to start', async () => {
    const run = await begin([{ plan: tenThenLift() }, { plan: tenThenLift(), afterMin: 30 }], 'own', 1)
    await run.toNextCall()
    const potId = run.kitchen.pots.value[0]?.potId ?? ''
    expect(await run.kitchen.send(potId, { type: 'Abort', reason: 'rehearsed enough' })).toEqual({ ok: true })
    await pass(10)
    expect(run.report.value).toBeNull()
    await run.toNextCall()
    expect(run.passedMs.value).toBe(40 * MIN)
  })

  it('two pots meet where both want hands, and one that starts later is told of before', async () => {
    const both = [{ plan: tenThenLift() }, { plan: tenThenLift(), afterMin: 2 }]
    const run = await begin(both, 'prompt', 60)
    expect(run.coming.value).toEqual([{ name: 'Moss', inMs: 2 * MIN }])
    expect(run.kitchen.pots.value).toHaveLength(1)
    await pass(3_000)
    expect(run.coming.value).toEqual([])
    expect(run.kitchen.pots.value).toHaveLength(2)
    await pass(15_000)
    expect(run.report.value?.meetings).toEqual([
      { atMs: 12 * MIN, first: 'Plum: lift', second: 'Moss: lift', waitedMs: MIN }
    ])
  })

  it('skips nothing while a call waits for the dyer, and says which is to be answered', async () => {
    const run = await begin([{ plan: tenThenLift() }, { plan: tenThenLift(), afterMin: 2 }], 'own', 1)
    await run.toNextCall()
    expect(run.passedMs.value).toBe(10 * MIN)
    expect(run.first.value).toBeNull()
    await run.toNextCall()
    expect(run.passedMs.value).toBe(10 * MIN)
    expect(run.first.value).toBe('Answer Plum first.')
    // Also while it is paused: then no beat looks at what stands.
    run.pause(true)
    await answerLift(run)
    expect(run.first.value).toBeNull()
    await run.toNextCall()
    expect(run.passedMs.value).toBe(11 * MIN)
  })

  it('goes on past a call that somebody else is to answer', async () => {
    const run = await begin([{ plan: tenThenLift() }, { plan: tenThenLift(), afterMin: 1 }], 'own', 1)
    await run.toNextCall()
    await run.toNextCall()
    expect(run.first.value).toBe('Answer Plum first.')
    run.setAnswers('slow')
    expect(run.first.value).toBeNull()
    await run.toNextCall()
    expect(run.passedMs.value).toBe(11 * MIN)
    expect(calls(run)).toHaveLength(2)
  })

  it('goes past a limit that runs out: no answer ends it', async () => {
    const gap = { from: 'wet', to: 'lift', atLeastMs: null, atMostMs: 5 * MIN, late: 'shift' as const }
    const steps = [wait('wetting', MIN, { marks: ['wet'] }), wait('soak', 9 * MIN), act('lift', { marks: ['lift'] })]
    const run = await begin([{ plan: programme(steps, [gap]) }], 'own', 1)
    await run.toNextCall()
    expect(run.passedMs.value).toBe(5 * MIN)
    await run.toNextCall()
    expect(run.passedMs.value).toBe(10 * MIN)
  })

  it('says where no call comes until the dyer does something', async () => {
    const plan = programme([wait('never', null, { until: [{ kind: 'moment', name: 'nothing' }] })])
    const run = await begin([{ plan }], 'own', 1)
    await run.toNextCall()
    expect(run.first.value).toBe('Nothing comes by itself now.')
  })

  it('goes to the next call at once, and from one that was answered to the next', async () => {
    const plan = programme([wait('a', 5 * MIN), act('one'), wait('b', 20 * MIN), act('two')])
    const run = await begin([{ plan }], 'own', 1)
    await run.toNextCall()
    expect(run.passedMs.value).toBe(5 * MIN)
    const first = calls(run)
    expect(first).toHaveLength(1)
    await run.kitchen.send(run.kitchen.pots.value[0]?.potId ?? '', { type: 'MarkDone', path: 'one' })
    await run.toNextCall()
    expect(run.passedMs.value).toBe(25 * MIN)
    expect(calls(run)).not.toEqual(first)
  })

  it('says where nobody made up can answer, and the dyer can take over', async () => {
    const never = programme([wait('never', null, { until: [{ kind: 'moment', name: 'nothing' }] })])
    const run = await begin([{ plan: never }], 'slow', 60)
    await pass(500)
    expect(run.stuck.value).toBe('Nobody here can answer Plum: never.')
    expect(run.goes.value).toBe(0)
    run.setAnswers('own')
    expect(run.stuck.value).toBeNull()
  })

  it('says at once that a bath will never be as warm as a step waits for', async () => {
    const hot = { kind: 'temperature' as const, lowC: 90, highC: null, going: 'up' as const }
    const run = await begin([{ plan: programme([wait('warm', null, { until: [hot] })]) }], 'prompt', 60)
    await pass(500)
    expect(run.stuck.value).toMatch(/^Plum: warm: waits for 90 °C, which the simulated bath never reaches/)
    expect(run.passedMs.value).toBe(0)
  })

  it('says that something broke, and goes on when it is asked to', async () => {
    const run = await begin([{ plan: tenThenLift() }], 'own', 60)
    const { played } = player
    player.play = () => {
      throw new Error('no speaker')
    }
    await run.toNextCall()
    expect(run.stuck.value).toBe('It broke: no speaker')
    player.play = () => played.push({ pattern: 'now', level: 1 }) > 0
    const stood = run.passedMs.value
    run.pause(false)
    await pass(1_000)
    expect(run.passedMs.value).toBeGreaterThan(stood)
  })

  it('a loop answered as hoped ends, and a thermometer shows each pot that is on', async () => {
    const plan = programme([wait('soak', 10 * MIN), until('clear', gradeOf('bath'), 3, [wait('w', MIN)])])
    const run = await begin([{ plan }], 'forgetful', 600)
    expect(run.baths.value).toMatchObject([{ name: 'Plum', tempC: 20 }])
    await pass(10_000)
    expect(run.report.value?.pots[0]?.tookMs).toBe(10 * MIN)
    expect(run.baths.value).toEqual([])
  })
})
