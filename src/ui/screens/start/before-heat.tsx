// Before the heat: one lamp for each rung, in words. With a lamp out the pot may be started all the same, and what will
// be missing is said.
import { useState } from 'preact/hooks'
import type { Check } from '../../../core/pot/events.ts'
import type { Kitchen } from '../../kitchen.ts'
import { Loudness } from '../../parts/loudness.tsx'
import { Pad } from '../../parts/pad.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import { Strip } from '../../parts/strip.tsx'

const missing: Record<Check['what'], string> = {
  sound: 'No call will be heard. Stay where you see the screen, and set a kitchen timer.',
  screen: 'The screen may go dark, and calls with it. Set a kitchen timer.',
  notices: 'No notice comes while the app is hidden. Keep it open.',
  // Its own words say it.
  storage: '',
  battery: 'The battery may not last. Put it on the charger.',
  bench: 'Something is not set out. It will be missed when it is called for.'
}

type Props = {
  kitchen: Kitchen
  checks: readonly Check[]
  busy: boolean
  failed: string | null
  start: () => void
  back: () => void
}

export function BeforeHeat({ kitchen, checks, busy, failed, start, back }: Props): preact.JSX.Element {
  const out = checks.filter((check) => !check.ok)
  // Asked until it was tried once: the fan at this stove decides how loud is loud enough.
  const [asks] = useState(
    () => !kitchen.settings.peek().loudnessTried && checks.some(({ what, ok }) => what === 'sound' && ok)
  )
  return (
    <Sheet title="Before the heat" onClose={back}>
      <Lamps checks={out} />
      {asks ? (
        <section class="start-loudness" aria-labelledby="start-loudness">
          <h3 id="start-loudness">Heard over the fan?</h3>
          <Loudness kitchen={kitchen} />
        </section>
      ) : null}
      <Lamps checks={checks.filter((check) => check.ok)} />
      {failed === null ? null : (
        <Strip tone="bad" urgent>
          {failed}
        </Strip>
      )}
      <Pad kind="main" look="solid" className="start-go" disabled={busy} onPress={start}>
        {out.length === 0 ? 'Start' : 'Start all the same'}
      </Pad>
    </Sheet>
  )
}

/** What is not ready stands first: what it means has to be read before the start. */
function Lamps({ checks }: { checks: readonly Check[] }): preact.JSX.Element | null {
  if (checks.length === 0) return null
  return (
    <ul class="start-lamps">
      {checks.map((check) => (
        <li key={check.what} class="start-lamp" data-out={check.ok ? undefined : ''}>
          <span class="start-lamp-mark" aria-hidden="true">
            {check.ok ? '✓' : '–'}
          </span>
          <span>
            <strong>{check.ok ? 'Ready: ' : 'Not ready: '}</strong>
            {check.say}
            {check.ok || missing[check.what] === '' ? null : (
              <span class="start-lamp-missing">{missing[check.what]}</span>
            )}
          </span>
        </li>
      ))}
    </ul>
  )
}
