// What a thermometer tells of the time to come, in words: the time with its interval, what it rests on, and what to do
// where it will not get there. Temperatures in the dyer's own unit.
import type { PhReading } from '../../../core/pot/events.ts'
import type { Doubt, Expectation, ExpectedAt } from '../../../core/pot/expected/expectation.ts'
import type { PhEstimate } from '../../../core/pot/expected/ph.ts'
import { showTemperature } from '../../../core/quantity/show-temperature.ts'
import type { Units } from '../../../core/quantity/units.ts'
import { clockSay } from './words.ts'

export type ExpectedSay =
  | { kind: 'at'; when: string; from: string }
  /** A remark that stands until the heat or the readings say otherwise. */
  | { kind: 'never'; what: string; instead: string }

export function expectedSay(expected: Expectation, units: Units): ExpectedSay {
  const target = showTemperature(expected.targetC, units)
  if (expected.kind === 'at') return { kind: 'at', when: whenSay(expected, target), from: fromSay(expected, units) }
  const own = 'Or take it: More, Done early.'
  return expected.going === 'up'
    ? {
        kind: 'never',
        what: `This pot will not get to ${target} on this heat.`,
        instead: `More heat, or a lid. ${own}`
      }
    : {
        kind: 'never',
        what: `This pot will not get down to ${target} by itself here.`,
        instead: `Cold water, or a colder place. ${own}`
      }
}

/** "80 °C about 14:20, 14:12 to 14:31" */
function whenSay({ atMs, leastMs, mostMs }: ExpectedAt, target: string): string {
  const about = `${target} about ${clockSay(atMs)}`
  if (mostMs === null) return `${about}, not before ${clockSay(leastMs)}`
  const [from, to] = [clockSay(leastMs), clockSay(mostMs)]
  return from === to ? about : `${about}, ${from} to ${to}`
}

function fromSay(expected: Expectation & ExpectedAt, units: Units): string {
  const { grounds, readings, doubt } = expected
  const by = groundsSay(expected)
  if (doubt === null || grounds.by === 'readings') return by
  const doubted = doubtSay(doubt, expected, units)
  return doubted === null ? `From ${readingsSay(readings)}, ${small(by)}` : `${doubted} ${by}`
}

function groundsSay({ grounds, readings }: ExpectedAt): string {
  switch (grounds.by) {
    case 'readings': {
      const { count, sinceMs } = grounds
      if (count === readings) return `From ${readingsSay(count)}.`
      return `From the ${readingsSay(count)} since ${clockSay(sinceMs)}: before, it went another way.`
    }
    case 'batches': {
      const batches = grounds.count === 1 ? '1 earlier batch' : `${grounds.count} earlier batches`
      const where = grounds.pot ? 'in this pot on this burner' : 'on this burner, with about as much water'
      return `From ${batches} ${where}.`
    }
    case 'rate':
      return 'No earlier batch: by the protocol’s rate.'
  }
}

function readingsSay(count: number): string {
  return count === 1 ? '1 reading' : `${count} readings`
}

function small(sentence: string): string {
  return sentence.charAt(0).toLowerCase() + sentence.slice(1)
}

/** Null: there are only too few readings yet. */
function doubtSay({ code }: Doubt, { going, targetC }: Expectation, units: Units): string | null {
  switch (code) {
    case 'steady':
      return going === 'up' ? 'It does not rise beyond doubt.' : 'It does not fall beyond doubt.'
    case 'may-level-off':
      return `It may level off before ${showTemperature(targetC, units)}.`
    case 'not-one-curve':
      return 'Its readings follow no one curve: lid, water or thermometer?'
    case 'too-few':
    case 'moves-away':
    case 'bad-input':
      return null
  }
}

/** "pH 4.6 read; estimated 3.4 to 4.4 without the yarn" */
export function phSay(reading: PhReading, made: PhEstimate | null): string {
  const beside = made === null ? '' : `; estimated ${made.low} to ${made.high} without the yarn`
  switch (reading.kind) {
    case 'value':
      return `pH ${reading.ph} read${beside}`
    case 'between':
      return `pH ${reading.low} to ${reading.high} read${beside}`
    case 'unreadable':
      return `pH strip stained, not read${beside}`
  }
}
