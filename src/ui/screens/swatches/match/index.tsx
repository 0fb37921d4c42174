// Is a skein the same as that one? Its readings held against a parent's, another batch's, or against typed figures.
import { useEffect, useState } from 'preact/hooks'
import type { KeptReading } from '../../../../core/record/swatch-readings.ts'
import type { KeptSwatches } from '../../../swatches.ts'
import type { Act } from '../act.ts'
import { KeepPad } from '../keep-pad.tsx'
import { matchDraftOf } from './draft.ts'
import { useNames, useParents } from './kin.ts'
import { Result } from './result.tsx'
import { SideField } from './side-field.tsx'
import { type Laid, useMatch } from './use-match.ts'

const noReadings: KeptReading[] = []

export function Matching({ kitchen, swatches, draft, kept: again }: Act): preact.JSX.Element {
  const { batchId } = draft.value
  const chosen = matchDraftOf(kitchen)
  const [kept, setKept] = useState<KeptSwatches | null>(null)
  useEffect(() => void swatches.kept(null).then(setKept), [swatches])
  const names = useNames(kitchen)
  const parents = useParents(kitchen, batchId)
  const laid = useMatch(chosen.value, kept?.readings ?? noReadings, names, batchId, parents)
  const { skein, target, found } = laid
  // Readings know what they are of, where nobody chose a batch.
  const into = batchId ?? found?.skein.batchId ?? null
  if (kept === null) return <p>Opening…</p>
  return (
    <>
      <section class="swatches-part" aria-label="What is compared">
        {kept.problem ? <p role="alert">{kept.problem}</p> : null}
        <SideField
          label="The skein"
          hint={skein.readings.length > 0 ? 'Readings of it that were kept.' : nothingKept(batchId)}
          {...skein}
          names={names}
          change={(part) => (chosen.value = { ...chosen.value, skein: { ...skein.draft, ...part } })}
        />
        <SideField
          label="Held against"
          hint="Readings that were kept of another batch, or of this one at another time."
          {...target}
          parents={parents}
          names={names}
          change={(part) => (chosen.value = { ...chosen.value, target: { ...target.draft, ...part } })}
        />
      </section>
      {found === null ? (
        <p class="soft">{stillWanted(laid)}</p>
      ) : (
        <>
          <Result found={found} />
          <KeepPad
            kitchen={kitchen}
            swatches={swatches}
            batchId={into}
            of={found}
            series={null}
            events={() => [{ type: 'SwatchMatched', batchId: into, ...found }]}
            kept={again}
          />
        </>
      )}
    </>
  )
}

const nothingKept = (batchId: string | null): string =>
  `No readings ${batchId === null ? '' : 'of this batch '}were kept yet. Keep some under “Did it split?”, by a photo or an instrument, or type them.`

function stillWanted({ skein, target }: Laid): string {
  const wrong = [skein, target].some(({ problem, refused }) => problem !== null || refused !== null)
  return wrong ? 'What stands in the way is told above.' : 'Choose or type both, and the match is here.'
}
