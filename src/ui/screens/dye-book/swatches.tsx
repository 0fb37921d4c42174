// What was found of this batch's skein.
import { useEffect, useState } from 'preact/hooks'
import type { Kitchen } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import { Comparisons } from '../../parts/swatch-comparisons.tsx'
import { Judgements } from '../../parts/swatch-judgements.tsx'
import type { KeptSwatches } from '../../swatches.ts'
import { keptSwatches } from './kept-swatches.ts'

export function SwatchPart({ kitchen, potId }: { kitchen: Kitchen; potId: string }): preact.JSX.Element | null {
  const [kept, setKept] = useState<KeptSwatches | null>(null)
  useEffect(() => {
    let here = true
    if (kitchen.swatches) void keptSwatches(kitchen, potId).then((found) => here && setKept(found))
    return () => {
      here = false
    }
  }, [kitchen, potId])
  if (!kitchen.swatches) return null
  return (
    <section class="book-part" aria-labelledby="book-swatches">
      <h2 id="book-swatches">Verdict on the skein</h2>
      {kept?.problem ? <p role="alert">{kept.problem}</p> : null}
      {kept && kept.judgements.length > 0 ? <Judgements kitchen={kitchen} judgements={kept.judgements} /> : null}
      {kept ? <Comparisons kitchen={kitchen} comparisons={kept.comparisons} /> : null}
      <div class="book-acts">
        <Pad onPress={() => kitchen.go(`#/swatches/batch/${encodeURIComponent(potId)}`)}>
          {kept && kept.judgements.length > 0 ? 'Judge it again' : 'Judge a swatch of it'}
        </Pad>
      </div>
    </section>
  )
}
