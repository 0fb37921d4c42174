// The cloth's colours typed from an instrument.
import { type White, whites } from '../../../../core/colour/index.ts'
import { SelectField, TextField } from '../../../parts/field.tsx'
import type { Cloth } from './cloth.ts'
import type { TypedCloth } from './draft.ts'

type Props = { typed: TypedCloth; problems: Cloth['problems']; change: (part: Partial<TypedCloth>) => void }

export function ClothFigures({ typed, problems, change }: Props): preact.JSX.Element {
  return (
    <section class="swatches-part" aria-label="Readings of the cloth">
      <SelectField
        label="Light and observer"
        hint="As the instrument is set; both readings alike."
        value={typed.white}
        options={whites.map((value) => ({ value, label: `${value}°` }))}
        onChange={(white) => change({ white: white as White })}
      />
      <TextField
        label="Clean cloth: L*a*b*"
        hint="The cloth before, or undyed cloth beside it: “93.0 0.1 3.9”. Several readings are parted by semicolons."
        value={typed.clean}
        problem={problems.clean}
        onInput={(clean) => change({ clean })}
      />
      <TextField
        label="Stained cloth: L*a*b*"
        value={typed.stained}
        problem={problems.stained}
        onInput={(stained) => change({ stained })}
      />
    </section>
  )
}
