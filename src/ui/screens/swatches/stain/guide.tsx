// How to take the photo of a cloth.
import { GuideLines } from '../guide.tsx'

const lines = [
  [
    'Lay',
    'the stained cloth, dry, beside a clean piece of the same cloth, and a grey card. Fold both to as many layers, until nothing shines through.'
  ],
  ['Light', 'from one kind of lamp or window, even over both. No flash, no shadow.'],
  ['Expose', 'so that the clean cloth is not burnt out: hold a finger on it to set the brightness.'],
  ['Repeat', 'three times or more, laying both anew: that shows how much the readings stray.']
] as const

export function ClothGuide({ open }: { open: boolean }): preact.JSX.Element {
  return <GuideLines open={open} lines={lines} />
}
