// Prints what came of many simulated days: counts, and each failure with its seed.
import { parseArgs } from 'node:util'
import { Counts } from './counts.ts'
import { type DayResult, runDay } from './day.ts'

/** The exit code: 1 when a day failed or the order was not understood. */
export async function report(
  argv: string[],
  print: (line: string) => void = console.log,
  run: (seed: number) => Promise<DayResult> = runDay
): Promise<number> {
  const order = readOrder(argv)
  if (typeof order === 'string') {
    print(order)
    return 1
  }
  const counts = new Counts()
  let entries = 0
  let failed = 0
  const startedMs = performance.now()
  for (let seed = order.from; seed < order.from + order.seeds; seed++) {
    const day = await run(seed)
    counts.take(day.counts)
    entries += day.entries
    if (day.complaints.length > 0) {
      failed += 1
      for (const complaint of day.complaints.slice(0, 5)) print(`seed ${seed}: ${complaint}`)
    }
  }
  for (const line of counts.lines()) print(line)
  const seconds = ((performance.now() - startedMs) / 1000).toFixed(1)
  print(`seeds ${order.from} to ${order.from + order.seeds - 1}: ${failed} failed, ${entries} entries, ${seconds} s`)
  if (failed > 0) print('One of them again: npm run simulate -- --seeds 1 --from SEED')
  return failed > 0 ? 1 : 0
}

function readOrder(argv: string[]): { seeds: number; from: number } | string {
  const say = 'npm run simulate -- --seeds N [--from K]: whole numbers, N from 1 up, K from 0 up'
  try {
    const { values } = parseArgs({
      args: argv,
      options: { seeds: { type: 'string', default: '2000' }, from: { type: 'string', default: '1' } }
    })
    const [seeds, from] = [Number(values.seeds), Number(values.from)]
    return Number.isSafeInteger(seeds) && Number.isSafeInteger(from) && seeds >= 1 && from >= 0 ? { seeds, from } : say
  } catch {
    return say
  }
}
