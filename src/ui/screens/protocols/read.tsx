// One protocol, read: as a strand, as plain steps, and as its own text.
import { useMemo } from 'preact/hooks'
import type { Protocol } from '../../../core/protocol/model.ts'
import { showDose } from '../../../core/quantity/index.ts'
import { planOf } from '../../../core/record/plan.ts'
import { closingLine } from '../../../core/safety/caution.ts'
import type { Kitchen, StoredProtocol } from '../../kitchen.ts'
import { spanWords } from '../../parts/estimate-words.ts'
import { LyingStrand } from '../../parts/lying-strand.tsx'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { plannedItems } from '../../parts/strand-items.ts'
import { unitsOf } from '../../parts/units-of.ts'
import { atDefaults, READ_FOR_G } from './at-defaults.ts'
import { Steps } from './steps.tsx'

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
          <Pad look="solid" onPress={() => kitchen.go(`#/start/${encodeURIComponent(stored.id)}`)}>
            Start a pot
          </Pad>
        </>
      }
    >
      <About protocol={protocol} from={stored.from === 'file' ? stored.file : null} />
      {programme === null ? (
        <p>This protocol asks for figures before its steps can be shown. Start a pot to fill them in.</p>
      ) : (
        <>
          <dl class="protocols-facts">
            <div>
              <dt>On the clock</dt>
              <dd>{spanWords(programme.estimate.clock)}</dd>
            </div>
            <div>
              <dt>Hands</dt>
              <dd>{spanWords(programme.estimate.hands)}</dd>
            </div>
            <div>
              <dt>Worked out for</dt>
              <dd>{`${READ_FOR_G} g, with the answers it presumes`}</dd>
            </div>
          </dl>
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
            <ul class="protocols-out">
              {programme.setOut.map((item) => (
                <li key={item.id}>
                  <strong>{`${item.label}: ${showDose(item.amount, units)} of ${item.amount.of}`}</strong>
                  {item.sum === '' ? null : <span class="soft">{item.sum}</span>}
                </li>
              ))}
            </ul>
          </section>
        </>
      )}
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
