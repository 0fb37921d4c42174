// An empty place teaches: one line of what will be here, and the way to begin.
import type { ComponentChildren } from 'preact'
import './empty-state.css'

export type EmptyStateProps = { title: string; children: ComponentChildren; actions?: ComponentChildren }

export function EmptyState({ title, children, actions }: EmptyStateProps): preact.JSX.Element {
  return (
    <section class="empty-state">
      <h2>{title}</h2>
      <div class="empty-state-say">{children}</div>
      {actions ? <div class="empty-state-actions">{actions}</div> : null}
    </section>
  )
}
