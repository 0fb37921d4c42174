import { useState } from 'preact/hooks'
import { TextField } from '../../../parts/field.tsx'
import { Pad } from '../../../parts/pad.tsx'

type Props = { ask: string; onText: (text: string) => void; save?: string }

export function TextAnswer({ ask, onText, save = 'Write it down' }: Props): preact.JSX.Element {
  const [text, setText] = useState('')
  return (
    <div class="ask-text">
      <TextField label={ask} value={text} lines={3} onInput={setText} />
      <Pad kind="main" look="solid" disabled={text.trim() === ''} onPress={() => onText(text.trim())}>
        {save}
      </Pad>
    </div>
  )
}
