// The series as its batch dyed it beside what was read of it, and what speaks against it as a control.
import type { Signal } from '@preact/signals'
import { hueDegOf, type Point } from '../../../core/colour/index.ts'
import { showNumber } from '../../../core/quantity/index.ts'
import { seriesDoubts } from '../../../core/record/series-doubts.ts'
import type { Kitchen } from '../../kitchen.ts'
import { useFibre } from './answers.tsx'
import type { Draft } from './draft.ts'
import { tabsThere } from './series.ts'

type Props = { kitchen: Pick<Kitchen, 'entries'>; draft: Signal<Draft>; read: readonly Pick<Point, 'lab'>[] }

export function SeriesDyed({ kitchen, draft, read }: Props): preact.JSX.Element | null {
  const { series, batchId } = draft.value
  const skein = useFibre(kitchen, batchId)
  if (series === null || series.tabs.length === 0) return null
  const tabs = tabsThere(series)
  const labs = read.map(({ lab }) => lab)
  const doubts = seriesDoubts(tabs, labs, { series: series.fibre, skein })
  return (
    <section class="swatches-part" aria-labelledby="swatches-series">
      <h2 id="swatches-series">The series as it was dyed</h2>
      {doubts.length === 0 ? null : (
        <ul class="swatches-faults">
          {doubts.map((say) => (
            <li key={say}>{say}</li>
          ))}
        </ul>
      )}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys. */}
      <section class="swatches-scroll" aria-label="Tabs in figures" tabIndex={0}>
        <table>
          <caption>{`Tab by tab, ${series.name}`}</caption>
          <thead>
            <tr>
              <th scope="col">Tab</th>
              <th scope="col">Dyed % owf</th>
              <th scope="col">Left in the jar</th>
              <th scope="col">Depth L*</th>
              <th scope="col">Hue °</th>
            </tr>
          </thead>
          <tbody>
            {tabs.map(({ jar, depthPercent, left }, nth) => {
              const lab = labs[nth]
              return (
                <tr key={jar}>
                  <th scope="row">{jar}</th>
                  <td>{depthPercent === null ? '–' : showNumber(depthPercent, 3)}</td>
                  <td>{left ?? 'not judged'}</td>
                  <td>{lab ? lab.l.toFixed(1) : '–'}</td>
                  <td>{lab ? hueDegOf(lab).toFixed(0) : '–'}</td>
                </tr>
              )
            })}
          </tbody>
        </table>
      </section>
    </section>
  )
}
