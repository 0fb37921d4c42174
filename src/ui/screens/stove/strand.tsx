// One strand: yarn from the rod to the water, its knots at their heights, labels beside it.
import type { Knot } from '../../../core/pot/knot.ts'
import type { KnotShape } from '../../../core/protocol/model.ts'
import { fitting, type Label, placeLabels, wrap } from './labels.ts'
import type { RodPlace } from './rod.tsx'
import { type DrawnKnot, isGuessed, type StrandShape, strandShape } from './strand-shape.ts'
import { roughSay } from './words.ts'

/** Where a strand hangs in its column; a loop of yarn needs the room beside it. */
export const strandX = (columnPx: number): number => (columnPx < 110 ? 16 : columnPx < 150 ? 24 : 40)

const LANE_PX = 20
/** The width of a bold letter, as a part of its size; wide system fonts have the most. */
const LETTER = 0.66
/** A letter of the words at the cut, px. */
const CUT_LETTER_PX = 8.6

/** A latest time so far off is nobody's plan. */
const NEVER_MS = 12 * 3_600_000

type Props = { knots: Knot[]; nowMs: number; place: RodPlace; column: number; high: number }

export function Strand({ knots, nowMs, place, column, high }: Props): preact.JSX.Element {
  const shape = strandShape(knots, nowMs, high)
  const wide = place.width / place.columns
  const narrow = wide < 150
  const x = column * wide + strandX(wide)
  const lanes = Math.max(0, ...shape.knots.map((k) => k.lane))
  const labelX = x + lanes * LANE_PX + (narrow ? 14 : 22)
  // The rulings say their minutes at the right edge: the last column leaves them room.
  const right = (column + 1) * wide - (column + 1 === place.columns ? place.rulingPx : 4)
  const y = (at: number): number => place.waterY - at
  return (
    <g class="strand">
      <path d={`M${x} ${place.rodY} V${place.waterY}`} class="yarn" />
      {shape.forks.map((fork) => (
        <path
          key={fork.lane}
          d={forkPath(x, fork.lane * LANE_PX, y(fork.from), y(fork.to), place.topY)}
          class="yarn yarn-lane"
        />
      ))}
      {shape.loops.map((loop) => (
        <path
          key={loop.key}
          d={loopPath(x + loop.lane * LANE_PX, y(loop.from), y(loop.to), narrow ? 11 : 34)}
          class="yarn yarn-loop"
        />
      ))}
      {shape.plies.map((ply) => (
        <rect
          key={ply.key}
          x={x + ply.lane * LANE_PX - 6.5}
          y={y(ply.to)}
          width={13}
          height={ply.to - ply.from}
          class="plied"
        />
      ))}
      {shape.ranges.map((range) => (
        <path key={range.key} d={`M${x + range.lane * LANE_PX + 9} ${y(range.from)} V${y(range.to)}`} class="range" />
      ))}
      {shape.knots.map((knot) => (
        <KnotMark key={knot.key} knot={knot} x={x + knot.lane * LANE_PX} y={y(Math.max(knot.at, -9))} />
      ))}
      {shape.cutMs === null ? null : (
        <Cut x={x} place={place} labelX={labelX} cutMs={shape.cutMs} room={right - labelX} />
      )}
      <Labels shape={shape} knots={knots} nowMs={nowMs} labelX={labelX} right={right} x={x} place={place} high={high} />
    </g>
  )
}

function forkPath(x: number, out: number, from: number, to: number, top: number): string {
  const end = Math.max(to, top)
  return `M${x} ${from} c0 -12 ${out} -8 ${out} -22 V${end + 22} c0 -14 ${-out} -10 ${-out} -22`
}

function loopPath(x: number, from: number, to: number, out: number): string {
  return `M${x} ${from} c${-out * 1.35} -4 ${-out * 1.35} ${to - from + 4} 0 ${to - from}`
}

function Cut(props: { x: number; place: RodPlace; labelX: number; cutMs: number; room: number }): preact.JSX.Element {
  const { x, place, labelX, cutMs, room } = props
  const y = place.topY - 12
  return (
    <g>
      <path d={`M${x - 7} ${y + 5} l14 -7 M${x - 7} ${y + 11} l14 -7`} class="cut-gap" />
      <path d={`M${x - 9} ${y + 3} l18 -9 M${x - 9} ${y + 12} l18 -9`} class="cut" />
      <text x={labelX} y={y + 6} class="cut-say">
        {cutSay(cutMs, room)}
      </text>
    </g>
  )
}

