// A QR code as one SVG path, for labels and tags.
import { encode } from 'uqr'

/** Four light modules on every side: ISO/IEC 18004 asks for them, and a reader may not find a code without. */
const QUIET = 4

/** Draws `text` as a QR code; `label` says in words what it leads to. Medium correction: 15 % of it may be splashed.
 * Dark on light in every theme, for a camera reads no other; the size is the place's own. */
export function Qr({ text, label }: { text: string; label: string }): preact.JSX.Element {
  const { size, data } = encode(text, { ecc: 'M', border: QUIET })
  const dark = data.flatMap((row, y) => row.flatMap((on, x) => (on ? [`M${x} ${y}h1v1h-1z`] : [])))
  return (
    <svg class="qr" role="img" aria-label={label} viewBox={`0 0 ${size} ${size}`} shape-rendering="crispEdges">
      <rect width={size} height={size} fill="white" />
      <path d={dark.join('')} fill="black" />
    </svg>
  )
}
