// The strand lying flat: planned above, done below, a thread from each planned knot to the done one; a slanting thread
// is lateness, and long waits are cut. On a narrow screen it hangs, planned left and done right. The words beside it
// say the same: the picture is for the eye alone.
import { useRef } from 'preact/hooks'
import { showDuration } from '../../core/quantity/index.ts'
import { useBox } from './box.ts'
import { KnotMark } from './knot-mark.tsx'
import './lying-strand.css'
import { gatherLabels, type StrandItem } from './strand-items.ts'
import { slide, type TimeAxis, timeAxis } from './time-axis.ts'

export type LyingStrandProps = {
  items: readonly StrandItem[]
  /** What the picture shows, for the ear. */
  title: string
  /** Only a plan: one row, no threads. */
  planOnly?: boolean
}

const NARROW_PX = 640
const LETTER_PX = 7.6
const LABEL_PX = 22

export function LyingStrand({ items, title, planOnly = false }: LyingStrandProps): preact.JSX.Element | null {
  const frame = useRef<HTMLDivElement>(null)
  const { width } = useBox(frame, { width: 900, height: 0 })
  if (items.length === 0) return null
  const ordered = [...items].sort((a, b) => placeOf(a) - placeOf(b))
  const times = ordered.flatMap((i) => [i.plannedMs, i.doneMs]).filter((t) => t !== null)
  const narrow = width < NARROW_PX
  return (
    <div class="lying-strand" ref={frame} role="img" aria-label={title}>
      {narrow ? (
        <Hung items={ordered} times={times} width={width} planOnly={planOnly} />
      ) : (
        <Flat items={ordered} times={times} width={width} planOnly={planOnly} />
      )}
    </div>
  )
}

type RowsProps = { items: StrandItem[]; times: number[]; width: number; planOnly: boolean }

function placeOf(item: StrandItem): number {
  return item.plannedMs ?? item.doneMs ?? 0
}

function Flat({ items, times, width, planOnly }: RowsProps): preact.JSX.Element {
  const left = planOnly ? 16 : 58
  const length = width - left - 24
  const axis = timeAxis(times, length, 5)
  const labels = gatherLabels(items)
  const rooms = labels.map((l) => l.text.length * LETTER_PX + 14)
  const levels = Math.min(4, Math.max(1, Math.ceil(rooms.reduce((a, b) => a + b, 0) / (length * 0.85))))
  const places = labels.map((l) => middle(items, l.first, l.last, axis))
  const slid = slideLevels(places, rooms, levels, length)
  const planY = 14 + levels * LABEL_PX
  const doneY = planY + 84
  const height = (planOnly ? planY : doneY) + 44
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      {labels.map((label, i) => {
        const x = left + (slid[i] as number)
        const y = 14 + (i % levels) * LABEL_PX
        const foot = left + (places[i] as number)
        return (
          <g key={label.first}>
            <path class="strand-leader" d={`M${x} ${y + 5} L${foot} ${planY - 13}`} />
            <text class="strand-label" x={x} y={y} text-anchor="middle">
              {label.text}
            </text>
          </g>
        )
      })}
      <Yarn axis={axis} at={(t) => [left + t, planY]} />
      {planOnly ? null : <Yarn axis={axis} at={(t) => [left + t, doneY]} until={doneUntil(items, axis)} />}
      {planOnly ? null : (
        <>
          <text class="strand-row" x="0" y={planY + 5}>
            plan
          </text>
          <text class="strand-row" x="0" y={doneY + 5}>
            done
          </text>
        </>
      )}
      {axis.cuts.map((cut) => (
        <text
          key={cut.at}
          class="strand-cut-text"
          x={left + cut.at}
          y={(planOnly ? planY : doneY) + 32}
          text-anchor="middle"
        >
          {showDuration(cut.lengthMs)}
        </text>
      ))}
      <Threads items={items} axis={axis} plan={(t) => [left + t, planY]} done={(t) => [left + t, doneY]} lies />
    </svg>
  )
}

