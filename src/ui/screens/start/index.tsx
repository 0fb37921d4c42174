import type { Kitchen, StoredProtocol } from '../../kitchen.ts'
import { EmptyState } from '../../parts/empty-state.tsx'
import { FREE_ID, freeStored } from '../../parts/free-pot.ts'
import { useKnownProtocols } from '../../parts/known-protocols.ts'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { StartForm } from './form.tsx'
import './style.css'

export type StartScreenProps = { kitchen: Kitchen; protocolId?: string }

export function StartScreen({ kitchen, protocolId }: StartScreenProps): preact.JSX.Element {
  const [known] = useKnownProtocols(kitchen)
  if (known === null) {
    return (
      <Page title="Start a pot">
        <p>Reading the protocols.</p>
      </Page>
    )
  }
  if (protocolId === FREE_ID) return <StartForm key={FREE_ID} kitchen={kitchen} stored={freeStored} />
  const stored = protocolId
    ? known.find((each) => each.id === protocolId || encodeURIComponent(each.id) === protocolId)
    : undefined
  if (stored) return <StartForm key={stored.id} kitchen={kitchen} stored={stored} />
  return <Choose kitchen={kitchen} known={known} missing={protocolId !== undefined && protocolId !== ''} />
}

export default StartScreen

type ChooseProps = { kitchen: Kitchen; known: StoredProtocol[]; missing: boolean }

function Choose({ kitchen, known, missing }: ChooseProps): preact.JSX.Element {
  if (known.length === 0) {
    return (
      <Page title="Start a pot">
        <EmptyState title="No protocol yet" actions={<Pad onPress={() => kitchen.go('#/protocols')}>Open a file</Pad>}>
          <p>A pot runs by a protocol. Open one from a file.</p>
        </EmptyState>
        <FreeChoice kitchen={kitchen} />
      </Page>
    )
  }
  return (
    <Page title="Start a pot">
      {missing ? <p role="status">That protocol is not here. Choose another, or open its file again.</p> : null}
      <p>Which protocol?</p>
      <ul class="start-choose">
        {known.map((each) => (
          <li key={each.id}>
            <Pad kind="lesser" onPress={() => kitchen.go(`#/start/${encodeURIComponent(each.id)}`)}>
              <span>{each.protocol.title}</span>
              {each.protocol.about ? <span class="soft">{each.protocol.about}</span> : null}
            </Pad>
          </li>
        ))}
      </ul>
      <FreeChoice kitchen={kitchen} />
    </Page>
  )
}

/** No protocol at all: told as it is done, and a protocol made of it afterwards. */
function FreeChoice({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  return (
    <section class="start-part start-choose" aria-labelledby="start-free">
      <h2 id="start-free">Without a protocol</h2>
      <Pad kind="lesser" onPress={() => kitchen.go(`#/start/${FREE_ID}`)}>
        <span>Start a free pot</span>
        <span class="soft">Tap each thing as you do it. Make a protocol of it afterwards.</span>
      </Pad>
    </section>
  )
}
