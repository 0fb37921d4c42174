// What a run of judged skeins adds up to, beside its goals.
import type { Figure } from '../../src/desk/bench/figure.ts'
import { mostEvents } from '../whistle-corpus/likely.ts'
import type { Judged } from './case.ts'
import type { Kind } from './kinds.ts'

/** What is kept of one judged skein. */
export type Line = {
  kind: Kind
  light: string
  photos: number
  /** True turn end to end at equal depth, ΔH*. */
  size: number
  turnedDeg: number
  verdict: Judged['verdict']['verdict']
  why: string
  found: number | null
  sd: number | null
  smallest: number | null
}

export function lineOf({ kind, light, photos, skein, verdict }: Judged): Line {
  const { size, smallestVisibleSplit: smallest, why } = verdict
  const found = size && { found: size.deltaH, sd: size.sd }
  return {
    kind,
    light,
    photos,
    size: skein.size,
    turnedDeg: skein.turnedDeg,
    verdict: verdict.verdict,
    why: why.code,
    found: found?.found ?? null,
    sd: found?.sd ?? null,
    smallest
  }
}

const percent = (part: number, whole: number): string => `${((100 * part) / Math.max(1, whole)).toFixed(1)} %`
/** As high as the true share may be by chance, one-sided 95 %. */
const atMost = (events: number, of: number): string => `${((100 * mostEvents(events)) / Math.max(1, of)).toFixed(2)} %`

/** Never dyed to be judged: the verdict is to be "cannot tell". */
const unjudgeable: Kind[] = ['pale', 'pale split', 'two lights', 'thin series', 'one photo']

const counts = (lines: Line[]): string => {
  const of = (verdict: Line['verdict']): number => lines.filter((line) => line.verdict === verdict).length
  return `split ${of('split')}, only lighter ${of('only-lighter')}, cannot tell ${of('cannot-tell')}`
}

function grouped(lines: Line[], key: (line: Line) => string): Map<string, Line[]> {
  const groups = new Map<string, Line[]>()
  for (const line of lines) groups.set(key(line), [...(groups.get(key(line)) ?? []), line])
  return groups
}

const by = (lines: Line[], key: (line: Line) => string): string =>
  [...grouped(lines, key)]
    .sort(([one], [other]) => one.localeCompare(other))
    .map(([name, some]) => `\n    ${name}: ${some.length} (${counts(some)})`)
    .join('')

export function figures(lines: Line[]): Figure[] {
  return [falseSplits(lines), missed(lines), wronglyLighter(lines), unjudged(lines), strays(lines), reasons(lines)]
}

function falseSplits(lines: Line[]): Figure {
  const same = lines.filter(({ kind }) => kind === 'dilution')
  const wrong = same.filter(({ verdict }) => verdict === 'split')
  const turned = same.filter(({ turnedDeg }) => turnedDeg > 10)
  const most = Math.max(0, ...same.map(({ turnedDeg }) => turnedDeg))
  return {
    what: 'Called split where nothing split: dilution alone',
    found: `${wrong.length} of ${same.length}, ${percent(wrong.length, same.length)} (in truth, by chance: ${atMost(wrong.length, same.length)} at most); ${turned.length} of them turn by more than 10 degrees, the most ${most.toFixed(0)}, and of those ${turned.filter(({ verdict }) => verdict === 'split').length} were called split; by light:${by(same, ({ light }) => light)}`,
    goal: 'under 1 %',
    met: wrong.length / Math.max(1, same.length) < 0.01
  }
}

/** A split counts as missed whatever else was said of it, and where it was said to run the other way. */
function missed(lines: Line[]): Figure {
  const split = lines.filter(({ kind }) => kind === 'split')
  const stated = split.filter(({ smallest }) => smallest !== null)
  const large = stated.filter(({ size, smallest }) => Math.abs(size) >= 2 * (smallest ?? 0))
  const seen = (line: Line): boolean => line.verdict === 'split' && Math.sign(line.found ?? 0) === Math.sign(line.size)
  const gone = large.filter((line) => !seen(line))
  const middle = stated.filter(({ size, smallest = 0 }) => Math.abs(size) >= (smallest ?? 0))
  return {
    what: 'Splits of twice the stated smallest, and more',
    found: `missed ${gone.length} of ${large.length}, ${percent(gone.length, large.length)} (in truth, by chance: ${atMost(gone.length, large.length)} at most); of once the smallest and more, ${percent(middle.filter((line) => !seen(line)).length, middle.length)} of ${middle.length}; no smallest could be stated for ${split.length - stated.length} of ${split.length} (their verdict is "cannot tell"); by light:${by(large, ({ light }) => light)}`,
    goal: 'under 5 %',
    met: gone.length / Math.max(1, large.length) < 0.05
  }
}

function wronglyLighter(lines: Line[]): Figure {
  const said = lines.filter(({ verdict }) => verdict === 'only-lighter')
  const wrong = said.filter(({ size, smallest }) => Math.abs(size) >= (smallest ?? 0))
  return {
    what: 'Called "only lighter" though it split by the smallest stated, or more',
    found: `${wrong.length} of ${said.length} (${percent(wrong.length, said.length)})`,
    goal: 'none set',
    met: null
  }
}

function unjudged(lines: Line[]): Figure {
  const never = lines.filter(({ kind }) => unjudgeable.includes(kind))
  const right = never.filter(({ verdict }) => verdict === 'cannot-tell').length
  return {
    what: '"Cannot tell" where nobody could',
    found: `${right} of ${never.length}, ${percent(right, never.length)}; by kind:${by(never, ({ kind }) => kind)}`,
    goal: '98 %',
    met: right / Math.max(1, never.length) >= 0.98
  }
}

/** Where nothing split, what was found over its standard deviation: 1 would be right, less is careful. */
function strays(lines: Line[]): Figure {
  const z = lines.flatMap(({ kind, found, sd }) =>
    kind === 'dilution' && found !== null && sd !== null ? [found / sd] : []
  )
  const rms = Math.sqrt(z.reduce((sum, value) => sum + value * value, 0) / Math.max(1, z.length))
  const over = (limit: number): string => percent(z.filter((value) => Math.abs(value) > limit).length, z.length)
  return {
    what: 'The stated standard deviation, where nothing split',
    found: `what was found strays by ${rms.toFixed(2)} of it; over 2 of it in ${over(2)}, over 3 in ${over(3)} of ${z.length}`,
    goal: 'none set',
    met: null
  }
}

function reasons(lines: Line[]): Figure {
  const open = lines.filter(({ kind, verdict }) => !unjudgeable.includes(kind) && verdict === 'cannot-tell')
  const of = lines.filter(({ kind }) => !unjudgeable.includes(kind)).length
  const why = [...grouped(open, (line) => line.why)].map(([name, some]) => `${name} ${some.length}`)
  return {
    what: '"Cannot tell" of skeins that were dyed deep enough and photographed well',
    found: `${open.length} of ${of}, ${percent(open.length, of)}: ${why.join(', ')}`,
    goal: 'none set',
    met: null
  }
}
