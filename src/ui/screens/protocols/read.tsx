// One protocol, read: as a strand, as plain steps, and as its own text.
import { useMemo } from 'preact/hooks'
import type { Protocol } from '../../../core/protocol/model.ts'
import { planOf } from '../../../core/record/plan.ts'
import { closingLine } from '../../../core/safety/caution.ts'
import type { Kitchen, StoredProtocol } from '../../kitchen.ts'
import { atDefaults, READ_FOR_G } from '../../parts/at-defaults.ts'
import { LyingStrand } from '../../parts/lying-strand.tsx'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { ProgrammeFacts, SetOut } from '../../parts/programme-facts.tsx'
import { rehearsalOfOne } from '../../parts/rehearsal-route.ts'
import { plannedItems } from '../../parts/strand-items.ts'
import { unitsOf } from '../../parts/units-of.ts'
import { BeginPad } from './drafts.tsx'
import { Steps } from './steps.tsx'
import { Versions } from './versions.tsx'

export function ReadProtocol({ kitchen, stored }: { kitchen: Kitchen; stored: StoredProtocol }): preact.JSX.Element {
  const { protocol } = stored
  const programme = useMemo(() => atDefaults(protocol), [protocol])
  const items = useMemo(() => (programme ? plannedItems(programme, planOf(programme, 0)) : []), [programme])
  const units = unitsOf(kitchen.settings.value)
  return (
    <Page
      title={protocol.title}
      actions={
        <>
          <Pad onPress={() => kitchen.go('#/protocols')}>All protocols</Pad>
          <BeginPad
            kitchen={kitchen}
            label="Change a copy"
            look="plain"
            begin={async () => {
              const { beginCopy } = await import('./begin.ts')
              return (at) => beginCopy(at, stored)
            }}
          />
          <Pad onPress={() => kitchen.go(rehearsalOfOne(stored.id))}>Rehearse</Pad>
          <Pad look="solid" onPress={() => kitchen.go(`#/start/${encodeURIComponent(stored.id)}`)}>
            Start a pot
          </Pad>
        </>
      }
    >
      <About protocol={protocol} from={stored.from === 'file' && !stored.written ? stored.file : null} />
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
      <Versions kitchen={kitchen} stored={stored} />
      <details class="protocols-text">
        <summary>The text itself</summary>
        <pre>{stored.text}</pre>
      </details>
    </Page>
  )
}

function About({ protocol, from }: { protocol: Protocol; from: string | null }): preact.JSX.Element {
  return (
    <section class="protocols-about-all">
      {protocol.demo ? <p class="soft">Invented for the demo.</p> : null}
      {from === null ? null : <p class="soft">{`From the file ${from}.`}</p>}
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
