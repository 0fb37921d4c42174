// All protocols, and the way to open another one.
import type { Kitchen, StoredProtocol } from '../../kitchen.ts'
import { atDefaults } from '../../parts/at-defaults.ts'
import { EmptyState } from '../../parts/empty-state.tsx'
import { estimateWords } from '../../parts/estimate-words.ts'
import { protocolRoute } from '../../parts/known-protocols.ts'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { BringIn } from './bring-in.tsx'
import { Drafts } from './drafts.tsx'
import { originOf } from './method.tsx'

type Props = { kitchen: Kitchen; known: StoredProtocol[] }

export function ProtocolList({ kitchen, known }: Props): preact.JSX.Element {
  return (
    <Page title="Protocols" actions={<Pad onPress={() => kitchen.go('#/rehearse')}>Rehearse</Pad>}>
      <Drafts kitchen={kitchen} />
      <BringIn kitchen={kitchen} open={known.length === 0} />
      {known.length === 0 ? (
        <EmptyState title="No protocol yet">
          <p>A protocol is a written method: what to add, when to lift, how long to hold.</p>
          <p>Write one, or bring one in.</p>
        </EmptyState>
      ) : (
        <ul class="protocols-list">
          {known.map((stored) => (
            <li key={stored.id}>
              <Pad kind="lesser" onPress={() => kitchen.go(protocolRoute(stored.id))}>
                <ProtocolLine stored={stored} />
              </Pad>
            </li>
          ))}
        </ul>
      )}
    </Page>
  )
}

function ProtocolLine({ stored }: { stored: StoredProtocol }): preact.JSX.Element {
  const { protocol } = stored
  const programme = atDefaults(protocol)
  const marks = [protocol.demo ? 'invented for the demo' : '', sourceWords(stored)].filter(Boolean)
  return (
    <>
      <span class="protocols-title">{protocol.title}</span>
      {protocol.about ? <span class="protocols-about">{protocol.about}</span> : null}
      <span class="soft">
        {[programme ? estimateWords(programme) : 'Asks for figures first', ...marks].join(' · ')}
      </span>
    </>
  )
}

function sourceWords(stored: StoredProtocol): string {
  const origin = originOf(stored)
  const { written } = stored
  const where = origin === null ? (written ? 'written here' : '') : `from ${origin}`
  return written && written.versions > 1 ? `${where}, ${written.versions} versions` : where
}
