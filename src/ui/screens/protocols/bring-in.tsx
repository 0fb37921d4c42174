// The ways in for a protocol from elsewhere: its file, or its text. Where it can be run is found out behind them all, in
// one place; what is no text is refused here, the rest goes on as a draft.
import { useRef, useState } from 'preact/hooks'
import type { Problem } from '../../../core/protocol/model.ts'
import type { Kitchen } from '../../kitchen.ts'
import { TextField } from '../../parts/field.tsx'
import { FileField } from '../../parts/file-field.tsx'
import { onward } from '../../parts/onward.ts'
import { Pad } from '../../parts/pad.tsx'
import { routeOf } from '../../sharing.ts'

/** What a text without a file is called from then on. */
const PASTED = 'pasted text'

export function BringIn({ kitchen, open }: { kitchen: Kitchen; open: boolean }): preact.JSX.Element {
  const [refused, setRefused] = useState<Problem | null>(null)
  const [reading, setReading] = useState(false)
  const take = async (file: File): Promise<void> => {
    setRefused(null)
    setReading(true)
    const go = onward(kitchen)
    const came = await kitchen.bringIn(file).catch(() => null)
    setReading(false)
    if (came?.ok) go(routeOf(came))
    else setRefused(came?.problem ?? notLoaded)
  }
  return (
    <details class="protocols-bring" open={open}>
      <summary>Bring a protocol in</summary>
      <div class="protocols-part">
        <FileField
          label="Open a protocol from a file"
          accept=".yaml,.yml,.json,.txt,text/yaml,application/yaml,application/json"
          take={take}
        >
          <span class="protocols-drop soft">Or drop it anywhere on this page.</span>
        </FileField>
        <Paste kitchen={kitchen} take={(text) => void take(new File([text], PASTED))} />
        {reading ? <p role="status">Reading it.</p> : null}
        {refused ? (
          <div class="protocols-problems" role="alert">
            <strong>{refused.what}</strong>
            <p>{refused.instead}</p>
          </div>
        ) : null}
      </div>
    </details>
  )
}

const notLoaded: Problem = {
  code: 'file-not-loaded',
  line: 1,
  column: 1,
  where: 'the file',
  what: 'This part could not be loaded, so nothing was read.',
  instead: 'Try again.'
}

/** From the clipboard by a pad where the browser lets a page read it, and by hand into a field everywhere. */
function Paste({ kitchen, take }: { kitchen: Kitchen; take: (text: string) => void }): preact.JSX.Element {
  const [text, setText] = useState('')
  const [said, setSaid] = useState<string | null>(null)
  const field = useRef<HTMLDivElement>(null)
  const paste = kitchen.sharing.value?.paste
  const read = async (): Promise<void> => {
    const pasted = (await paste?.()) ?? null
    if (pasted !== null && pasted.trim() !== '') return take(pasted)
    setSaid(
      pasted === null
        ? 'The browser did not let this page read the clipboard. Paste into the field instead.'
        : 'There is no text in the clipboard.'
    )
    field.current?.querySelector('textarea')?.focus()
  }
  return (
    <div class="protocols-part" ref={field}>
      {paste ? (
        <div>
          <Pad onPress={() => void read()}>Paste from the clipboard</Pad>
        </div>
      ) : null}
      <TextField
        label={paste ? 'Or paste its text here' : 'Paste its text here'}
        lines={4}
        value={text}
        onInput={(next) => {
          setText(next)
          setSaid(null)
        }}
        problem={said}
      />
      {text.trim() === '' ? null : (
        <div>
          <Pad onPress={() => take(text)}>Read this text</Pad>
        </div>
      )}
    </div>
  )
}
