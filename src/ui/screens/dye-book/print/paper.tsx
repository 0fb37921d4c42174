// A page as it will be printed, shown on the screen at its own measures and made smaller where the screen is. What is
// measured on it is therefore what will be on the paper.
import type { ComponentChildren, RefObject } from 'preact'
import { useRef } from 'preact/hooks'
import { useBox } from '../../../parts/box.ts'
import './print.css'

/** What the page rules in print.css know: a sheet with margins, a sheet without, a tag. */
export type PageKind = 'sheet' | 'bare' | 'tag'
export type PaperSize = 'a4' | 'letter'

/** CSS has 96 px to the inch. */
export const MM = 96 / 25.4

/** Widths and heights in mm. The margins are those of print.css. */
export const papers: Record<PaperSize, { widthMm: number; heightMm: number; label: string }> = {
  a4: { widthMm: 210, heightMm: 297, label: 'A4' },
  letter: { widthMm: 215.9, heightMm: 279.4, label: 'US Letter' }
}
const MARGINS_MM = 14 + 18

/** How tall what is printed on a sheet may be, px. */
export function pageHeight(size: PaperSize): number {
  return (papers[size].heightMm - MARGINS_MM) * MM
}

type PaperProps = {
  kind: PageKind
  size: PaperSize
  /** What it is, for the ear. */
  label: string
  body?: RefObject<HTMLDivElement | null>
  children: ComponentChildren
}

export function Paper({ kind, size, label, body, children }: PaperProps): preact.JSX.Element {
  const frame = useRef<HTMLDivElement>(null)
  const sheet = useRef<HTMLDivElement>(null)
  const room = useBox(frame, { width: 0, height: 0 })
  const full = useBox(sheet, { width: 0, height: 0 })
  const scale = room.width > 0 && full.width > room.width ? room.width / full.width : 1
  // As properties of our own: only the screen heeds them, the printer has room enough.
  const shown = full.height === 0 ? 'auto' : `${Math.ceil(full.height * scale)}px`
  return (
    <div class="print-frame" ref={frame} style={{ '--print-shown': shown, '--print-scale': scale }}>
      <article class="print-sheet" ref={sheet} aria-label={label} data-kind={kind} data-size={size}>
        <div class="print-body" ref={body}>
          {children}
        </div>
      </article>
    </div>
  )
}
