// One picture large, or one voice note, and the way to let it go.
import { useState } from 'preact/hooks'
import type { MediaRecord } from '../../../core/record/record.ts'
import type { Kitchen } from '../../kitchen.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { HoldPad } from '../../parts/hold-pad.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import { Sound } from './sound.tsx'
import { useMedia } from './use-media.ts'

type Props = { kitchen: Kitchen; potId: string; media: MediaRecord; name: string; close: (trimmed: boolean) => void }

const reasons = ['to make room', 'of no use', 'private'].map((label) => ({ value: label, label }))

export function MediaSheet({ kitchen, potId, media, name, close }: Props): preact.JSX.Element {
  const { address, problem } = useMedia(kitchen, media)
  const photo = media.kind === 'photo'
  return (
    <Sheet title={photo ? 'Picture' : 'Voice note'} onClose={() => close(false)}>
      {problem === null ? null : <p role="alert">{problem}</p>}
      {address === null ? null : photo ? (
        <img
          class="book-large"
          src={address}
          alt={name}
          width={media.widthPx ?? undefined}
          height={media.heightPx ?? undefined}
        />
      ) : (
        <Sound address={address} name={name} />
      )}
      <p>
        {name} <span class="soft">· {kilobytes(media.bytes)}</span>
      </p>
      <LetGo kitchen={kitchen} potId={potId} media={media} close={close} />
    </Sheet>
  )
}

function LetGo({ kitchen, potId, media, close }: Omit<Props, 'name'>): preact.JSX.Element {
  const [why, setWhy] = useState('to make room')
  const [problem, setProblem] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
  const what = media.kind === 'photo' ? 'picture' : 'voice note'
  const letGo = async (): Promise<void> => {
    setBusy(true)
    const sent = await kitchen.send(potId, { type: 'TrimMedia', sha256: media.sha256, why })
    setBusy(false)
    if (sent.ok) close(true)
    else setProblem(sent.say)
  }
  return (
    <details class="book-more">
      <summary>Let it go</summary>
      <div class="book-let-go">
        <p>
          The {what} is deleted from this record for good. The record goes on saying that it was there, and why it went.
        </p>
        <ChoiceRow legend="Why" choices={reasons} value={why} onChoose={setWhy} />
        {problem === null ? null : <p role="alert">{problem}</p>}
        <HoldPad disabled={busy} onHeld={() => void letGo()}>
          <span>Let this {what} go</span>
          <small>press and hold</small>
        </HoldPad>
      </div>
    </details>
  )
}

function kilobytes(bytes: number): string {
  return `${Math.max(1, Math.round(bytes / 1000))} kB`
}
