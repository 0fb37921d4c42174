// The strip of measured colours with the control beside it, hue against depth, and all of it as a table.
import { useRef } from 'preact/hooks'
import { useBox } from '../../parts/box.ts'
import { countsWords } from '../../parts/swatch-words.ts'
import { type Judged, type OnPlot, type Plot, plotOf, type StripCell, stripOf, ticks } from './drawing.ts'

export function Drawn({ found }: { found: Judged }): preact.JSX.Element {
  const cells = stripOf(found)
  const plot = plotOf(found)
  return (
    <>
      <StripPicture cells={cells} />
      {plot === null ? (
        <p class="soft">Hue against depth can’t be drawn: there is no control curve.</p>
      ) : (
        <PlotPicture plot={plot} />
      )}
      <Table cells={cells} />
    </>
  )
}

/** Px of a row, of the line above it, and of the words before it. */
const [ROW, HEAD, WORDS] = [56, 22, 66]
/** While it is laid out a figure can have no width. */
const LEAST_WIDE = 200
/** Before the screen is measured; a drawing is in px, so that its type is as large as other type. */
const FIRST = { width: 620, height: 0 }

/** Bands in the order of the skein. What wicked stands apart. */
function StripPicture({ cells }: { cells: StripCell[] }): preact.JSX.Element {
  const figure = useRef<HTMLElement>(null)
  const { width } = useBox(figure, FIRST)
  const parted = (nth: number): boolean => nth > 0 && cells[nth]?.found.zone !== cells[nth - 1]?.found.zone
  const gaps = cells.filter((_, nth) => parted(nth)).length
  const cell = Math.max(8, (width - WORDS) / (cells.length + gaps / 4))
  const apart = (nth: number): number => (parted(nth) ? cell / 4 : 0)
  const starts: number[] = []
  let end = WORDS
  for (const nth of cells.keys()) {
    starts.push(end + apart(nth))
    end = (starts[nth] as number) + cell
  }
  return (
    <figure class="swatches-figure" ref={figure}>
      <svg
        viewBox={`0 0 ${end} ${HEAD + 2 * ROW + 4}`}
        role="img"
        aria-label="The skein’s colours band by band, and below each the control’s at equal depth. The table tells the same."
      >
        <text x="0" y={HEAD + ROW / 2} class="swatches-axis">
          Skein
        </text>
        <text x="0" y={HEAD + ROW * 1.5 + 4} class="swatches-axis">
          Control
        </text>
        {cells.map(({ band, colour, control, found }, nth) => {
          const x = starts[nth] as number
          return (
            <g key={band}>
              <text x={x + cell / 2} y={HEAD - 6} class="swatches-axis is-middle">
                {found.zone === 'wicking' ? `${band} W` : band}
              </text>
              <rect x={x} y={HEAD} width={cell} height={ROW} fill={colour} class="swatches-cell" />
              {found.leftOut === null ? null : (
                <path d={`M${x} ${HEAD}L${x + cell} ${HEAD + ROW}`} class="swatches-struck" />
              )}
              {control === null ? null : (
                <rect x={x} y={HEAD + ROW + 4} width={cell} height={ROW} fill={control} class="swatches-cell" />
              )}
            </g>
          )
        })}
      </svg>
      <figcaption>
        The skein as measured, and the control at the same depth below it. A line through a band: it does not count. W:
        above the liquor.
      </figcaption>
    </figure>
  )
}

const [HIGH, LEFT, BOTTOM, TOP, RIGHT] = [340, 58, 44, 12, 12]

