// What was found of a skein beside something else, the latest first: in the Dye book's record, and under Swatches.
import type { Comparison } from '../../core/record/swatch.ts'
import type { Kitchen } from '../kitchen.ts'
import { changeSay, deltaSay, doubtSay, pairSay, sidesSay, worstSay } from './match-words.ts'
import { whenBy } from './swatch-words.ts'
import './swatch-judgements.css'

type Props = { kitchen: Kitchen; comparisons: readonly Comparison[] }

export function Comparisons({ comparisons }: Props): preact.JSX.Element | null {
  if (comparisons.length === 0) return null
  return (
    <ol class="judgements">
      {comparisons.map((one) => (
        <li key={one.key}>
          <Matched found={one.found} />
          <p class="soft">{whenBy(one)}</p>
        </li>
      ))}
    </ol>
  )
}

function Matched({ found: { match, skein, target } }: Pick<Comparison, 'found'>): preact.JSX.Element {
  const { whole } = match
  return (
    <>
      <p>
        <strong>{`Match: ${pairSay(whole).toLowerCase()}. ${deltaSay(whole)}`}</strong>
      </p>
      <p>{`Of ${skein.name}, held against ${target.name}.`}</p>
      <p>{[worstSay(match), changeSay(whole)].filter(Boolean).join(' ')}</p>
      <p class="soft">{`${doubtSay(whole)} ${sidesSay(match, skein, target)}`}</p>
    </>
  )
}
