import type { ComponentChildren } from 'preact'

/** What scrolls sideways, reached by keys as well. `label`: the id of its heading. */
export function Scroll({ label, children }: { label: string; children: ComponentChildren }): preact.JSX.Element {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: without it no key could scroll it
    <section class="compare-scroll" aria-labelledby={label} tabIndex={0}>
      {children}
    </section>
  )
}
