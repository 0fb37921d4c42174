// From what lies on the screen to the verdict.
import { isRefused } from '../../../core/chemistry/answer.ts'
import {
  type Fault,
  type Given,
  type Lab,
  type PhotoRead,
  type Position,
  type Skein,
  severalPhotos,
  splitVerdict
} from '../../../core/colour/index.ts'
import type { ThingRead } from '../../../core/record/swatch.ts'
import type { Judged } from './drawing.ts'

export type Laid = Omit<Given, 'skein'> & { positions: Position[] }

/** Of all photos together; null while one is not read. */
export function laidOut(reads: readonly (PhotoRead | null)[]): { laid: Laid } | { problem: string } | null {
  const whole = reads.filter((read) => read !== null)
  if (whole.length === 0 || whole.length < reads.length) return null
  const gathered = severalPhotos(whole)
  if (!isRefused(gathered)) return { laid: gathered }
  return { problem: gathered.problems.map(({ what, instead }) => `${what} ${instead}`).join(' ') }
}

export function judged(
  { positions, ...laid }: Laid,
  answers: Pick<Skein, 'dry' | 'fibres'>
): Judged & { faults: Fault[] } {
  const sorted = [...positions].sort((one, other) => one.at - other.at)
  const verdict = splitVerdict({ ...laid, skein: { positions, ...answers } })
  const { series, undyed, noise, faults = [] } = laid
  return { series, undyed, noise, faults, verdict, labs: sorted.map(({ lab }) => lab) }
}

type Read = { lab: Lab }

export function thingsRead(undyed: readonly Read[], series: readonly Read[], skein: readonly Read[]): ThingRead[] {
  const each = (of: ThingRead['of'], all: readonly Read[]): ThingRead[] =>
    all.map(({ lab }, nth) => ({ of, nth, lab: rounded(lab) }))
  return [...each('undyed', undyed), ...each('series', series), ...each('skein', skein)]
}

/** A hundredth of a unit is far less than any reading is sure of. */
export const rounded = ({ l, a, b }: Lab): Lab => ({ l: cut(l), a: cut(a), b: cut(b) })
const cut = (value: number): number => Math.round(value * 100) / 100
