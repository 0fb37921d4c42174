// The stain: in words, as a step, and both cloths side by side.
import type { Stain } from '../../../../core/colour/index.ts'
import { stainAboutSay, stainSay, stainStepSay } from '../../../parts/stain-words.ts'
import { Chips } from '../chips.tsx'

export function Result({ stain }: { stain: Stain }): preact.JSX.Element {
  return (
    <section class="swatches-part" aria-labelledby="swatches-stain">
      <h2 id="swatches-stain">Stain</h2>
      <div class="swatches-verdict" role="status">
        <p class="swatches-word">{stainSay(stain)}</p>
        <p class="swatches-turn">{stainStepSay(stain)}</p>
        <p class="soft">{stainAboutSay(stain)}</p>
      </div>
      <Chips
        left={stain.clean}
        right={stain.stained}
        label="The clean cloth’s colour on the left, the stained one’s on the right."
      >
        Left the clean cloth, right the stained one. A screen shows colours in a way of its own.
      </Chips>
    </section>
  )
}
