// What stands for a step on the strand. Shapes differ, and each has its words beside it.
import type { KnotShape } from '../../core/protocol/model.ts'
import './knot-mark.css'

export type KnotMarkProps = { shape: KnotShape; x: number; y: number; faint?: boolean }

export function KnotMark({ shape, x, y, faint }: KnotMarkProps): preact.JSX.Element {
  return (
    <g class={faint ? 'knot-mark knot-mark-faint' : 'knot-mark'} transform={`translate(${x} ${y})`}>
      {marks[shape]}
    </g>
  )
}

const marks: Record<KnotShape, preact.JSX.Element> = {
  drop: <path class="knot-full" d="M0 -11 l7.5 11 a8.6 8.6 0 1 1 -15 0 z" />,
  band: <ellipse class="knot-full" rx="9" ry="6" />,
  ring: <circle class="knot-open" r="7.5" />,
  bar: <rect class="knot-full" x="-11" y="-4" width="22" height="8" rx="2" />,
  wave: <path class="knot-line" d="M-9 -6 q4.5 6 9 2 t9 -2 M-9 2 q4.5 6 9 2 t9 -2" />,
  dot: <circle class="knot-full" r="5.5" />
}
