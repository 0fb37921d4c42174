// Readings typed from an instrument: a line for each thing, three figures L*, a* and b*, or a reflectance curve in %;
// several readings of one thing in one line, parted by semicolons.
import { isRefused } from '../../../core/chemistry/answer.ts'
import {
  type Given,
  type Lab,
  labOfReflectance,
  type Point,
  type Position,
  repeatNoise,
  typedLab,
  type White
} from '../../../core/colour/index.ts'
import { rounded } from './judged.ts'

export type Typed = {
  kind: 'lab' | 'reflectance'
  white: White
  undyed: string
  series: string
  skein: string
  /** So many positions at the end were above the liquor, as typed; '' for none. */
  wicking: string
}

export const noTyped: Typed = { kind: 'lab', white: 'D65/10', undyed: '', series: '', skein: '', wicking: '' }

type Field = 'undyed' | 'series' | 'skein' | 'wicking'
export type Lines = { things: Lab[][]; problem: string | null }

/** Curves begin here and go on every 10 nm, as instruments for yarn print them. */
const CURVE_FROM_NM = 400

export function linesOf(text: string, { kind, white }: Pick<Typed, 'kind' | 'white'>): Lines {
  const things: Lab[][] = []
  for (const [nth, line] of text.split('\n').entries()) {
    if (!line.trim()) continue
    const labs: Lab[] = []
    for (const reading of line.split(';')) {
      const figures = figuresOf(reading)
      const lab =
        typeof figures === 'string' ? figures : kind === 'lab' ? labOf(figures, white) : curveOf(figures, white)
      if (typeof lab === 'string') return { things, problem: `Line ${nth + 1}: ${lab}` }
      labs.push(lab)
    }
    things.push(labs)
  }
  return { things, problem: null }
}

function figuresOf(text: string): number[] | string {
  // "42,1 30 11" is a decimal comma, "42.1, 30, 11" a list.
  const plain = /\d\.\d/.test(text) || /,\s/.test(text) ? text.replaceAll(',', ' ') : text.replaceAll(',', '.')
  const words = plain.replaceAll('−', '-').trim().split(/\s+/).filter(Boolean)
  const wrong = words.find((word) => !Number.isFinite(Number(word)))
  return wrong === undefined ? words.map(Number) : `“${wrong}” is no number.`
}

function labOf(figures: number[], white: White): Lab | string {
  if (figures.length !== 3) return `${figures.length} figures where three are wanted: L*, a* and b*.`
  const [l = 0, a = 0, b = 0] = figures
  const answer = typedLab({ l, a, b, white })
  return isRefused(answer) ? answer.problems.map(({ what, instead }) => `${what} ${instead}`).join(' ') : answer.lab
}

function curveOf(figures: number[], white: White): Lab | string {
  const shares = figures.map((percent) => percent / 100)
  const answer = labOfReflectance({ firstNm: CURVE_FROM_NM, everyNm: 10, shares, white })
  return isRefused(answer) ? answer.problems.map(({ what, instead }) => `${what} ${instead}`).join(' ') : answer.lab
}

export type TypedRead = {
  given: Omit<Given, 'skein'> & { positions: Position[] }
  problems: Record<Field, string | null>
}

export function givenOf(typed: Typed): TypedRead {
  const [undyed, series, skein] = (['undyed', 'series', 'skein'] as const).map((field) => linesOf(typed[field], typed))
  const of = (lines: Lines | undefined): Lab[][] => lines?.things ?? []
  const count = of(skein).length
  const wicking = countOf(typed.wicking, count)
  const things = [...of(series), ...of(skein)]
  // Only what was read as often as the rest tells how readings stray.
  const often = Math.max(1, ...things.map((labs) => labs.length))
  const noise = repeatNoise(things.filter((labs) => labs.length === often))
  return {
    problems: {
      undyed: undyed?.problem ?? null,
      series: series?.problem ?? null,
      skein: skein?.problem ?? null,
      wicking: wicking === null ? `Write how many as a whole number, from 0 to ${count}.` : null
    },
    given: {
      undyed: of(undyed)[0] ? pointOf(of(undyed).flat()) : null,
      series: of(series).map(pointOf),
      positions: of(skein).map((labs, nth) => ({
        ...pointOf(labs),
        at: (nth + 0.5) / count,
        band: nth + 1,
        zone: nth >= count - (wicking ?? 0) ? 'wicking' : 'dyed'
      })),
      // An instrument brings its own light.
      noise: { ...noise, photos: often, light: { l: 0, a: 0, b: 0 } }
    }
  }
}

/** The skein's single readings as they are kept, band by band. */
export const singlesOf = (typed: Typed): Lab[][] => linesOf(typed.skein, typed).things.map((labs) => labs.map(rounded))

/** Null: it is no whole number, or more than there are. */
function countOf(text: string, most: number): number | null {
  const written = text.trim()
  return /^\d*$/.test(written) && Number(written) <= most ? Number(written) : null
}

export function pointOf(labs: Lab[]): Point {
  const mean = (axis: keyof Lab): number => labs.reduce((sum, lab) => sum + lab[axis], 0) / labs.length
  return { lab: { l: mean('l'), a: mean('a'), b: mean('b') }, doubt: noDoubt(), lightAt: null }
}

const noDoubt = (): Point['doubt'] => [
  [0, 0, 0],
  [0, 0, 0],
  [0, 0, 0]
]
