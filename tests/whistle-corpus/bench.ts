// What npm run bench:whistle measures and prints.
import { parseArgs } from 'node:util'
import { type Figure, say } from '../../src/desk/bench/figure.ts'
import { USUAL_WHISTLE_DB } from '../../src/shell/whistle/loudness.ts'
import { createRecogniser } from '../../src/shell/whistle/recogniser.ts'
import { fromDb, RATE_HZ } from './filters.ts'
import { alwaysThere, type Kind, kinds } from './kinds.ts'
import { mostEvents } from './likely.ts'
import { count, groundsOf, type Hits, listen, mixed, noHits, type Quiet } from './measure.ts'
import type { Part } from './sounds/speech.ts'
import { type Reach, usual } from './whistle.ts'

const overSound = [20, 10, 5, 0] as const
/** Stretches of 40 s of each kind that whistles are laid over. */
const GROUNDS = 8

type Wanted = { hours: number; after: number; whistles: number; part: Part; kind: string[] }

export function bench(argv: string[]): number {
  const wanted = read(argv)
  if (typeof wanted === 'string') {
    console.error(wanted)
    return 1
  }
  const { there: all, missing } = kinds()
  const unknown = wanted.kind.find((asked) => all.every(({ name }) => name !== asked))
  if (unknown !== undefined) {
    console.error(`--kind is one of ${all.map(({ name }) => name).join(', ')}, not "${unknown}"`)
    return 1
  }
  const there = wanted.kind.length === 0 ? all : all.filter(({ name }) => wanted.kind.includes(name))
  console.log(`Whistles made up by a script, over sounds made up by a script: ${wanted.part} part.`)
  console.log('They are not people, and no kitchen: what counts is measured with people at a stove, and was not yet.')
  for (const program of missing) console.log(`MISSING: ${program} is not installed, so no talk of it was measured.`)
  const figures: Figure[] = []
  const tell = (figure: Figure): void => {
    figures.push(figure)
    console.log(say(figure))
  }
  hits(there, wanted, tell)
  tell(edges(there, wanted))
  tell(tooLoud(wanted))
  falseAccepts(there, wanted, tell)
  const missed = figures.filter(({ met }) => met === false).length
  console.log(missed === 0 ? 'No goal is missed.' : `Goals missed: ${missed}.`)
  return missed === 0 ? 0 : 1
}

function read(argv: string[]): Wanted | string {
  try {
    const { values } = parseArgs({
      args: argv,
      options: {
        hours: { type: 'string' },
        after: { type: 'string' },
        whistles: { type: 'string' },
        part: { type: 'string' },
        kind: { type: 'string', multiple: true }
      }
    })
    const { hours = '0.1', after = '0', whistles = '400', part = 'held-out', kind = [] } = values
    if (!(Number(hours) > 0)) return `--hours is a number of hours of each kind of sound, not "${hours}"`
    if (!(Number(after) >= 0)) return `--after is a number of hours to pass over first, not "${after}"`
    if (!(Number.isInteger(Number(whistles)) && Number(whistles) > 0)) return `--whistles is a count, not "${whistles}"`
    if (part !== 'tune' && part !== 'held-out') return `--part is tune or held-out, not "${part}"`
    return { hours: Number(hours), after: Number(after), whistles: Number(whistles), part, kind }
  } catch (error) {
    return error instanceof Error ? error.message : String(error)
  }
}

const percent = (part: number, whole: number): string => `${((100 * part) / Math.max(1, whole)).toFixed(1)} %`
const added = (a: Hits, b: Hits): Hits => ({
  whistles: a.whistles + b.whistles,
  hit: a.hit + b.hit,
  wrong: a.wrong + b.wrong,
  twice: a.twice + b.twice
})

/** Every kind has whistles of its own: `whistles` at each loudness, shared out among the kinds. */
function heardOver(kind: Kind, which: number, of: number, { whistles, part }: Wanted, db: number, reach?: Reach): Hits {
  const grounds = groundsOf(kind, part, GROUNDS)
  let found = noHits()
  for (let nth = which; nth < whistles; nth += of) found = count(found, mixed(grounds, part, nth, db, reach))
  return found
}

const goals: Record<number, number> = { 10: 0.98, 0: 0.9 }

type Tell = (figure: Figure) => void

function hits(there: Kind[], wanted: Wanted, tell: Tell): void {
  let wrong = noHits()
  for (const db of overSound) {
    const each = there.map((kind, which) => heardOver(kind, which, there.length, wanted, db))
    const all = each.reduce(added, noHits())
    wrong = added(wrong, all)
    const least = goals[db]
    const by = there.map(({ name }, which) => `${name} ${percent(each[which]?.hit ?? 0, each[which]?.whistles ?? 0)}`)
    tell({
      what: `Whistles heard, ${db} dB over the sound`,
      found: `${percent(all.hit, all.whistles)} of ${all.whistles} (heard twice: ${all.twice}); over ${by.join(', ')}`,
      goal: least === undefined ? 'none: a point of the curve' : `${100 * least} %`,
      met: least === undefined ? null : all.hit / all.whistles >= least
    })
  }
  const most = mostEvents(wrong.wrong)
  tell({
    what: 'Heard the wrong way round',
    found: `${wrong.wrong} of ${wrong.whistles} at all four loudnesses (in truth, by chance: ${((100 * most) / wrong.whistles).toFixed(2)} % at most)`,
    goal: 'under 0.2 %',
    met: wrong.wrong / wrong.whistles < 0.002
  })
}

