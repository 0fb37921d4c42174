// The pad that opens the ways to share a protocol, over whatever screen it stands on.
import { useState } from 'preact/hooks'
import { Pad } from './pad.tsx'
import { ShareText, type ShareTextProps } from './share-text.tsx'
import { Sheet } from './sheet.tsx'

type Props = ShareTextProps & { label?: string }

export function SharePad({ label = 'Share', ...shared }: Props): preact.JSX.Element {
  const [open, setOpen] = useState(false)
  return (
    <>
      <Pad onPress={() => setOpen(true)}>{label}</Pad>
      {open ? (
        <Sheet title={`Share ${shared.title}`} onClose={() => setOpen(false)}>
          <p>The whole method as a text, with nothing of your pots in it.</p>
          <ShareText {...shared} />
        </Sheet>
      ) : null}
    </>
  )
}
