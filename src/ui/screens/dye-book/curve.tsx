// The readings drawn over what was asked for. Between two readings a straight line, none before the first or after the
// last: nobody knows more.
import { scaleLinear } from 'd3-scale'
import { line } from 'd3-shape'
import { useMemo, useRef } from 'preact/hooks'
import {
  fahrenheitFromCelsius,
  showDuration,
  showNumber,
  showTemperature,
  type Units
} from '../../../core/quantity/index.ts'
import { localClock } from '../../../core/record/local-time.ts'
import type { BatchRecord } from '../../../core/record/record.ts'
import { type CurvePoint, type SetSpan, temperatureCurve, timeAboveMs } from '../../../core/record/temperature-curve.ts'
import { useBox } from '../../parts/box.ts'
import './curve.css'

const limitsC = [60, 80] as const
const HEIGHT = 280
const EDGE = { top: 16, right: 16, bottom: 34, left: 58 }

type Props = { record: BatchRecord; nowMs: number; units: Units }

export function Curve({ record, nowMs, units }: Props): preact.JSX.Element | null {
  const curve = useMemo(() => temperatureCurve(record, nowMs), [record])
  if (curve.points.length === 0) return null
  const tz = record.steps.at(-1)?.said.tzOffsetMin ?? 0
  const say = sentences(curve.points, curve.widestGapMs, tz, units)
  return (
    <section class="book-part" aria-labelledby="book-curve">
      <h2 id="book-curve">Temperature</h2>
      <figure class="book-curve">
        <Chart points={curve.points} spans={curve.setPoints} tz={tz} units={units} />
        <figcaption>
          <p class="soft">Broad: what was asked for. Thin, with dots: what was read.</p>
          {say.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </figcaption>
      </figure>
    </section>
  )
}

function sentences(points: readonly CurvePoint[], gapMs: number | null, tz: number, units: Units): string[] {
  const [first] = points
  const last = points.at(-1)
  if (!first || !last || gapMs === null) return ['One reading: how long it was hot can’t be said.']
  const clock = (atMs: number): string => localClock(atMs, tz)
  const times = limitsC.map(
    (limitC) => `At ${showTemperature(limitC, units)} and more for ${showDuration(timeAboveMs(points, limitC) ?? 0)}.`
  )
  return [
    times.join(' '),
    `By straight lines between ${points.length} readings, from ${clock(first.atMs)} to ${clock(last.atMs)}; before and after them nothing is counted. The widest gap between two is ${showDuration(gapMs)}.`
  ]
}

type ChartProps = { points: readonly CurvePoint[]; spans: readonly SetSpan[]; tz: number; units: Units }

function Chart({ points, spans, tz, units }: ChartProps): preact.JSX.Element {
  const frame = useRef<HTMLDivElement>(null)
  const { width } = useBox(frame, { width: 760, height: 0 })
  const times = [...points.map(({ atMs }) => atMs), ...spans.flatMap(({ startMs, endMs }) => [startMs, endMs])]
  const heights = [
    ...points.map(({ tempC }) => tempC),
    ...spans.flatMap(({ fromC, lowC, highC }) => [fromC, lowC, highC]).filter((c) => c !== null)
  ]
  const [beganMs, overMs] = [Math.min(...times), Math.max(...times)]
  const x = scaleLinear([beganMs, Math.max(overMs, beganMs + 60_000)], [EDGE.left, width - EDGE.right])
  const y = scaleLinear([Math.min(10, ...heights), Math.max(100, ...heights)], [HEIGHT - EDGE.bottom, EDGE.top])
  const path = line<CurvePoint>(
    ({ atMs }) => x(atMs),
    ({ tempC }) => y(tempC)
  )([...points])
  return (
    <div ref={frame} class="curve-frame" role="img" aria-label="Readings over what was asked for; in words below.">
      <svg width={width} height={HEIGHT} viewBox={`0 0 ${width} ${HEIGHT}`} aria-hidden="true">
        {[20, 40, 60, 80, 100].map((tempC) => (
          <g key={tempC}>
            <path
              class={limitsC.some((limitC) => limitC === tempC) ? 'curve-limit' : 'curve-grid'}
              d={`M${EDGE.left} ${y(tempC)} H${width - EDGE.right}`}
            />
            <text class="curve-text" x={EDGE.left - 8} y={y(tempC) + 5} text-anchor="end">
              {degrees(tempC, units)}
            </text>
          </g>
        ))}
        {clockTicks(beganMs, overMs, tz, width).map((atMs) => (
          <text key={atMs} class="curve-text" x={x(atMs)} y={HEIGHT - 8} text-anchor="middle">
            {localClock(atMs, tz)}
          </text>
        ))}
        {spans.map((span) => (
          <Asked key={`${span.path} ${span.startMs}`} span={span} x={x} y={y} />
        ))}
        <path class="curve-line" d={path ?? ''} />
        {points.map(({ atMs, tempC }) => (
          <circle key={`${atMs} ${tempC}`} class="curve-dot" cx={x(atMs)} cy={y(tempC)} r="4.5" />
        ))}
      </svg>
    </div>
  )
}

type Scale = (value: number) => number

/** What was asked for: a slope on a rise, a band or a line on a hold. */
function Asked({ span, x, y }: { span: SetSpan; x: Scale; y: Scale }): preact.JSX.Element | null {
  const { startMs, endMs, fromC, lowC, highC } = span
  const level = lowC ?? highC
  if (level === null) return null
  if (fromC !== null) return <path class="curve-asked" d={`M${x(startMs)} ${y(fromC)} L${x(endMs)} ${y(level)}`} />
  if (lowC !== null && highC !== null && highC > lowC) {
    const width = Math.max(1, x(endMs) - x(startMs))
    return <rect class="curve-band" x={x(startMs)} y={y(highC)} width={width} height={y(lowC) - y(highC)} />
  }
  return <path class="curve-asked" d={`M${x(startMs)} ${y(level)} H${x(endMs)}`} />
}

function degrees(tempC: number, units: Units): string {
  return units.temperature === 'F' ? `${showNumber(fahrenheitFromCelsius(tempC), 0)} °F` : `${tempC} °C`
}

const stepsMin = [5, 10, 15, 30, 60, 120, 180, 360, 720, 1440]

/** Round times of the dyer's own clock, as many as there is room for. */
function clockTicks(fromMs: number, toMs: number, tz: number, width: number): number[] {
  const most = Math.max(2, Math.floor((width - EDGE.left - EDGE.right) / 80))
  const stepMs = 60_000 * (stepsMin.find((min) => (toMs - fromMs) / (min * 60_000) <= most) ?? 2880)
  const offMs = tz * 60_000
  const ticks: number[] = []
  for (let atMs = Math.ceil((fromMs + offMs) / stepMs) * stepMs - offMs; atMs <= toMs; atMs += stepMs) ticks.push(atMs)
  return ticks
}
