// The frame of a screen that is read: a heading, what can be done at once, and one column.
import type { ComponentChildren } from 'preact'
import './page.css'

export type PageProps = { title: string; children: ComponentChildren; actions?: ComponentChildren }

export function Page({ title, children, actions }: PageProps): preact.JSX.Element {
  return (
    <div class="page">
      <header class="page-head">
        <h1 tabIndex={-1}>{title}</h1>
        {actions ? <div class="page-actions">{actions}</div> : null}
      </header>
      {children}
    </div>
  )
}
