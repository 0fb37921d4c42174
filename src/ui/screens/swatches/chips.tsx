// Two colours edge to edge, as they are compared.
import type { ComponentChildren } from 'preact'
import { hexOf, type Lab } from '../../../core/colour/index.ts'

type Props = { left: Lab; right: Lab; label: string; children: ComponentChildren }

export function Chips({ left, right, label, children }: Props): preact.JSX.Element {
  return (
    <figure class="swatches-figure">
      <svg viewBox="0 0 600 96" preserveAspectRatio="none" class="swatches-chips" role="img" aria-label={label}>
        <rect width="300" height="96" fill={hexOf(left)} />
        <rect x="300" width="300" height="96" fill={hexOf(right)} />
      </svg>
      <figcaption>{children}</figcaption>
    </figure>
  )
}
