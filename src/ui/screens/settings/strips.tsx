// The pH strips of this kitchen.
import type { Kitchen } from '../../kitchen.ts'
import { StripSetUp } from '../../parts/strip-set-up.tsx'
import type { Change } from './index.tsx'

export function StripsPart({ kitchen, change }: { kitchen: Kitchen; change: Change }): preact.JSX.Element {
  return (
    <section class="settings-part" aria-labelledby="settings-strips">
      <h2 id="settings-strips">pH strips</h2>
      <StripSetUp strip={kitchen.settings.value.strip} onChange={(strip) => change({ strip })} />
    </section>
  )
}
