// The verdict with its reason, what would settle it, and what it was drawn from.
import { turnSay, verdictWords } from '../../../core/record/skein-verdict.ts'
import type { Judged } from './drawing.ts'
import { Drawn } from './drawn.tsx'

export function Verdict({ found }: { found: Judged }): preact.JSX.Element {
  const { verdict } = found
  const { why, size, smallestVisibleSplit, lighterBy } = verdict
  const turn = turnSay(verdict)
  const figures = [
    ...(size ? [`End to end ${size.deltaH.toFixed(1)} ± ${size.sd.toFixed(1)} ΔH* at equal depth`] : []),
    ...(smallestVisibleSplit !== null && Number.isFinite(smallestVisibleSplit)
      ? [`the smallest split that could be seen: ${smallestVisibleSplit.toFixed(1)}`]
      : []),
    ...(lighterBy === null ? [] : [`lighter by ${lighterBy.toFixed(1)} L*`])
  ]
  return (
    <section class="swatches-part" aria-labelledby="swatches-verdict">
      <h2 id="swatches-verdict">Verdict</h2>
      <div class="swatches-verdict" role="status">
        <p class="swatches-word">{verdictWords[verdict.verdict]}</p>
        {turn === null ? null : <p class="swatches-turn">{turn}</p>}
        <p>{why.say}</p>
        <p>
          <strong>What would settle it: </strong>
          {why.settle}
        </p>
        {figures.length === 0 ? null : <p class="soft">{`${figures.join('; ')}.`}</p>}
        <p class="soft">Indicative. It is no grade of any standard.</p>
      </div>
      <Drawn found={found} />
    </section>
  )
}