function cutSay(cutMs: number, room: number): string {
  const say = roughSay(cutMs)
  return [`ends in about ${say}`, `${say} to end`].find((long) => long.length * CUT_LETTER_PX <= room) ?? say
}

function KnotMark({ knot, x, y }: { knot: DrawnKnot; x: number; y: number }): preact.JSX.Element {
  const sunk = knot.at < 0
  return (
    <g
      transform={`translate(${x} ${y})`}
      class={`knot${knot.faint ? ' knot-faint' : ''}${sunk ? ' knot-sunk' : ''}`}
      data-knot={knot.key}
      data-at={knot.atMs}
    >
      {shapes[knot.shape]}
    </g>
  )
}

const shapes: Record<KnotShape, preact.JSX.Element> = {
  drop: <path d="M0 -12 l8 12 a9.4 9.4 0 1 1 -16 0 z" />,
  band: <ellipse rx="10" ry="6" />,
  ring: <circle r="8" class="knot-ring" />,
  bar: <rect x="-12" y="-4" width="24" height="8" rx="2" />,
  wave: <path d="M-10 -6 q10 10 20 0 M-10 2 q10 10 20 0" class="knot-line" />,
  dot: <circle r="6" />
}

type LabelProps = {
  shape: StrandShape
  knots: Knot[]
  nowMs: number
  labelX: number
  right: number
  x: number
  place: RodPlace
  high: number
}

function Labels({ shape, knots, nowMs, labelX, right, x, place, high }: LabelProps): preact.JSX.Element {
  const lineHeight = place.fontPx * 1.2
  const lineLetters = Math.max(4, Math.floor((right - labelX) / (place.fontPx * LETTER)))
  const room = { height: high, lineHeight, lineLetters, linesMost: 2, slideMost: lineHeight * 1.6 }
  const wishes = shape.knots
    .filter((k) => k.at >= 0)
    .map((k) => ({ key: k.key, text: fitting(wordings(k, shape, knots, nowMs), room), at: k.at, faint: k.faint }))
  return (
    <>
      {placeLabels(wishes, room).map((label) => (
        <LabelMark key={label.key} label={label} x={labelX} knotX={x} place={place} lineLetters={lineLetters} />
      ))}
    </>
  )
}

/** A knot's words, the fullest first: its loop, or its range, and the label alone. */
function wordings(drawn: DrawnKnot, shape: StrandShape, knots: Knot[], nowMs: number): string[] {
  const { label } = drawn
  const knot = knots.find((k) => k.path === drawn.key)
  const loop = knot?.loop ? shape.loops.find((l) => l.key === knot.loop?.path) : undefined
  if (loop) return [`${label}, ${loop.say}`, `${label} ${loop.short}`, label]
  if (!knot || !isGuessed(knot)) return [label]
  const from = Math.max(0, Math.round((knot.leastMs - nowMs) / 60_000))
  const most = knot.mostMs - nowMs
  return [most > NEVER_MS ? `${label}, from ${from} min` : `${label}, ${from} to ${roughSay(most)}`, label]
}

type LabelMarkProps = { label: Label; x: number; knotX: number; place: RodPlace; lineLetters: number }

function LabelMark({ label, x, knotX, place, lineLetters }: LabelMarkProps): preact.JSX.Element {
  const lines = wrap(label.text, lineLetters).slice(0, label.lines)
  const lineHeight = place.fontPx * 1.2
  const middle = place.waterY - label.at
  const first = middle - ((lines.length - 1) * lineHeight) / 2 + place.fontPx * 0.36
  const knotY = place.waterY - (label.ats[0] as number)
  const slid = Math.abs(knotY - middle) > lineHeight * 0.7
  return (
    <g class={`label${label.faint ? ' label-faint' : ''}`}>
      {slid ? <path d={`M${knotX + 11} ${knotY} L${x - 3} ${middle}`} class="leader" /> : null}
      <text font-size={place.fontPx}>
        {lines.map((line, i) => (
          <tspan key={line} x={x} y={first + i * lineHeight}>
            {line.length > lineLetters ? `${line.slice(0, lineLetters - 1)}…` : line}
          </tspan>
        ))}
      </text>
    </g>
  )
}
