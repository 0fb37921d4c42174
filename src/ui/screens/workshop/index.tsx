// The workshop: where a dyer writes a protocol, by forms or as text.
import { useEffect, useState } from 'preact/hooks'
import type { Kitchen } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import type { ProtocolDraft } from '../../writing.ts'
import { Bench } from './bench.tsx'
import './style.css'

type Found = { id: string; draft: ProtocolDraft | null; say: string }

export function Workshop({ kitchen, draftId }: { kitchen: Kitchen; draftId: string }): preact.JSX.Element {
  const [found, setFound] = useState<Found | null>(null)
  useEffect(() => {
    let here = true
    kitchen.drafts.read(draftId).then(
      (draft) => here && setFound({ id: draftId, draft, say: 'That draft is not here any more.' }),
      () => here && setFound({ id: draftId, draft: null, say: 'The drafts could not be read. Reload the page.' })
    )
    return () => {
      here = false
    }
  }, [kitchen, draftId])
  if (found?.id === draftId && found.draft) return <Bench key={draftId} kitchen={kitchen} draft={found.draft} />
  return (
    <Page title="Write a protocol" actions={<Pad onPress={() => kitchen.go('#/protocols')}>All protocols</Pad>}>
      <p role="status">{found?.id === draftId ? found.say : 'Reading the draft.'}</p>
    </Page>
  )
}

export default Workshop