function PlotPicture({ plot }: { plot: Plot }): preact.JSX.Element {
  const figure = useRef<HTMLElement>(null)
  const wide = Math.max(LEAST_WIDE, useBox(figure, FIRST).width)
  const scale = (value: number, [from, to]: readonly [number, number], start: number, end: number): number =>
    start + ((value - from) / (to - from)) * (end - start)
  const x = (depth: number): number => scale(depth, plot.depth, LEFT, wide - RIGHT)
  const y = (hueDeg: number): number => scale(hueDeg, plot.hue, HIGH - BOTTOM, TOP)
  const line = (points: readonly OnPlot[], sd: number): string[] =>
    points.map(({ depth, hueDeg, sdDeg }) => `${x(depth).toFixed(1)} ${y(hueDeg + sd * sdDeg).toFixed(1)}`)
  const band = (points: readonly OnPlot[]): string =>
    `M${[...line(points, 1), ...line(points, -1).reverse()].join('L')}Z`
  const counted = plot.skein.filter(({ leftOut }) => leftOut === null)
  return (
    <figure class="swatches-figure" ref={figure}>
      <svg
        viewBox={`0 0 ${wide} ${HIGH}`}
        role="img"
        aria-label="Hue against depth: the control’s curve and the skein’s, each with one standard deviation. The table tells the same."
      >
        <clipPath id="swatches-plot">
          <rect x={LEFT} y={TOP} width={wide - LEFT - RIGHT} height={HIGH - TOP - BOTTOM} />
        </clipPath>
        <Axes plot={plot} wide={wide} x={x} y={y} />
        <g clip-path="url(#swatches-plot)">
          <path d={band(plot.control)} class="swatches-band" />
          <path d={`M${line(plot.control, 0).join('L')}`} class="swatches-control" />
          {plot.swatches.map((one) => (
            <rect
              key={one.depth}
              x={x(one.depth) - 5}
              y={y(one.hueDeg) - 5}
              width="10"
              height="10"
              class="swatches-swatch"
            />
          ))}
          {counted.length > 1 ? <path d={`M${line(counted, 0).join('L')}`} class="swatches-skein" /> : null}
          {plot.skein.map((one) => (
            <g key={one.band} class={one.leftOut === null ? 'swatches-point' : 'swatches-point is-out'}>
              <path d={`M${x(one.depth)} ${y(one.hueDeg - one.sdDeg)}V${y(one.hueDeg + one.sdDeg)}`} />
              <circle cx={x(one.depth)} cy={y(one.hueDeg)} r="10" class="swatches-dot" />
              <text x={x(one.depth)} y={y(one.hueDeg) + 4} class="swatches-number">
                {one.band}
              </text>
            </g>
          ))}
        </g>
      </svg>
      <figcaption>
        Circles: the skein’s bands by number, dashed line; hollow ones do not count. Squares: the series; its curve is
        the whole line. Shade and bars: one standard deviation.
      </figcaption>
    </figure>
  )
}

type AxesProps = { plot: Plot; wide: number; x: (depth: number) => number; y: (hueDeg: number) => number }

function Axes({ plot, wide, x, y }: AxesProps): preact.JSX.Element {
  return (
    <g class="swatches-axes">
      {ticks(plot.depth).map((depth) => (
        <g key={depth}>
          <path d={`M${x(depth)} ${TOP}V${HIGH - BOTTOM}`} />
          <text x={x(depth)} y={HIGH - BOTTOM + 18} class="swatches-axis is-middle">
            {depth}
          </text>
        </g>
      ))}
      {ticks(plot.hue).map((hueDeg) => (
        <g key={hueDeg}>
          <path d={`M${LEFT} ${y(hueDeg)}H${wide - RIGHT}`} />
          <text x={LEFT - 6} y={y(hueDeg) + 5} class="swatches-axis is-end">
            {`${(hueDeg + 360) % 360}°`}
          </text>
        </g>
      ))}
      <text x={LEFT} y={HIGH - 6} class="swatches-axis">
        deep
      </text>
      <text x={(LEFT + wide - RIGHT) / 2} y={HIGH - 6} class="swatches-axis is-middle">
        L*
      </text>
      <text x={wide - RIGHT} y={HIGH - 6} class="swatches-axis is-end">
        pale
      </text>
    </g>
  )
}

function Table({ cells }: { cells: StripCell[] }): preact.JSX.Element {
  const figure = (value: number | null | undefined): string =>
    value === null || value === undefined ? '–' : value.toFixed(1)
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys.
    <section class="swatches-scroll" aria-label="Bands in figures" tabIndex={0}>
      <table>
        <caption>Band by band</caption>
        <thead>
          <tr>
            <th scope="col">Band</th>
            <th scope="col">Depth L*</th>
            <th scope="col">Control’s hue °</th>
            <th scope="col">ΔH* at equal depth</th>
            <th scope="col">Counts?</th>
          </tr>
        </thead>
        <tbody>
          {cells.map(({ band, found }) => (
            <tr key={band}>
              <th scope="row">{band}</th>
              <td>{figure(found.depth)}</td>
              <td>{figure(found.control?.hueDeg)}</td>
              <td>{found.sd === null ? figure(found.deltaH) : `${figure(found.deltaH)} ± ${figure(found.sd)}`}</td>
              <td>{countsWords(found)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
