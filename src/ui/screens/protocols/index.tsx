import type { Kitchen } from '../../kitchen.ts'
import { useKnownProtocols } from '../../parts/known-protocols.ts'
import { later } from '../../parts/later.tsx'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { withOpened } from '../../parts/start-draft.ts'
import { ProtocolList } from './list.tsx'
import { ReadProtocol } from './read.tsx'
import './style.css'

// With the reader of the language, which nothing else here needs.
const Came = later(() => import('./came.tsx').then((m) => ({ default: m.Came })))

export function ProtocolsScreen({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  const [known, setKnown] = useKnownProtocols(kitchen)
  if (known === null) {
    return (
      <Page title="Protocols">
        <p>Reading the protocols.</p>
      </Page>
    )
  }
  const id = /^#?\/protocols\/(.+)$/.exec(kitchen.route.value)?.[1]
  if (id === undefined) return <ProtocolList kitchen={kitchen} known={known} />
  const draftId = /^came\/([^/]+)$/.exec(id)?.[1]
  if (draftId !== undefined) {
    const changed = async (): Promise<void> => setKnown(withOpened(await kitchen.protocols()))
    return (
      <Came key={draftId} kitchen={kitchen} known={known} draftId={decodeURIComponent(draftId)} changed={changed} />
    )
  }
  const stored = known.find((each) => encodeURIComponent(each.id) === id || each.id === id)
  if (stored) return <ReadProtocol key={stored.id} kitchen={kitchen} stored={stored} />
  return (
    <Page title="Protocols" actions={<Pad onPress={() => kitchen.go('#/protocols')}>All protocols</Pad>}>
      <p role="status">That protocol is not here. Open its file again.</p>
    </Page>
  )
}

export { ProtocolsScreen as Protocols }
export default ProtocolsScreen
