// A new reading on a day of four pots: from the reading to the new knots of all four, against bare exponentials, which are
// what the work is made of.
import { type Newton, newtonC } from '../../core/chemistry/heating/laws.ts'
import type { PotCommand } from '../../core/pot/commands.ts'
import { decide } from '../../core/pot/decide.ts'
import { evolve } from '../../core/pot/evolve.ts'
import { expectationsOf } from '../../core/pot/expected/expect.ts'
import { forecast } from '../../core/pot/forecast.ts'
import type { LiveState, PotState } from '../../core/pot/state.ts'
import { toTemperature } from './bench-programme.ts'
import { type Figure, ms, quantile, ratio } from './figure.ts'
import { potFor } from './kitchen-page.ts'

const TIMES = 300
const READINGS = 40
const EXPONENTIALS = 10_000
const FRAME_MS = 16

const pots = [
  { pot: { fromC: 15, towardsC: 118, perMin: 1 / 32 }, targetC: 95 },
  { pot: { fromC: 40, towardsC: 104, perMin: 1 / 21 }, targetC: 98 },
  { pot: { fromC: 20, towardsC: 90, perMin: 1 / 45 }, targetC: 80 },
  { pot: { fromC: 92, towardsC: 19, perMin: 1 / 70 }, targetC: 40 }
]

const STEPS_AFTER = 40
const STARTED_MS = Date.UTC(2031, 5, 14, 9)
const MINUTE_MS = 60_000

export async function newReading(): Promise<Figure> {
  const before = pots.map(({ pot, targetC }, no) => readSoFar(`pot-${no}`, pot, targetC))
  const potsMs: number[] = []
  const bareMs: number[] = []
  for (let no = 0; no < TIMES; no++) {
    bareMs.push(timed(exponentials))
    potsMs.push(timed(() => allPots(before, no)))
  }
  const [four, bare] = [quantile(potsMs, 0.95), quantile(bareMs, 0.95)]
  return {
    what: `From a new reading of each of four pots, the ${READINGS}th, to the new knots of all, processor time, p95 of ${TIMES}`,
    found: `${ms(four)}; ${EXPONENTIALS} exponentials ${ms(bare)} (${ratio(four, bare)})`,
    goal: `one frame, ${FRAME_MS} ms`,
    met: four <= FRAME_MS
  }
}

/** A pot with all of its readings but the last, in whole degrees as pads give them. */
function readSoFar(potId: string, pot: Newton, targetC: number): LiveState {
  const programme = toTemperature(pot.towardsC > pot.fromC ? 'up' : 'down', targetC, STEPS_AFTER, 10 * MINUTE_MS)
  let state = told({ status: 'idle' }, { type: 'Start', ...potFor(potId, programme) } as PotCommand, 0)
  for (let min = 0; min < READINGS - 1; min++) state = told(state, readingAt(pot, min), min)
  return state as LiveState
}

/** The last reading differs from time to time, so that nothing can be remembered. */
function allPots(before: readonly LiveState[], no: number): void {
  const atMin = READINGS - 1 + no / TIMES
  const nowMs = STARTED_MS + atMin * MINUTE_MS
  pots.forEach(({ pot }, at) => {
    const state = told(before[at] as LiveState, readingAt(pot, atMin), atMin) as LiveState
    const expected = expectationsOf(state, [])
    const knots = forecast(state, nowMs, expected)
    const { way } = expected
    if (way?.kind !== 'at' || way.grounds.by !== 'readings' || knots[0]?.atMs !== way.atMs) {
      throw new Error(`pot ${at} of the bench is told as ${JSON.stringify(way)}`)
    }
  })
}

function readingAt(pot: Newton, min: number): PotCommand {
  return { type: 'ReadTemperature', tempC: Math.round(newtonC(pot, min)) }
}

function told(state: PotState, command: PotCommand, min: number): PotState {
  const atMs = STARTED_MS + min * MINUTE_MS
  const by = { kind: 'person', name: null, via: 'tap' } as const
  const commandId = `${command.type} ${min}`
  const decision = decide(state, command, { commandId, atMs, by })
  if (!decision.ok) throw new Error(decision.refusal.say)
  const ref = { writerId: 'bench', seq: 0 }
  return decision.events.reduce((now, event) => evolve(now, event, { atMs, commandId, by, ref }), state)
}

function exponentials(): void {
  let sum = 0
  for (let i = 0; i < EXPONENTIALS; i++) sum += Math.expm1(-i / EXPONENTIALS)
  if (sum > 0) throw new Error('exponentials of what is negative are under 1')
}

/** The processor's time and not the clock's: on a busy machine a clock tells how long others had the processor. */
function timed(work: () => void): number {
  const started = process.cpuUsage()
  work()
  const { user, system } = process.cpuUsage(started)
  return (user + system) / 1000
}
