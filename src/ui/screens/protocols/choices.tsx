// What can become of a protocol that was brought in: kept as it is, the next version of one of its title, or another
// protocol beside it. Which of them, the dyer says.
import { useState } from 'preact/hooks'
import type { StoredProtocol } from '../../kitchen.ts'
import { TextField } from '../../parts/field.tsx'
import { later } from '../../parts/later.tsx'
import { Pad } from '../../parts/pad.tsx'
import { whenWords } from './drafts.tsx'
import { freeTitle, type Meeting, titleProblem } from './meeting.ts'

const Compare = later(() => import('./compare.tsx').then((m) => ({ default: m.Compare })))

/** `joins`: the id of a protocol without versions that it is the next version of. */
export type Keep = (how: { text?: string; joins?: string | null }) => Promise<void>

type Props = {
  meeting: Meeting
  known: readonly StoredProtocol[]
  stored: StoredProtocol
  busy: boolean
  nowMs: number
  keep: Keep
  open: (id: string) => void
}

export function Choices(props: Props): preact.JSX.Element {
  const { meeting, stored, busy, nowMs, keep, open } = props
  const { title } = stored.protocol
  switch (meeting.kind) {
    case 'new':
      return (
        <>
          <p>{`From ${stored.file}. It can be run, and is not kept yet.`}</p>
          <Pad kind="lesser" look="solid" disabled={busy} onPress={() => void keep({})}>
            Keep it
          </Pad>
        </>
      )
    case 'same':
      return (
        <>
          <p>{`From ${stored.file}. It is here already, word for word.`}</p>
          <Pad kind="lesser" look="solid" onPress={() => open(meeting.as.id)}>
            Open the one that is here
          </Pad>
        </>
      )
    case 'version': {
      const { written } = meeting.as
      const next = (written?.versions ?? 1) + 1
      const saved = written ? `, saved ${whenWords(written.savedAtMs, nowMs)}` : ''
      return (
        <>
          <p>{`From ${stored.file}. Another ${title} is here: version ${next - 1}${saved}. It stays, whichever you choose.`}</p>
          <Differences was={meeting.as.text} now={stored.text} />
          <Pad
            kind="lesser"
            look="solid"
            disabled={busy}
            onPress={() => void keep({ joins: written ? null : meeting.as.id })}
          >
            {`Keep it as version ${next} of ${title}`}
          </Pad>
          <Beside {...props} />
        </>
      )
    }
    case 'built-in':
      return (
        <>
          <p>{`From ${stored.file}. Another ${title} is built in, and stays as it is.`}</p>
          <Differences was={meeting.as.text} now={stored.text} />
          <Beside {...props} />
        </>
      )
  }
}

function Differences({ was, now }: { was: string; now: string }): preact.JSX.Element {
  const [open, setOpen] = useState(false)
  return (
    <details class="protocols-versions" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>What is different</summary>
      {open ? <Compare was={was} now={now} /> : null}
    </details>
  )
}

/** As another protocol it needs a title of its own: two of one name can't be told apart at the stove. */
function Beside({ known, stored, busy, keep }: Props): preact.JSX.Element {
  const [title, setTitle] = useState(() => freeTitle(stored.protocol.title, known))
  const [problem, setProblem] = useState<string | null>(null)
  const press = async (): Promise<void> => {
    const wrong = titleProblem(title, known)
    setProblem(wrong)
    if (wrong !== null) return
    const made = await import('./retitled.ts').then(
      ({ retitled }) => retitled(stored.text, title.trim()),
      () => null
    )
    if (made === null) setProblem('The title could not be changed in the text. Change it first, then keep it.')
    else await keep({ text: made })
  }
  return (
    <div class="protocols-beside">
      <TextField label="Its title as another protocol" value={title} onInput={setTitle} problem={problem} />
      <Pad kind="lesser" disabled={busy} onPress={() => void press()}>
        Keep it as another protocol
      </Pad>
    </div>
  )
}
