// What an eye says, in its own words. It is kept as that and as nothing more.
import { verdictWords } from '../../../core/record/skein-verdict.ts'
import type { EyeWord } from '../../../core/record/swatch.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { TextField } from '../../parts/field.tsx'
import type { Act } from './act.ts'
import { DryRow } from './dry-row.tsx'
import { KeepPad } from './keep-pad.tsx'
import { withSeries } from './series.ts'
import { SeriesField } from './series-field.tsx'

const choices = (Object.keys(verdictWords) as EyeWord[]).map((value) => ({ value, label: verdictWords[value] }))

export function ByEye({ kitchen, swatches, draft, kept }: Act): preact.JSX.Element {
  const { batchId, seen, series } = draft.value
  const { says, words, light, dry } = seen
  const change = (part: Partial<typeof seen>): void => {
    draft.value = { ...draft.value, seen: { ...seen, ...part } }
  }
  const missing = [
    ...(says === null ? ['what you see'] : []),
    ...(words.trim() ? [] : ['it in your words']),
    ...(dry === null ? ['whether it is dry'] : [])
  ]
  return (
    <section class="swatches-part" aria-label="By eye">
      <SeriesField kitchen={kitchen} draft={draft} />
      <ChoiceRow legend="What you see" choices={choices} value={says} onChoose={(value) => change({ says: value })} />
      <TextField
        label="In your words"
        hint="Which way it turns and where; what it lay beside."
        lines={3}
        value={words}
        onInput={(value) => change({ words: value })}
      />
      <TextField label="Light it was seen in" value={light} onInput={(value) => change({ light: value })} />
      <DryRow legend="Is the yarn dry?" dry={dry} change={(is) => change({ dry: is })} />
      <p class="soft">
        {missing.length > 0
          ? `Still wanted: ${missing.join(', ')}.`
          : 'Kept as what your eye says, not as a measurement.'}
      </p>
      <KeepPad
        kitchen={kitchen}
        swatches={swatches}
        batchId={batchId}
        of={seen}
        series={series}
        disabled={missing.length > 0}
        events={() =>
          says === null || dry === null
            ? []
            : [
                {
                  type: 'SwatchSeen',
                  batchId,
                  says,
                  words: words.trim(),
                  light: light.trim(),
                  dry,
                  ...withSeries(series)
                }
              ]
        }
        kept={kept}
      />
    </section>
  )
}
