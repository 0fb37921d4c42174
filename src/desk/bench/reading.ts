// From a long protocol's text to a programme for one pot, against the YAML library alone on the same text.
import { parse } from 'yaml'
import { programmeOf } from '../../core/protocol/programme.ts'
import { readProtocol } from '../../core/protocol/read.ts'
import { stepsOf } from '../../core/protocol/tree.ts'
import { type Figure, median, ms, ratio } from './figure.ts'
import { longProtocol } from './long-protocol.ts'

const TRIES = 40
/** The first ones are the compiler's. */
const WARMING = 5
const RATIO_MOST = 3
/** As many as the language lets anybody write; the loop around them makes a thousand. */
const WRITTEN = 500
const ROUNDS = 2

export async function reading(): Promise<Figure> {
  const readMs: number[] = []
  const bareMs: number[] = []
  let steps = 0
  for (let no = -WARMING; no < TRIES; no++) {
    const text = `${longProtocol(WRITTEN, ROUNDS)}# ${no}\n`
    const bare = timed(() => parse(text))
    const read = timed(() => {
      steps = stepsMade(text)
    })
    if (no < 0) continue
    bareMs.push(bare)
    readMs.push(read)
  }
  const [read, bare] = [median(readMs), median(bareMs)]
  return {
    what: `A protocol of ${WRITTEN} written steps read and made a programme of ${steps}, median of ${TRIES}`,
    found: `${ms(read)}; the YAML library alone on the same text ${ms(bare)} (${ratio(read, bare)})`,
    goal: `${ms(bare * RATIO_MOST)} or less: ${RATIO_MOST} x the library`,
    met: read <= bare * RATIO_MOST && steps >= 990
  }
}

function timed(work: () => void): number {
  const beganMs = performance.now()
  work()
  return performance.now() - beganMs
}

function stepsMade(text: string): number {
  const read = readProtocol(text)
  if (!read.ok) throw new Error(`The bench's protocol can't be read: ${JSON.stringify(read.problems.slice(0, 3))}`)
  const skeins = [{ tag: 'A1', massG: 137 }]
  const made = programmeOf(read.protocol, { skeins, values: {}, materials: {}, roomC: 21, boilC: 99 })
  if (!made.ok) throw new Error(`The bench's protocol can't be made: ${JSON.stringify(made.problems.slice(0, 3))}`)
  return stepsOf(made.programme).length
}
