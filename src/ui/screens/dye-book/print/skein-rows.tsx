// What was found of the skein, on paper: the latest first, for that is what holds.
import { cutWords, type Room } from '../../../../core/record/condensed.ts'
import { foundSay } from '../../../../core/record/skein-verdict.ts'
import type { Judgement } from '../../../../core/record/swatch.ts'
import { whenFound } from '../../../parts/swatch-judgements.tsx'
import { foundBy } from '../../../parts/swatch-words.ts'
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
          <td class="print-narrow">{whenFound(one)}</td>
          <td>
            <strong>{`${foundSay(one)}. `}</strong>
            {cutWords(
              `${one.found.type === 'SwatchJudged' ? `${one.found.verdict.why.say} ` : ''}${foundBy(one)}`,
              room
            )}
          </td>
        </tr>
      )}
    />
  )
}