const reaches: [string, Reach][] = [
  ['3 to 4 semitones', { ...usual, semitones: [3, 4] }],
  ['12 to 14 semitones', { ...usual, semitones: [12, 14] }],
  ['0.25 to 0.3 s', { ...usual, sec: [0.25, 0.3] }],
  ['1.1 to 1.2 s', { ...usual, sec: [1.1, 1.2] }]
]

/** The figures above are of whistles of 4 to 12 semitones in 0.3 to 1.1 s, as a person is asked for. */
function edges(there: Kind[], wanted: Wanted): Figure {
  const few = { ...wanted, whistles: Math.ceil(wanted.whistles / 2) }
  const found = reaches.map(([name, reach]) => {
    const all = there.map((kind, which) => heardOver(kind, which, there.length, few, 10, reach)).reduce(added, noHits())
    return `${name}: ${percent(all.hit, all.whistles)} of ${all.whistles}, wrong ${all.wrong}`
  })
  return { what: 'Whistles at the edges, 10 dB over the sound', found: found.join('; '), goal: 'none', met: null }
}

/** Whistles at the level that is presumed, over a fan that gets louder: is what is said of it true? */
function tooLoud({ whistles, part }: Wanted): Figure {
  const fan = alwaysThere.find(({ name }) => name === 'fan') as Kind
  const grounds = groundsOf(fan, part, GROUNDS)
  const tally = { said: noHits(), unsaid: noHits() }
  for (const db of [15, 10, 5, 0, -5, -10, -15, -20]) {
    for (let nth = 0; nth < Math.ceil(whistles / 8); nth++) {
      const one = mixed(grounds, part, nth, db)
      // `mixed` leaves the sound at a tenth of full scale: all of it is moved until the whistle is as loud as presumed.
      const gain = (fromDb(USUAL_WHISTLE_DB) * Math.SQRT1_2) / (0.1 * fromDb(db))
      const recogniser = createRecogniser({ sampleRateHz: RATE_HZ })
      recogniser.push(grounds(nth).map((sample) => sample * 0.1 * gain))
      const which = recogniser.tooLoud() ? 'said' : 'unsaid'
      tally[which] = count(tally[which], one)
    }
  }
  const { said, unsaid } = tally
  return {
    what: '"Too loud to hear you", over a fan',
    found: `heard where it was said: ${percent(said.hit, said.whistles)} of ${said.whistles}; where it was not: ${percent(unsaid.hit, unsaid.whistles)} of ${unsaid.whistles}`,
    goal: 'none',
    met: null
  }
}

function falseAccepts(there: Kind[], { hours, after, part }: Wanted, tell: Tell): void {
  const all: Quiet = { seconds: 0, heard: [], cpuMs: 0 }
  for (const kind of there) {
    const found = listen(kind, part, hours, after)
    all.seconds += found.seconds
    all.cpuMs += found.cpuMs
    const heard = found.heard.length
    const long = found.seconds / 3_600
    const most = mostEvents(heard) / long
    tell({
      what: `Taken for a whistle in ${kind.name}`,
      found: `${heard} in ${long.toFixed(1)} h, ${(heard / long).toFixed(2)} an hour (in truth, by chance: ${most.toFixed(2)} at most)`,
      goal: 'under 1 in ten hours (told from ten hours on)',
      // Too short a stretch shows nothing either way, but what it has heard counts.
      met: heard / long < 0.1 ? (long >= 10 ? true : null) : false
    })
  }
  const share = all.cpuMs / all.seconds / 10
  tell({
    what: 'Work of the recogniser, sound at 16 kHz',
    found: `${(all.cpuMs / all.seconds).toFixed(2)} ms a second of sound, ${share.toFixed(2)} % of a core; ${resampled()}`,
    goal: 'under 3 % of a core',
    met: share < 3
  })
}

function resampled(): string {
  const recogniser = createRecogniser({ sampleRateHz: 48_000 })
  const seconds = 20
  const sound = Float32Array.from(
    { length: 48_000 * seconds },
    (_, nth) => 0.1 * Math.sin(nth * 0.13) * Math.sin(nth * 0.00007)
  )
  const startMs = performance.now()
  for (let at = 0; at < sound.length; at += 128) recogniser.push(sound.subarray(at, at + 128))
  return `with resampling from 48 kHz in blocks of 128: ${((performance.now() - startMs) / seconds).toFixed(2)} ms`
}
