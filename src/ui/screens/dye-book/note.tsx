import { useState } from 'preact/hooks'
import type { Kitchen } from '../../kitchen.ts'
import { TextField } from '../../parts/field.tsx'
import { Pad } from '../../parts/pad.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import { type BatchTimes, useSeenWhen } from './seen-when.tsx'

type Props = { kitchen: Kitchen; potId: string; times: BatchTimes; close: (written: boolean) => void }

/** A note after the fact. It carries the time at which it was seen. */
export function NoteSheet({ kitchen, potId, times, close }: Props): preact.JSX.Element {
  const [text, setText] = useState('')
  const [problem, setProblem] = useState<string | null>(null)
  const seen = useSeenWhen(kitchen, times)
  const [busy, setBusy] = useState(false)
  const write = async (): Promise<void> => {
    if (text.trim() === '') {
      setProblem('The note is empty. Write what you saw.')
      return
    }
    const agoMs = seen.agoMs()
    if (agoMs === null) return
    setBusy(true)
    const sent = await kitchen.send(potId, { type: 'WriteNote', text: text.trim() }, { agoMs })
    setBusy(false)
    if (sent.ok) close(true)
    else setProblem(sent.say)
  }
  return (
    <Sheet title="Note" onClose={() => close(false)}>
      <TextField label="What you saw" lines={4} value={text} onInput={setText} problem={problem} />
      {seen.row}
      <Pad kind="lesser" look="solid" disabled={busy} onPress={write}>
        Write it down
      </Pad>
    </Sheet>
  )
}
