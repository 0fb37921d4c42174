import type { Kitchen } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import { roughSay } from './words.ts'
import './stove-strips.css'

/** After reopening: what came and went while nobody looked. */
export function MissedPanel({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element | null {
  const missed = kitchen.missed.value
  if (missed.length === 0) return null
  return (
    <section class="missed" aria-labelledby="missed-title">
      <h2 id="missed-title">While you were away</h2>
      <ul>
        {missed.map((one) => (
          <li key={`${one.potId} ${one.path} ${one.dueAtMs}`}>
            <strong>{one.colourway}:</strong> {one.what}, {roughSay(one.byMs)} late. {one.late}
          </li>
        ))}
      </ul>
      <Pad kind="main" look="solid" layoutKey="missed" onPress={() => kitchen.dismissMissed()}>
        To the pots
      </Pad>
    </section>
  )
}
