// Which batch dyed the series, and which of its tabs lie beside the skein. Their depths are those of its own doses.
import type { Signal } from '@preact/signals'
import { useEffect, useState } from 'preact/hooks'
import { tabSay } from '../../../core/record/series.ts'
import type { BookLine, Kitchen } from '../../kitchen.ts'
import { SelectField } from '../../parts/field.tsx'
import { Pad } from '../../parts/pad.tsx'
import { dayOf, LISTED_MOST } from './batch-field.tsx'
import type { Draft } from './draft.ts'
import { limits } from './marks.ts'
import { chooseSeries, tabsThere, toggleTab } from './series.ts'

type Props = { kitchen: Kitchen; draft: Signal<Draft> }

export function SeriesField({ kitchen, draft }: Props): preact.JSX.Element {
  const [lines, setLines] = useState<BookLine[]>([])
  const [problem, setProblem] = useState<string | null>(null)
  useEffect(() => {
    kitchen.book(0, Number.MAX_SAFE_INTEGER, LISTED_MOST).then(setLines, (error: unknown) => {
      setProblem(`The Dye book can’t be read (${error instanceof Error ? error.message : String(error)}).`)
    })
  }, [kitchen])
  const { series, batchId } = draft.value
  const options = lines
    .filter(({ potId }) => potId !== batchId)
    .map((line) => ({ value: line.potId, label: `${line.colourway}, ${line.protocolTitle}, ${dayOf(line)}` }))
  const listed = series === null || options.some(({ value }) => value === series.batchId)
  return (
    <>
      <SelectField
        label="The series was batch"
        hint="Where you ran a dilution series as a batch: each tab’s depth is then of what went into its jar, and both records say so."
        value={series?.batchId ?? ''}
        problem={problem ?? series?.problem ?? null}
        options={[
          { value: '', label: 'No batch of this book' },
          ...(listed ? [] : [{ value: series.batchId, label: series.name || 'The batch you came from' }]),
          ...options
        ]}
        onChange={(value) => void chooseSeries(kitchen, draft, value === '' ? null : value)}
      />
      {series === null || series.tabs.length === 0 ? null : <Tabs draft={draft} />}
    </>
  )
}

function Tabs({ draft }: Pick<Props, 'draft'>): preact.JSX.Element | null {
  const { series } = draft.value
  if (series === null) return null
  const there = tabsThere(series)
  const full = there.length >= limits.series[1]
  return (
    <fieldset class="swatches-tabs">
      <legend>Tabs that lie there</legend>
      <div class="swatches-row">
        {series.tabs.map((tab) => {
          const lies = there.includes(tab)
          return (
            <Pad
              key={tab.jar}
              selected={lies}
              disabled={!lies && full}
              onPress={() => toggleTab(draft, tab.jar)}
            >{`${tabSay(tab)}${lies ? ' ✓' : ''}`}</Pad>
          )
        })}
      </div>
      <p class="soft">
        {there.length === 0
          ? 'None lies there: the series is as good as untold.'
          : `% owf, by what went in. ${there.length} to mark, in this order. Press a tab that does not lie there.`}
      </p>
    </fieldset>
  )
}
