// The photo with its marks over it, and a glass that shows what lies under the finger.
import { useRef, useState } from 'preact/hooks'
import type { Spot } from '../../../core/colour/index.ts'
import { useBlobAddress } from '../../parts/blob-address.ts'
import type { Shot } from './draft.ts'
import {
  type Mark,
  type MarkId,
  marksOf,
  moved,
  nearest,
  pixelMarks,
  type Shape,
  startOf,
  whereWords,
  zoneOf
} from './marks.ts'

/** A finger within so many px of a mark takes hold of it. */
const REACH_PX = 28
/** Shares of the picture that an arrow key moves a mark by. */
const STEP = 0.005
const LARGE_STEP = 0.05

type Props = {
  shot: Shot
  shape: Shape
  chosen: Mark
  choose: (id: MarkId) => void
  place: (id: MarkId, at: Spot) => void
  next: () => void
}

/** Where the finger is, and how large the picture is on the screen. */
type Under = { at: Spot; widthPx: number; heightPx: number }

const arrows: Record<string, readonly [number, number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1]
}

export function Picture(props: Props): preact.JSX.Element {
  const { shot, shape, chosen, place, next } = props
  const { photo, places } = shot
  const address = useBlobAddress(photo.media.sha256, () => new Blob([photo.bytes.bytes], { type: photo.media.mime }))
  const drag = useDrag(props)
  const keyed = (event: KeyboardEvent): void => {
    const way = arrows[event.key]
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault()
      if (!places[chosen.id]) place(chosen.id, startOf(shape, places, chosen.id))
      next()
    }
    if (!way) return
    event.preventDefault()
    const step = event.shiftKey ? LARGE_STEP : STEP
    place(chosen.id, moved(places[chosen.id] ?? startOf(shape, places, chosen.id), way[0] * step, way[1] * step))
  }
  const ratio = photo.widthPx / photo.heightPx
  return (
    <div
      class="swatches-picture"
      style={{ aspectRatio: String(ratio), maxWidth: `calc(70vh * ${ratio.toFixed(4)})` }}
      role="application"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: it is worked by the arrow keys, as its label says.
      tabIndex={0}
      aria-label={`Photo. ${chosen.letter} ${chosen.label}: ${whereWords(places[chosen.id])}. Arrow keys move it, Enter goes to the next.`}
      onKeyDown={keyed}
      {...drag.on}
    >
      {address === null ? null : <img src={address} alt="" draggable={false} decoding="async" />}
      <Overlay shot={shot} shape={shape} chosen={chosen} />
      {drag.under && address ? <Glass under={drag.under} address={address} /> : null}
    </div>
  )
}

/** A finger puts the chosen mark where it is put for the first time; else it takes the mark it lies on. */
function useDrag({ shot, shape, chosen, choose, place, next }: Props) {
  const held = useRef<{ id: MarkId; isNew: boolean } | null>(null)
  const [under, setUnder] = useState<Under | null>(null)
  const spotOf = (event: PointerEvent): Under => {
    const { left, top, width, height } = (event.currentTarget as HTMLElement).getBoundingClientRect()
    const x = (event.clientX - left) / width
    const y = (event.clientY - top) / height
    return { at: moved({ x, y }, 0, 0), widthPx: width, heightPx: height }
  }
  const end = (): void => {
    const done = held.current
    held.current = null
    setUnder(null)
    if (done?.isNew) next()
  }
  return {
    under,
    on: {
      onPointerDown(event: PointerEvent) {
        if (event.button !== 0 || held.current) return
        const under = spotOf(event)
        const { at: finger } = under
        const isNew = !shot.places[chosen.id]
        const id = isNew ? chosen.id : (nearest(shape, shot.places, finger, under, REACH_PX) ?? chosen.id)
        held.current = { id, isNew }
        ;(event.currentTarget as HTMLElement).setPointerCapture(event.pointerId)
        if (id !== chosen.id) choose(id)
        place(id, finger)
        setUnder(under)
      },
      onPointerMove(event: PointerEvent) {
        if (!held.current) return
        const under = spotOf(event)
        place(held.current.id, under.at)
        setUnder(under)
      },
      onPointerUp: end,
      onPointerCancel: end
    }
  }
}

type OverlayProps = Pick<Props, 'shot' | 'shape' | 'chosen'>

/** Outlines of what is read, and a letter at each mark: told apart without colour. */
function Overlay({ shot: { photo, places }, shape, chosen }: OverlayProps): preact.JSX.Element {
  const { widthPx: w, heightPx: h } = photo
  const letter = Math.min(w, h) / 15
  const half = shape.spotShare * Math.min(w, h)
  const line = { ...shape, undyed: 0, series: 0 }
  const bands =
    shape.along === 'spots' ? [] : (pixelMarks(line, { grey: { x: 0, y: 0 }, ...places }, photo)?.skein ?? [])
  const wicked = new Set(
    Array.from({ length: shape.bands }, (_, nth) => nth).flatMap((nth) =>
      zoneOf(shape, nth) === 'wicking' ? [`skein ${nth}`] : []
    )
  )
  return (
    <svg class="swatches-overlay" viewBox={`0 0 ${w} ${h}`} aria-hidden="true">
      {bands.map(({ patch, band, zone }) => (
        <g key={band} transform={`translate(${patch.x} ${patch.y}) rotate(${(patch.turnRad * 180) / Math.PI})`}>
          <Edged
            look={zone === 'wicking' ? 'is-wicking' : ''}
            draw={(look) => (
              <rect
                x={-patch.halfLong}
                y={-patch.halfWide}
                width={2 * patch.halfLong}
                height={2 * patch.halfWide}
                class={look}
              />
            )}
          />
        </g>
      ))}
      {marksOf(shape).map(({ id, letter: name }) => {
        const place = places[id]
        if (!place) return null
        const [x, y] = [place.x * w, place.y * h]
        const isEnd = id === 'from' || id === 'to'
        return (
          <g key={id} class={id === chosen.id ? 'is-chosen' : undefined}>
            <Edged
              look={wicked.has(id) ? 'is-wicking' : ''}
              draw={(look) =>
                isEnd ? (
                  <circle cx={x} cy={y} r={half / 2} class={look} />
                ) : (
                  <rect x={x - half} y={y - half} width={2 * half} height={2 * half} class={look} />
                )
              }
            />
            <text x={x} y={y - half - letter * 0.2} font-size={letter}>
              {name}
            </text>
          </g>
        )
      })}
    </svg>
  )
}

type EdgedProps = { look: string; draw: (look: string) => preact.JSX.Element }

/** A light line on a dark, wider one: seen on any colour, white cloth too. A shadow would shrink with a large picture. */
const Edged = ({ look, draw }: EdgedProps): preact.JSX.Element => (
  <>
    {draw(`${look} is-edge`)}
    {draw(look)}
  </>
)

/** So many times as large, in a glass of so many px across. */
const LARGER = 3
const GLASS_PX = 128

function Glass({ under: { at, widthPx, heightPx }, address }: { under: Under; address: string }): preact.JSX.Element {
  const from = (share: number, px: number): string => `${GLASS_PX / 2 - share * px * LARGER}px`
  return (
    <div
      class="swatches-glass"
      data-side={at.x < 0.5 ? 'right' : 'left'}
      aria-hidden="true"
      style={{
        backgroundImage: `url("${address}")`,
        backgroundSize: `${widthPx * LARGER}px ${heightPx * LARGER}px`,
        backgroundPosition: `${from(at.x, widthPx)} ${from(at.y, heightPx)}`
      }}
    />
  )
}
