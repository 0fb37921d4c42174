// What was found of the skein, on paper: the latest first, for that is what holds.
import { cutWords, type Room } from '../../../../core/record/condensed.ts'
import { seriesSay } from '../../../../core/record/series.ts'
import { foundSay } from '../../../../core/record/skein-verdict.ts'
import type { Judgement } from '../../../../core/record/swatch.ts'
import { foundBy, whenSay } from '../../../parts/swatch-words.ts'
import { Rows } from './rows.tsx'

type Props = { judgements: readonly Judgement[]; room: Room }

export function SkeinRows({ judgements, room }: Props): preact.JSX.Element | null {
  return (
    <Rows
      title="Verdict on the skein"
      what="verdicts"
      heads={['When', 'What']}
      all={judgements}
      room={room}
      row={(one: Judgement) => (
        <tr key={one.key}>
          <td class="print-narrow">{whenSay(one)}</td>
          <td>
            <strong>{`${foundSay(one)}. `}</strong>
            {cutWords(reasonsOf(one).join(' '), room)}
          </td>
        </tr>
      )}
    />
  )
}

function reasonsOf(one: Judgement): string[] {
  const { found } = one
  const why = found.type === 'SwatchJudged' ? [found.verdict.why.say] : []
  const series = found.series ? [`By the series ${found.series.name}, ${seriesSay(found.series)}.`] : []
  return [...why, foundBy(one), ...series]
}
