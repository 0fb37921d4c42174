// A protocol's text for another person or device: as a file, by the clipboard, by the device's share sheet.
import { useEffect, useRef, useState } from 'preact/hooks'
import type { Kitchen } from '../kitchen.ts'
import { Pad } from './pad.tsx'
import './share-text.css'

export type ShareTextProps = { kitchen: Pick<Kitchen, 'saveFile' | 'sharing'>; title: string; text: string }

export function ShareText({ kitchen, title, text }: ShareTextProps): preact.JSX.Element {
  const [said, setSaid] = useState<string | null>(null)
  const [byHand, setByHand] = useState(false)
  const sharing = kitchen.sharing.value
  const save = (): void => {
    kitchen.saveFile(`${title}.yaml`, 'application/yaml', text)
    setSaid('Saved as a file: look among the downloads.')
  }
  const copy = async (): Promise<void> => {
    const copied = (await sharing?.copy(text)) ?? false
    setByHand(!copied)
    setSaid(copied ? 'Copied.' : 'Not copied: the browser refused it. The text is below, chosen: copy it by hand.')
  }
  const share = sharing?.share
  const pass = async (): Promise<void> => {
    const done = await share?.(title, title, text)
    if (done === 'shared') setSaid('Shared.')
    if (done === 'failed') setSaid('Not shared: the device refused it. Save it as a file, or copy it.')
  }
  return (
    <div class="share-text">
      <div class="share-text-pads">
        <Pad onPress={save}>Save as a file</Pad>
        <Pad onPress={() => void copy()}>Copy the text</Pad>
        {share ? <Pad onPress={() => void pass()}>Share</Pad> : null}
      </div>
      <p role="status">{said}</p>
      {byHand ? <ByHand title={title} text={text} /> : null}
    </div>
  )
}

/** The whole text, chosen, so that the keyboard or the menu of the browser can copy it. */
export function ByHand({ title, text }: { title: string; text: string }): preact.JSX.Element {
  const area = useRef<HTMLTextAreaElement>(null)
  useEffect(() => {
    area.current?.focus()
    area.current?.select()
  }, [])
  return (
    <textarea
      ref={area}
      class="share-text-by-hand"
      readOnly
      rows={8}
      aria-label={`The text of ${title}`}
      value={text}
    />
  )
}
