// What npm run judge measures and prints.
import { spawn } from 'node:child_process'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { say } from '../../src/desk/bench/figure.ts'
import { judge, type Part } from './case.ts'
import type { Kind } from './kinds.ts'
import { height, width } from './scene.ts'
import { figures, type Line, lineOf } from './tally.ts'

/** Of twenty skeins: most are such as can be judged. */
const mix: readonly Kind[] = [
  ...new Array<Kind>(7).fill('split'),
  ...new Array<Kind>(7).fill('dilution'),
  'pale',
  'pale',
  'pale split',
  'two lights',
  'thin series',
  'one photo'
]

/** The kind of the skein with this number. */
export const kindOf = (nth: number): Kind => mix[(nth * 7) % mix.length] as Kind

type Wanted = { skeins: number; from: number; part: Part; processes: number }

export async function run(argv: string[]): Promise<number> {
  const { values } = parseArgs({
    args: argv,
    options: {
      skeins: { type: 'string', default: '720' },
      from: { type: 'string', default: '0' },
      part: { type: 'string', default: 'judge' },
      processes: { type: 'string', default: '2' },
      // Of a process started by this one: `3/2` takes every second skein from the third on.
      share: { type: 'string' }
    }
  })
  const [skeins, from, processes] = [Number(values.skeins), Number(values.from), Number(values.processes)]
  const { part } = values
  const counts = [skeins, from, processes].every((value) => Number.isInteger(value) && value >= 0)
  if (!counts || skeins === 0 || processes === 0 || (part !== 'tune' && part !== 'judge')) {
    console.error('npm run judge -- [--skeins COUNT] [--from FIRST] [--processes COUNT] [--part tune or judge]')
    return 1
  }
  const wanted = { skeins, from, processes, part } satisfies Wanted
  if (values.share === undefined) return whole(wanted)
  for (let nth = from + Number(values.share); nth < from + skeins; nth += processes) {
    console.log(JSON.stringify(lineOf(judge(kindOf(nth), wanted.part, nth))))
  }
  return 0
}

async function whole(wanted: Wanted): Promise<number> {
  const startMs = performance.now()
  const lines: Line[] = []
  const ended = await Promise.all(
    Array.from({ length: wanted.processes }, (_, share) => {
      return oneProcess(wanted, share, (line) => {
        lines.push(line)
        if (lines.length % 50 === 0) console.error(`${lines.length} of ${wanted.skeins} skeins judged`)
      })
    })
  )
  const photos = lines.reduce((sum, line) => sum + line.photos, 0)
  console.log(
    `${lines.length} made-up skeins in ${photos} made-up photos of ${width} x ${height} pixels, part "${wanted.part}", numbers ${wanted.from} to ${wanted.from + wanted.skeins - 1}; ${((performance.now() - startMs) / 60_000).toFixed(0)} min.`
  )
  console.log('They are not yarn and no phone took them: what counts is measured with real skeins, and was not yet.\n')
  const found = figures(lines)
  for (const figure of found) console.log(say(figure))
  const lost = ended.some((code) => code !== 0) || lines.length < wanted.skeins
  if (lost) console.error('A process ended before its skeins were judged.')
  return lost || found.some(({ met }) => met === false) ? 1 : 0
}

function oneProcess(wanted: Wanted, share: number, tell: (line: Line) => void): Promise<number> {
  const door = fileURLToPath(new URL('../../src/desk/judge.ts', import.meta.url))
  const { skeins, from, part, processes } = wanted
  const words = ['--skeins', skeins, '--from', from, '--part', part, '--processes', processes, '--share', share]
  const child = spawn(process.execPath, ['--import', 'tsx', door, ...words.map(String)], {
    stdio: ['ignore', 'pipe', 'inherit']
  })
  createInterface(child.stdout).on('line', (line) => tell(JSON.parse(line) as Line))
  return new Promise((done) => child.on('close', (code) => done(code ?? 1)))
}
