// The one button of the house. `main` is hit with a knuckle, `lesser` with a finger in a glove, `control` at the desk.
import type { ComponentChildren } from 'preact'
import { useLayoutEffect, useRef } from 'preact/hooks'
import { isDead, markChanged, takeTap } from './guard.ts'
import './pad.css'

export type PadProps = {
  children: ComponentChildren
  onPress: () => void
  kind?: 'main' | 'lesser' | 'control'
  /** `solid` leads on; `plain` is the rest; `bath` lies on a bath; `bad` mends or ends something. */
  look?: 'solid' | 'plain' | 'bath' | 'bad'
  /** What the pad stands for. When it changes, the pad is dead for 0.7 s. Leave out where a slip costs nothing. */
  layoutKey?: string
  selected?: boolean
  disabled?: boolean
  label?: string
  describedBy?: string
  id?: string
  className?: string
}

export function Pad(props: PadProps): preact.JSX.Element {
  const { children, onPress, kind = 'control', look = 'plain', layoutKey, selected, disabled, label } = props
  const button = useRef<HTMLButtonElement>(null)
  // Before the browser paints: a knuckle must find the pad dead from its first frame on.
  useLayoutEffect(() => {
    if (layoutKey !== undefined && button.current) markChanged(button.current, performance.now())
  }, [layoutKey])

  const press = (): void => {
    const nowMs = performance.now()
    if (button.current && isDead(button.current, nowMs)) return
    if (kind !== 'control' && !takeTap(nowMs)) return
    onPress()
  }
  return (
    <button
      ref={button}
      type="button"
      id={props.id}
      class={`pad pad-${kind} pad-${look}${props.className ? ` ${props.className}` : ''}`}
      disabled={disabled}
      data-stands-for={layoutKey}
      aria-pressed={selected}
      aria-label={label}
      aria-describedby={props.describedBy}
      onClick={press}
      onKeyDown={stopRepeat}
    >
      {children}
    </button>
  )
}

/** A key held down is one press. */
export function stopRepeat(event: KeyboardEvent): void {
  if (event.repeat && (event.key === 'Enter' || event.key === ' ')) event.preventDefault()
}
