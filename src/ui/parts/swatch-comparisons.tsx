// What was found of a skein beside something else, the latest first: in the Dye book's record, and under Swatches.
import type { Compared, Comparison } from '../../core/record/swatch.ts'
import type { Kitchen } from '../kitchen.ts'
import { changeSay, deltaSay, doubtSay, pairSay, sidesSay, worstSay } from './match-words.ts'
import { stainAboutSay, stainOfSay, stainSay, stainStepSay } from './stain-words.ts'
import { KeptPhotos } from './swatch-judgements.tsx'
import { whenBy } from './swatch-words.ts'
import './swatch-judgements.css'

type Props = { kitchen: Kitchen; comparisons: readonly Comparison[] }

export function Comparisons({ kitchen, comparisons }: Props): preact.JSX.Element | null {
  if (comparisons.length === 0) return null
  return (
    <ol class="judgements">
      {comparisons.map((one) => (
        <li key={one.key}>
          {one.found.type === 'SwatchMatched' ? <Matched found={one.found} /> : <Stained found={one.found} />}
          <KeptPhotos kitchen={kitchen} photos={one.photos} />
          <p class="soft">{whenBy(one)}</p>
        </li>
      ))}
    </ol>
  )
}

type Of<T extends Compared['type']> = { found: Extract<Compared, { type: T }> }

function Matched({ found: { match, skein, target } }: Of<'SwatchMatched'>): preact.JSX.Element {
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

function Stained({ found }: Of<'ClothStained'>): preact.JSX.Element {
  const { stain } = found
  return (
    <>
      <p>
        <strong>{`Bleed: ${stainSay(stain).toLowerCase()}. ${stainStepSay(stain)}`}</strong>
      </p>
      <p>{stainOfSay(found)}</p>
      <p class="soft">{stainAboutSay(stain)}</p>
    </>
  )
}
