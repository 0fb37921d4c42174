// What a protocol says, for whoever reads it: what it is for, its times, its steps, what to set out, and its own text.
import { useMemo } from 'preact/hooks'
import type { Protocol } from '../../../core/protocol/model.ts'
import { planOf } from '../../../core/record/plan.ts'
import { closingLine } from '../../../core/safety/caution.ts'
import type { Kitchen, StoredProtocol } from '../../kitchen.ts'
import { atDefaults, READ_FOR_G } from '../../parts/at-defaults.ts'
import { LyingStrand } from '../../parts/lying-strand.tsx'
import { ProgrammeFacts, SetOut } from '../../parts/programme-facts.tsx'
import { plannedItems } from '../../parts/strand-items.ts'
import { unitsOf } from '../../parts/units-of.ts'
import { Steps } from './steps.tsx'

type Props = { kitchen: Kitchen; stored: StoredProtocol }

/** As what file it came here; null: it is built in, or was written here. */
export function originOf({ from, file, written }: StoredProtocol): string | null {
  if (written) return written.cameAs ?? null
  return from === 'file' ? file : null
}

export function Method({ kitchen, stored }: Props): preact.JSX.Element {
  const { protocol } = stored
  const programme = useMemo(() => atDefaults(protocol), [protocol])
  const items = useMemo(() => (programme ? plannedItems(programme, planOf(programme, 0)) : []), [programme])
  const units = unitsOf(kitchen.settings.value)
  return (
    <>
      <About protocol={protocol} from={originOf(stored)} />
      {programme === null ? (
        <p>This protocol asks for figures before its steps can be shown. Start a pot to fill them in.</p>
      ) : (
        <>
          <ProgrammeFacts programme={programme} />
          <LyingStrand
            items={items}
            planOnly
            title={`The steps of ${protocol.title} in time; listed below in words.`}
          />
          <section class="protocols-part" aria-labelledby="protocols-steps">
            <h2 id="protocols-steps">Steps</h2>
            <Steps programme={programme} units={units} />
            <p class="soft">{closingLine}</p>
          </section>
          <section class="protocols-part" aria-labelledby="protocols-out">
            <h2 id="protocols-out">{`To set out, for ${READ_FOR_G} g`}</h2>
            <SetOut programme={programme} units={units} />
          </section>
        </>
      )}
    </>
  )
}

export function OwnText({ text }: { text: string }): preact.JSX.Element {
  return (
    <details class="protocols-text">
      <summary>The text itself</summary>
      <pre>{text}</pre>
    </details>
  )
}

function About({ protocol, from }: { protocol: Protocol; from: string | null }): preact.JSX.Element {
  return (
    <section class="protocols-about-all">
      {protocol.demo ? <p class="soft">Invented for the demo.</p> : null}
      {from === null ? null : <p class="soft">{`From ${from}.`}</p>}
      {protocol.about ? <p>{protocol.about}</p> : null}
      {protocol.use ? (
        <>
          <h2>When to use it</h2>
          <p>{protocol.use}</p>
        </>
      ) : null}
      {protocol.trouble ? (
        <>
          <h2>What goes wrong</h2>
          <p>{protocol.trouble}</p>
        </>
      ) : null}
    </section>
  )
}
