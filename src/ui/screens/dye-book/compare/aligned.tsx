// The strands of several batches, laid along one another at a moment that all of them have: what was done, and a thread
// from each knot to the same knot of the next batch. A slanting thread is a difference in time.
import { scaleLinear } from 'd3-scale'
import { useMemo, useRef, useState } from 'preact/hooks'
import { showDuration } from '../../../../core/quantity/index.ts'
import { commonMoments, doneIn, momentTimes, startMoment } from '../../../../core/record/align.ts'
import type { BatchRecord } from '../../../../core/record/record.ts'
import type { MetStep } from '../../../../core/record/same-step.ts'
import { useBox } from '../../../parts/box.ts'
import { SelectField } from '../../../parts/field.tsx'
import { KnotMark } from '../../../parts/knot-mark.tsx'
import '../../../parts/lying-strand.css'

const ROW = 84
const TOP = 40
const SIDE = 18
const LETTER_PX = 7.6

type Knot = { key: string; step: MetStep['step']; x: number; y: number }

export function Aligned({ records }: { records: readonly BatchRecord[] }): preact.JSX.Element {
  const moments = useMemo(() => commonMoments(records), [records])
  const [key, setKey] = useState(dyeIn(moments))
  const frame = useRef<HTMLDivElement>(null)
  const { width } = useBox(frame, { width: 900, height: 0 })
  const at = useMemo(() => momentTimes(records, key), [records, key])
  const rows = useMemo(() => rowsOf(records, at), [records, at])
  const spans = rows.flatMap(({ fromMs, toMs }) => [fromMs, toMs])
  const x = scaleLinear([Math.min(...spans), Math.max(...spans, Math.min(...spans) + 60_000)], [SIDE, width - SIDE])
  const knots = rows.map(({ met, zeroMs }, i) =>
    met.map(
      ({ key: same, step }): Knot => ({ key: same, step, x: x((step.endMs as number) - zeroMs), y: TOP + i * ROW + 40 })
    )
  )
  const height = TOP + rows.length * ROW + 12
  return (
    <section class="book-part" aria-labelledby="book-aligned">
      <h2 id="book-aligned">Along one another</h2>
      <SelectField
        label="Laid together at"
        options={moments.map((moment) => ({ value: moment.key, label: moment.label }))}
        value={key}
        onChange={setKey}
      />
      <div
        class="lying-strand"
        ref={frame}
        role="img"
        aria-label="Each batch as it was done, laid along the others; the table below says the same in words."
      >
        <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
          <path class="aligned-zero" d={`M${x(0)} 8 V${height - 4}`} />
          <Labels knots={knots[0] ?? []} width={width} />
          {rows.map(({ name, fromMs, toMs }, i) => (
            <path key={name} class="strand-yarn" d={`M${x(fromMs)} ${TOP + i * ROW + 40} H${x(toMs)}`} />
          ))}
          {knots.slice(1).flatMap((row, i) => row.map((knot) => thread(knots[i] ?? [], knot)))}
          {knots.flat().map(({ key: same, step, x: left, y }) => (
            <KnotMark key={`${same} ${y}`} shape={step.shape} x={left} y={y} />
          ))}
          {rows.map(({ name, fromMs, toMs }, i) => (
            <text key={name} class="strand-row aligned-name" x={SIDE} y={TOP + i * ROW + 20}>
              {`${i + 1}. ${name}, ${showDuration(toMs - fromMs)}`}
            </text>
          ))}
        </svg>
      </div>
    </section>
  )
}

/** Where dye goes in by its name; else the start. */
function dyeIn(moments: readonly { key: string; label: string }[]): string {
  return moments.find(({ label }) => /\bdye\b/i.test(label))?.key ?? startMoment.key
}

type Row = { name: string; zeroMs: number; fromMs: number; toMs: number; met: MetStep[] }

function rowsOf(records: readonly BatchRecord[], at: readonly (number | null)[]): Row[] {
  const met = doneIn(records)
  return records.map((record, i) => {
    const { batchName, startedAtMs, endedAtMs } = record.identity
    const zeroMs = at[i] ?? startedAtMs
    // A wait that the clock ends is plain yarn: it has no knot.
    const done = (met[i] ?? []).filter(({ step }) => step.how !== 'clock')
    const last = Math.max(startedAtMs, ...done.map(({ step }) => step.endMs as number))
    return { name: batchName, zeroMs, fromMs: startedAtMs - zeroMs, toMs: (endedAtMs ?? last) - zeroMs, met: done }
  })
}

function thread(above: readonly Knot[], knot: Knot): preact.JSX.Element | null {
  const from = above.find(({ key }) => key === knot.key)
  if (!from) return null
  const late = knot.step.lateMs > 0
  const middle = (from.y + knot.y) / 2
  return (
    <path
      key={`${knot.key} ${knot.y}`}
      class={late ? 'strand-thread strand-thread-late' : 'strand-thread'}
      d={`M${from.x} ${from.y} C ${from.x} ${middle} ${knot.x} ${middle} ${knot.x} ${knot.y}`}
    />
  )
}

/** As many labels over the first strand as have room; the table has them all. */
function Labels({ knots, width }: { knots: readonly Knot[]; width: number }): preact.JSX.Element {
  let free = 0
  const shown = knots.flatMap(({ key, step, x }) => {
    const room = step.label.length * LETTER_PX
    const left = Math.min(Math.max(x - room / 2, 0), width - room)
    if (left < free) return []
    free = left + room + 10
    return [{ key, text: step.label, left, foot: x }]
  })
  return (
    <>
      {shown.map(({ key, text, left, foot }) => (
        <g key={key}>
          <text class="strand-label" x={left} y="20">
            {text}
          </text>
          <path class="strand-leader" d={`M${left + (text.length * LETTER_PX) / 2} 26 L${foot} ${TOP + 26}`} />
        </g>
      ))}
    </>
  )
}
