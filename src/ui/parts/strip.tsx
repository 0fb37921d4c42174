// A standing line across the top: it says what is so, and holds the way to change it.
import type { ComponentChildren } from 'preact'
import './strip.css'

export type StripProps = {
  children: ComponentChildren
  /** info: good to know. warn: wants a decision. bad: something is lost or late. bath: speaks for a pot. */
  tone?: 'info' | 'warn' | 'bad' | 'bath'
  actions?: ComponentChildren
  /** Read out at once; else when the reader is free. */
  urgent?: boolean
  style?: Record<string, string>
}

export function Strip({ children, tone = 'info', actions, urgent, style }: StripProps): preact.JSX.Element {
  return (
    <div class={`strip strip-${tone}`} role={urgent ? 'alert' : 'status'} style={style}>
      <div class="strip-say">{children}</div>
      {actions ? <div class="strip-actions">{actions}</div> : null}
    </div>
  )
}
