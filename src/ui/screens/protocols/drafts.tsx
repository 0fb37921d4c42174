// Protocols that are being written, and the way to begin one.
import { useEffect, useState } from 'preact/hooks'
import type { Kitchen } from '../../kitchen.ts'
import { clockOf, dayName } from '../../parts/day-name.ts'
import { HoldPad } from '../../parts/hold-pad.tsx'
import { Pad } from '../../parts/pad.tsx'
import { routeOf } from '../../sharing.ts'
import type { DraftLine } from '../../writing.ts'

type Listed = { drafts: DraftLine[]; unreadable: number }

export function Drafts({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  const [listed, setListed] = useState<Listed>({ drafts: [], unreadable: 0 })
  const [said, setSaid] = useState<string | null>(null)
  const look = async (): Promise<void> => {
    try {
      setListed(await kitchen.drafts.list())
    } catch {
      setSaid('The drafts could not be read. Reload the page.')
    }
  }
  const drop = async (draft: DraftLine): Promise<void> => {
    const sent = await kitchen.drafts.drop(draft.id)
    setSaid(sent.ok ? `${draft.title} is dropped.` : `Not dropped: ${sent.say}`)
    await look()
  }
  useEffect(() => void look(), [kitchen])
  const { drafts, unreadable } = listed
  return (
    <section class="protocols-drafts" aria-label="Drafts">
      {drafts.length === 0 ? null : <h2>Drafts</h2>}
      <ul class="protocols-list">
        {drafts.map((draft) => (
          <li key={draft.id} class="protocols-draft">
            <Pad
              kind="lesser"
              onPress={() => kitchen.go(routeOf({ runs: draft.cameAs !== undefined, draftId: draft.id }))}
            >
              <span class="protocols-title">{draft.title}</span>
              <span class="soft">{lineWords(draft, kitchen.now.peek())}</span>
            </Pad>
            <HoldPad look="plain" label={`Drop ${draft.title}: press and hold`} onHeld={() => void drop(draft)}>
              <span>Drop</span>
              <small>press and hold</small>
            </HoldPad>
          </li>
        ))}
      </ul>
      {unreadable === 0 ? null : (
        <p>{unreadable === 1 ? 'One draft can’t be read.' : `${unreadable} drafts can’t be read.`}</p>
      )}
      <p role="status">{said}</p>
      <BeginPad
        kitchen={kitchen}
        label="Write a protocol"
        begin={async () => (await import('./begin.ts')).beginBlank}
      />
    </section>
  )
}

/** "From mine.yaml, not kept yet, today 10:32" */
function lineWords({ cameAs, changedAtMs }: DraftLine, nowMs: number): string {
  const when = whenWords(changedAtMs, nowMs)
  return cameAs === undefined ? `Changed ${when}` : `From ${cameAs}, not kept yet, ${when}`
}

/** "today 10:32" */
export function whenWords(atMs: number, nowMs: number): string {
  const day = dayName(atMs, nowMs).replace(/^(Today|Yesterday)$/, (word) => word.toLowerCase())
  return `${day} ${clockOf(atMs)}`
}

type BeginProps = {
  kitchen: Kitchen
  label: string
  look?: 'solid' | 'plain'
  begin: () => Promise<(kitchen: Kitchen) => Promise<void>>
}

export function BeginPad({ kitchen, label, look = 'solid', begin }: BeginProps): preact.JSX.Element {
  const [failed, setFailed] = useState(false)
  const press = (): void => {
    setFailed(false)
    begin()
      .then((begun) => begun(kitchen))
      .catch(() => setFailed(true))
  }
  return (
    <>
      <Pad look={look} onPress={press}>
        {label}
      </Pad>
      {failed ? <p role="alert">This part could not be loaded. Try again.</p> : null}
    </>
  )
}
