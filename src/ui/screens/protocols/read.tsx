// One protocol, read: as a strand, as plain steps, and as its own text.
import type { Kitchen, StoredProtocol } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { rehearsalOfOne } from '../../parts/rehearsal-route.ts'
import { SharePad } from '../../parts/share-pad.tsx'
import { BeginPad } from './drafts.tsx'
import { Method, OwnText } from './method.tsx'
import { Versions } from './versions.tsx'

export function ReadProtocol({ kitchen, stored }: { kitchen: Kitchen; stored: StoredProtocol }): preact.JSX.Element {
  const { protocol, text } = stored
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
          <SharePad kitchen={kitchen} title={protocol.title} text={text} />
          <Pad look="solid" onPress={() => kitchen.go(`#/start/${encodeURIComponent(stored.id)}`)}>
            Start a pot
          </Pad>
        </>
      }
    >
      <Method kitchen={kitchen} stored={stored} />
      <Versions kitchen={kitchen} stored={stored} />
      <OwnText text={text} />
    </Page>
  )
}
