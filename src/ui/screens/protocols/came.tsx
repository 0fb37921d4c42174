// A protocol that was brought in and can be run, before it is kept: to read, to keep, to change first, or to let go. It
// lies among the drafts until then.
import { useEffect, useRef, useState } from 'preact/hooks'
import type { Problem } from '../../../core/protocol/model.ts'
import { readProtocol } from '../../../core/protocol/read.ts'
import type { Kitchen, StoredProtocol } from '../../kitchen.ts'
import { HoldPad } from '../../parts/hold-pad.tsx'
import { protocolRoute } from '../../parts/known-protocols.ts'
import { onward } from '../../parts/onward.ts'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { keepOpened } from '../../parts/start-draft.ts'
import { Strip } from '../../parts/strip.tsx'
import { routeOf } from '../../sharing.ts'
import type { ProtocolDraft } from '../../writing.ts'
import { Choices, type Keep } from './choices.tsx'
import { meetingOf } from './meeting.ts'
import { Method, OwnText } from './method.tsx'

type Props = { kitchen: Kitchen; known: readonly StoredProtocol[]; draftId: string; changed: () => Promise<void> }
type Found = { draft: ProtocolDraft; stored: StoredProtocol }
type Said = { say: string; mend: boolean }

export function Came({ kitchen, known, draftId, changed }: Props): preact.JSX.Element {
  const [found, setFound] = useState<Found | null>(null)
  const [said, setSaid] = useState<Said>({ say: 'Reading it.', mend: false })
  useEffect(() => {
    let here = true
    kitchen.drafts.read(draftId).then(
      (draft) => {
        if (!here) return
        if (!draft) return setSaid({ say: 'That draft is not here any more.', mend: false })
        const read = readProtocol(draft.text)
        if (read.ok) setFound({ draft, stored: storedOf(draft, read.protocol) })
        else setSaid({ say: `${draft.title} can’t be run yet. ${problemWords(read.problems)}`, mend: true })
      },
      () => here && setSaid({ say: 'The drafts could not be read. Reload the page.', mend: false })
    )
    return () => {
      here = false
    }
  }, [kitchen, draftId])
  const all = <Pad onPress={() => kitchen.go('#/protocols')}>All protocols</Pad>
  if (!found) {
    return (
      <Page title="Bring a protocol in" actions={all}>
        <p role="status">{said.say}</p>
        {said.mend ? (
          <div>
            <Pad onPress={() => kitchen.go(routeOf({ runs: false, draftId }))}>Mend it</Pad>
          </div>
        ) : null}
      </Page>
    )
  }
  const { stored } = found
  return (
    <Page title={stored.protocol.title} actions={all}>
      <Decide kitchen={kitchen} known={known} found={found} changed={changed} />
      <Method kitchen={kitchen} stored={stored} />
      <OwnText text={stored.text} />
    </Page>
  )
}

function problemWords([first, ...others]: readonly Problem[]): string {
  if (!first) return ''
  const more = others.length === 0 ? '' : ` And ${others.length} more.`
  return `Line ${first.line}: ${first.what}${more}`
}

/** Not kept yet, so under an id of its own. */
function storedOf({ id, text, cameAs, title }: ProtocolDraft, protocol: StoredProtocol['protocol']): StoredProtocol {
  return { id: `came-${id}`, file: cameAs ?? title, text, protocol, from: 'file' }
}

function Decide({ kitchen, known, found, changed }: Omit<Props, 'draftId'> & { found: Found }): preact.JSX.Element {
  const [failed, setFailed] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
  // Two taps before the next drawing would both find the pad alive.
  const keeping = useRef(false)
  const { draft, stored } = found
  const meeting = meetingOf(stored.protocol.title, stored.text, known)
  const keep: Keep = async ({ text = stored.text, joins = null }) => {
    if (keeping.current) return
    keeping.current = true
    setBusy(true)
    setFailed(null)
    const go = onward(kitchen)
    const saved = await kitchen.saveProtocol(text, { cameAs: stored.file, joins }).catch(() => null)
    if (!saved?.ok) {
      keeping.current = false
      setBusy(false)
      return setFailed(saved?.say ?? 'Not kept: the browser could not store it. It is still among the drafts.')
    }
    await kitchen.drafts.drop(draft.id)
    await changed()
    go(protocolRoute(saved.stored.id))
  }
  const letGo = async (): Promise<void> => {
    const go = onward(kitchen)
    const dropped = await kitchen.drafts.drop(draft.id)
    if (dropped.ok) go('#/protocols')
    else setFailed(`Not let go: ${dropped.say}`)
  }
  // Should the draft stay, nothing is lost: it only stands in the list once more.
  const openHere = async (id: string): Promise<void> => {
    const go = onward(kitchen)
    await kitchen.drafts.drop(draft.id).catch(() => null)
    go(protocolRoute(id))
  }
  const once = async (): Promise<void> => {
    const go = onward(kitchen)
    keepOpened(stored)
    await changed()
    go(protocolRoute(stored.id))
  }
  return (
    <section class="protocols-came" aria-label="Keep it">
      {failed === null ? null : (
        <Strip tone="bad" urgent actions={<Pad onPress={() => void once()}>Use it until this page is closed</Pad>}>
          {failed}
        </Strip>
      )}
      <Choices
        meeting={meeting}
        known={known}
        stored={stored}
        busy={busy}
        keep={keep}
        open={(id) => void openHere(id)}
        nowMs={kitchen.now.peek()}
      />
      <div class="protocols-came-pads">
        <Pad onPress={() => kitchen.go(routeOf({ runs: false, draftId: draft.id }))}>Change it first</Pad>
        <HoldPad look="plain" onHeld={() => void letGo()}>
          <span>Let it go</span>
          <small>press and hold</small>
        </HoldPad>
      </div>
    </section>
  )
}
