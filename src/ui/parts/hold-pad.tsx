// Press and hold: for what can't be undone. Lifting early, sliding off, a second finger or a cancelled touch undo it.
import type { ComponentChildren } from 'preact'
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'
import { eatRelease, HOLD_MS, isDead, markChanged, severalFingers } from './guard.ts'
import './pad.css'

export type HoldPadProps = {
  children: ComponentChildren
  onHeld: () => void
  kind?: 'main' | 'lesser' | 'control'
  look?: 'solid' | 'plain' | 'bath' | 'bad'
  /** Read out after the name: a hold is not what a button is used for elsewhere. */
  label?: string
  disabled?: boolean
  /** What the pad stands for: a hold that began within 0.7 s after it changed does not count. */
  layoutKey?: string
  className?: string
}

export function HoldPad(props: HoldPadProps): preact.JSX.Element {
  const { children, onHeld, kind = 'lesser', look = 'bad', label, disabled, layoutKey } = props
  const [held, setHeld] = useState(false)
  const button = useRef<HTMLButtonElement>(null)
  useLayoutEffect(() => {
    if (layoutKey !== undefined && button.current) markChanged(button.current, performance.now())
  }, [layoutKey])
  const timer = useRef<ReturnType<typeof setTimeout> | null>(null)

  const stop = (): void => {
    if (timer.current !== null) clearTimeout(timer.current)
    timer.current = null
    setHeld(false)
  }
  const begin = (finger: boolean): void => {
    if (timer.current !== null || severalFingers()) return
    if (button.current && isDead(button.current, performance.now())) return
    setHeld(true)
    timer.current = setTimeout(() => {
      const one = !severalFingers()
      stop()
      if (!one) return
      if (finger) eatRelease(document)
      onHeld()
    }, HOLD_MS)
  }
  useEffect(() => stop, [])
  return (
    <button
      ref={button}
      type="button"
      class={`pad pad-hold pad-${kind} pad-${look}${props.className ? ` ${props.className}` : ''}`}
      data-held={held ? '' : undefined}
      disabled={disabled}
      aria-label={label}
      onPointerDown={() => begin(true)}
      onPointerUp={stop}
      onPointerLeave={stop}
      onPointerCancel={stop}
      onContextMenu={(event) => event.preventDefault()}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' && event.key !== ' ') return
        event.preventDefault()
        if (!event.repeat) begin(false)
      }}
      onKeyUp={stop}
      onBlur={stop}
    >
      {children}
    </button>
  )
}
