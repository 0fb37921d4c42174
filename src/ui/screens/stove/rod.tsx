// The picture over the water: the rod, the rulings, and a strand for each pot that needs heat or hands. It says nothing
// that the words beside it do not say, so a reader of the screen gets the words alone.
import { useRef } from 'preact/hooks'
import { showMass } from '../../../core/quantity/show-mass.ts'
import type { Kitchen } from '../../kitchen.ts'
import { bathColour } from '../../parts/bath-colour.ts'
import { type Box, useBox } from '../../parts/box.ts'
import { knotsOf, type LivePot, livePots, nameOf } from './live.ts'
import { heightOf, rulings, TOP_MS } from './scale.ts'
import { Strand } from './strand.tsx'
import './rod.css'

export type RodPlace = {
  width: number
  waterY: number
  topY: number
  rodY: number
  columns: number
  fontPx: number
  rulingPx: number
}

const ROD_Y = 9
/** Room over the top ruling for the cut and its words. */
const CUT_PX = 30
const WAVE_PX = 14
/** The height of a ruling's figures. */
const RULING_SAY_PX = 13
/** In narrower columns the rulings say their figures alone. */
const NARROW_PX = 150

export function Rod({ kitchen, pots }: { kitchen: Kitchen; pots: string[] }): preact.JSX.Element {
  const place = useRef<HTMLDivElement>(null)
  const box = useBox(place, { width: 390, height: 260 })
  return (
    <div class="rod" ref={place}>
      <Picture kitchen={kitchen} pots={pots} box={box} />
    </div>
  )
}

function placeIn(box: Box, columns: number): RodPlace {
  const wide = box.width / Math.max(1, columns)
  const fontPx = wide < 110 ? 13 : wide < 150 ? 14 : wide < 200 ? 15 : wide < 300 ? 18 : 20
  return {
    width: box.width,
    waterY: box.height - WAVE_PX,
    topY: ROD_Y + CUT_PX,
    rodY: ROD_Y,
    columns,
    fontPx,
    rulingPx: wide < NARROW_PX ? 22 : 44
  }
}

/** The leaf that redraws each second. */
function Picture({ kitchen, pots, box }: { kitchen: Kitchen; pots: string[]; box: Box }): preact.JSX.Element {
  const nowMs = kitchen.now.value
  const shown = livePots(kitchen.pots.value).filter((pot) => pots.includes(pot.potId))
  const place = placeIn(box, shown.length)
  const narrow = place.rulingPx < 40
  const high = Math.max(40, place.waterY - place.topY)
  return (
    <>
      <svg
        class="rod-svg"
        width={box.width}
        height={box.height}
        viewBox={`0 0 ${box.width} ${box.height}`}
        aria-hidden="true"
      >
        <defs>
          <pattern id="plied" width="13" height="10" patternUnits="userSpaceOnUse" x="-6.5">
            <path d="M-1 -1 L14 11 M14 -1 L-1 11" class="plied-line" />
          </pattern>
        </defs>
        <Rulings place={place} high={high} narrow={narrow} />
        <rect x={0} y={ROD_Y - 6} width={box.width} height={10} rx={5} class="rod-bar" />
        {shown.map((pot, i) => (
          <Strand
            key={pot.potId}
            knots={knotsOf(pot.state, nowMs, pot.expected)}
            nowMs={nowMs}
            place={place}
            column={i}
            high={high}
          />
        ))}
        {shown.map((pot, i) => (
          <Water key={pot.potId} pot={pot} place={place} column={i} height={box.height} />
        ))}
      </svg>
      <Words pots={shown} nowMs={nowMs} />
    </>
  )
}

/** The scale. In narrow columns its figures stand alone, with "min" once under them; where two would touch, the lower
 * one goes. */
function Rulings({ place, high, narrow }: { place: RodPlace; high: number; narrow: boolean }): preact.JSX.Element {
  const lines = rulings.map((ruling) => {
    const y = place.waterY - heightOf(ruling.atMs) * high
    return { ...ruling, y, sayY: narrow && ruling.atMs === TOP_MS ? y + 14 : y - 5 }
  })
  // On a short strand figures would lie over each other: the ends of the scale say theirs first.
  const said: number[] = narrow ? [place.waterY - 12] : []
  const clear = new Set<string>()
  for (const { say, sayY } of [...lines.slice(-1), ...lines.slice(0, -1)]) {
    if (said.some((other) => Math.abs(other - sayY) < RULING_SAY_PX)) continue
    said.push(sayY)
    clear.add(say)
  }
  return (
    <>
      {lines.map(({ say, y, sayY }) => (
        <g key={say}>
          <path d={`M0 ${y} H${place.width}`} class="ruling" />
          {clear.has(say) ? (
            <text x={place.width - 4} y={sayY} class="ruling-say">
              {narrow ? say.replace(' min', '') : say}
            </text>
          ) : null}
        </g>
      ))}
      {narrow ? (
        <text x={place.width - 4} y={place.waterY - 12} class="ruling-say">
          min
        </text>
      ) : null}
    </>
  )
}

function Water(props: { pot: LivePot; place: RodPlace; column: number; height: number }): preact.JSX.Element {
  const { pot, place, column, height } = props
  const wide = place.width / place.columns
  const [left, right] = [column * wide, (column + 1) * wide - (column + 1 < place.columns ? 3 : 0)]
  const y = place.waterY
  const waves = Math.max(1, Math.round((right - left) / 90))
  const one = (right - left) / waves
  const crests = Array.from({ length: waves }, () => `q${one / 4} -9 ${one / 2} 0 t${one / 2} 0`)
  return (
    <path
      d={`M${left} ${y} ${crests.join(' ')} V${height + 1} H${left} Z`}
      style={{ fill: bathColour(pot.state.pot.colour) }}
      class="water"
    />
  )
}

/** The same for the ear: what comes, pot by pot. */
function Words({ pots, nowMs }: { pots: LivePot[]; nowMs: number }): preact.JSX.Element {
  return (
    <div class="unseen">
      {pots.map((pot) => {
        const next = knotsOf(pot.state, nowMs, pot.expected).slice(0, 4)
        const coming = next.map((k) => `${k.label} in ${Math.max(0, Math.round((k.atMs - nowMs) / 60_000))} min`)
        return (
          <p key={pot.potId}>
            {nameOf(pot)},{' '}
            {showMass(pot.state.programme.goodsMassG, { temperature: 'C', volume: 'metric', mass: 'metric' })}:{' '}
            {coming.join('; ') || 'no more steps'}
          </p>
        )
      })}
    </div>
  )
}
