// How to take the photo.
const lines = [
  [
    'Lay',
    'the dry skein along its length; its dilution series beside it (the same mix on the same yarn, three depths or more); undyed yarn at both ends; a grey card.'
  ],
  ['Light', 'from one kind of lamp or window, even from end to end. No flash, no shadow across it.'],
  ['Frame', 'all of it, filling the picture, from straight above.'],
  [
    'Expose',
    'so that nothing is burnt out to white or sunk to black: hold a finger on the card to set the brightness.'
  ],
  ['Repeat', 'three times or more, laying it anew: that shows how much the readings stray.']
] as const

export function Guide({ open }: { open: boolean }): preact.JSX.Element {
  return <GuideLines open={open} lines={lines} />
}

type Props = { open: boolean; lines: readonly (readonly [word: string, say: string])[] }

export function GuideLines({ open, lines }: Props): preact.JSX.Element {
  return (
    <details class="swatches-guide" open={open}>
      <summary>How to take it</summary>
      <dl>
        {lines.map(([word, say]) => (
          <div key={word}>
            <dt>{word}</dt>
            <dd>{say}</dd>
          </div>
        ))}
      </dl>
    </details>
  )
}