function Hung({ items, times, width, planOnly }: RowsProps): preact.JSX.Element {
  const labels = gatherLabels(items)
  const planX = planOnly ? 18 : 22
  const doneX = planOnly ? planX : 84
  const length = Math.max(260, labels.length * 30 + 60)
  const top = planOnly ? 16 : 40
  const axis = timeAxis(times, length, 12)
  // What a cut leaves out is told in the row of labels: between the strands there is no room for it.
  const words = [
    ...labels.map((l) => ({ text: l.text, at: middle(items, l.first, l.last, axis, !planOnly), cut: false })),
    ...axis.cuts.map((cut) => ({ text: showDuration(cut.lengthMs), at: cut.at, cut: true }))
  ].sort((one, other) => one.at - other.at)
  const slid = slide(
    words.map((word) => word.at),
    words.map(() => LABEL_PX),
    length + LABEL_PX
  )
  const height = top + length + 30
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      {planOnly ? null : (
        <>
          <text class="strand-row" x={planX} y="16" text-anchor="middle">
            plan
          </text>
          <text class="strand-row" x={doneX} y="16" text-anchor="middle">
            done
          </text>
        </>
      )}
      <Yarn axis={axis} at={(t) => [planX, top + t]} />
      {planOnly ? null : <Yarn axis={axis} at={(t) => [doneX, top + t]} until={doneUntil(items, axis)} />}
      <Threads items={items} axis={axis} plan={(t) => [planX, top + t]} done={(t) => [doneX, top + t]} lies={false} />
      {words.map((word, i) => {
        const y = top + (slid[i] as number)
        return (
          <g key={`${word.text} ${word.at}`}>
            <path class="strand-leader" d={`M${doneX + 14} ${top + word.at} L${doneX + 30} ${y}`} />
            <text class={word.cut ? 'strand-cut-text' : 'strand-label'} x={doneX + 34} y={y + 5}>
              {word.text}
            </text>
          </g>
        )
      })}
    </svg>
  )
}

type At = (along: number) => [x: number, y: number]

/** The done strand goes as far as anything was done. */
function doneUntil(items: readonly StrandItem[], axis: TimeAxis): number {
  const done = items.map((item) => item.doneMs).filter((atMs) => atMs !== null)
  return done.length === 0 ? 0 : axis.place(Math.max(...done))
}

type YarnProps = { axis: TimeAxis; at: At; until?: number }

function Yarn({ axis, at, until = axis.length }: YarnProps): preact.JSX.Element {
  const [x0, y0] = at(0)
  const [x1, y1] = at(until)
  const lies = at(0)[1] === at(1)[1]
  return (
    <>
      <path class="strand-yarn" d={`M${x0} ${y0} L${x1} ${y1}`} />
      {axis.cuts
        .filter((cut) => cut.at <= until)
        .map((cut) => {
          const [x, y] = at(cut.at)
          const stroke = lies
            ? `M${x - 7} ${y + 10} l6 -20 M${x + 2} ${y + 10} l6 -20`
            : `M${x - 10} ${y - 1} l20 -6 M${x - 10} ${y + 8} l20 -6`
          return (
            <g key={cut.at}>
              <path class="strand-cut-gap" d={stroke} />
              <path class="strand-cut" d={stroke} />
            </g>
          )
        })}
    </>
  )
}

type ThreadsProps = { items: StrandItem[]; axis: TimeAxis; plan: At; done: At; lies: boolean }

function Threads({ items, axis, plan, done, lies }: ThreadsProps): preact.JSX.Element {
  return (
    <>
      {items.map((item) => {
        if (item.plannedMs === null || item.doneMs === null) return null
        const [x0, y0] = plan(axis.place(item.plannedMs))
        const [x1, y1] = done(axis.place(item.doneMs))
        const bend = lies
          ? `C ${x0} ${(y0 + y1) / 2 + 6} ${x1} ${(y0 + y1) / 2 - 6}`
          : `C ${(x0 + x1) / 2 + 6} ${y0} ${(x0 + x1) / 2 - 6} ${y1}`
        return (
          <path
            key={`${item.path} ${item.doneMs}`}
            class={item.late ? 'strand-thread strand-thread-late' : 'strand-thread'}
            d={`M${x0} ${y0} ${bend} ${x1} ${y1}`}
          />
        )
      })}
      {items.map((item) => {
        const planned = item.plannedMs === null ? null : plan(axis.place(item.plannedMs))
        const made = item.doneMs === null ? null : done(axis.place(item.doneMs))
        return (
          <g key={`${item.path} ${item.doneMs}`}>
            {planned ? <KnotMark shape={item.shape} x={planned[0]} y={planned[1]} /> : null}
            {made ? <KnotMark shape={item.shape} x={made[0]} y={made[1]} /> : null}
          </g>
        )
      })}
    </>
  )
}

function middle(items: StrandItem[], first: number, last: number, axis: TimeAxis, done = false): number {
  const at = (i: number): number => {
    const item = items[i] as StrandItem
    return axis.place((done ? (item.doneMs ?? item.plannedMs) : (item.plannedMs ?? item.doneMs)) ?? 0)
  }
  return (at(first) + at(last)) / 2
}

/** Labels take turns on several levels, so that neighbours don't push each other far from their knots. */
function slideLevels(places: number[], rooms: number[], levels: number, length: number): number[] {
  const slid: number[] = new Array(places.length).fill(0)
  for (let level = 0; level < levels; level++) {
    const mine = places.map((_, i) => i).filter((i) => i % levels === level)
    const at = slide(
      mine.map((i) => places[i] as number),
      mine.map((i) => rooms[i] as number),
      length
    )
    mine.forEach((i, n) => {
      slid[i] = at[n] as number
    })
  }
  return slid
}
