// A new reading on a day of four pots: from the reading to the new times of all four, against bare exponentials, which are
// what the work is made of.
import { newtonC } from '../../core/chemistry/heating/laws.ts'
import { timeToTemperature } from '../../core/chemistry/heating/time-to-temperature.ts'
import { type Figure, ms, quantile, ratio } from './figure.ts'

const TIMES = 300
const READINGS = 40
const EXPONENTIALS = 10_000
const FRAME_MS = 16

const pots = [
  { pot: { fromC: 15, towardsC: 118, perMin: 1 / 32 }, targetC: 85 },
  { pot: { fromC: 40, towardsC: 104, perMin: 1 / 21 }, targetC: 95 },
  { pot: { fromC: 20, towardsC: 90, perMin: 1 / 45 }, targetC: 80 },
  { pot: { fromC: 92, towardsC: 19, perMin: 1 / 70 }, targetC: 40 }
]

export async function newReading(): Promise<Figure> {
  const potsMs: number[] = []
  const bareMs: number[] = []
  for (let no = 0; no < TIMES; no++) {
    bareMs.push(timed(exponentials))
    potsMs.push(timed(() => allPots(no)))
  }
  const [four, bare] = [quantile(potsMs, 0.95), quantile(bareMs, 0.95)]
  return {
    what: `From a new reading to the new times of four pots of ${READINGS} readings, processor time, p95 of ${TIMES}`,
    found: `${ms(four)}; ${EXPONENTIALS} exponentials ${ms(bare)} (${ratio(four, bare)})`,
    goal: `one frame, ${FRAME_MS} ms`,
    met: four <= FRAME_MS
  }
}

/** Shown to the tenth; the last reading differs from time to time, so that nothing can be remembered. */
function allPots(no: number): void {
  for (const { pot, targetC } of pots) {
    const readings = Array.from({ length: READINGS }, (_, i) => {
      const atMin = i + (i === READINGS - 1 ? no / TIMES : 0)
      return { atMin, tempC: Math.round(newtonC(pot, atMin) * 10) / 10 }
    })
    const found = timeToTemperature({ readings, targetC, sdC: 0.3, resolutionC: 0.1 })
    if (found.kind !== 'reached-at') throw new Error(`a pot of the bench is told as ${found.kind}`)
  }
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
