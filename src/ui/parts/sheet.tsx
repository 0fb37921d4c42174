// A sheet over the screen, on the browser's own dialog: it keeps the focus inside and gives it back after.
import type { ComponentChildren } from 'preact'
import { useEffect, useId, useRef } from 'preact/hooks'
import { Pad } from './pad.tsx'
import './sheet.css'

export type SheetProps = {
  title: string
  children: ComponentChildren
  onClose: () => void
  /** What closing is called: "Back", "Not now". */
  closeLabel?: string
  style?: Record<string, string>
}

export function Sheet({ title, children, onClose, closeLabel = 'Back', style }: SheetProps): preact.JSX.Element {
  const dialog = useRef<HTMLDialogElement>(null)
  const id = useId()
  useEffect(() => {
    const node = dialog.current
    if (node && !node.open) node.showModal()
    // The heading, not the way out: a pedal pressed at once must not close what was just opened.
    node?.querySelector<HTMLElement>('h2')?.focus()
    return () => node?.close()
  }, [])
  return (
    <dialog
      ref={dialog}
      class="sheet"
      aria-labelledby={id}
      style={style}
      onCancel={(event) => {
        event.preventDefault()
        onClose()
      }}
    >
      <div class="sheet-head">
        <h2 id={id} tabIndex={-1}>
          {title}
        </h2>
        <Pad kind="lesser" onPress={onClose}>
          {closeLabel}
        </Pad>
      </div>
      <div class="sheet-body">{children}</div>
    </dialog>
  )
}
