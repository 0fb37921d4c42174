// The bath beside cups of the liquor it began as: the one it is like, or the two it lies between.
import { useState } from 'preact/hooks'
import { usualLadder } from '../../../../core/chemistry/uptake/exhaustion.ts'
import { gradeOfCups } from '../../../../core/pot/cups.ts'
import { Pad } from '../../../parts/pad.tsx'
import type { AskLook } from './ask-panel.tsx'
import type { Seen } from './grade-pads.tsx'

type Props = { look: AskLook; layoutKey: string; onSee: (seen: Seen) => void; byEye: () => void }

const ends: Partial<Record<number, string>> = { 100: 'start liquor', 0: 'water' }

export default function CupPads({ look, layoutKey, onSee, byEye }: Props): preact.JSX.Element {
  const [between, setBetween] = useState(false)
  const [making, setMaking] = useState(false)
  const key = `${layoutKey} ${between} ${making}`
  const like = (...rungs: number[]): void =>
    onSee({ grade: gradeOfCups(rungs), cups: { like: rungs, ladder: [...usualLadder] } })
  if (making) {
    return (
      <>
        <HowToMake />
        <Pad kind="lesser" look={look} layoutKey={key} onPress={() => setMaking(false)}>
          Back to the cups
        </Pad>
      </>
    )
  }
  return (
    <div class="ask-cup-pads">
      {usualLadder.map((rung, i) => {
        const paler = usualLadder[i + 1]
        if (between && paler === undefined) return null
        return (
          <Pad
            key={rung}
            kind="lesser"
            look={look}
            layoutKey={key}
            label={between ? `Between ${rung} – ${paler} %` : `Like the cup of ${rung} % ${ends[rung] ?? ''}`.trim()}
            onPress={() => (between ? like(rung, paler as number) : like(rung))}
          >
            <span class={between ? 'ask-cup' : 'ask-cup ask-cup-one'}>
              {between ? `${rung} – ${paler}` : `${rung} %`}
            </span>
            {between || !ends[rung] ? null : <span class="ask-cup-is">{ends[rung]}</span>}
          </Pad>
        )
      })}
      <Pad
        kind="lesser"
        look={look}
        className="ask-cup-between"
        selected={between}
        onPress={() => setBetween(!between)}
      >
        between
      </Pad>
      <Pad kind="lesser" look={look} className="ask-cup-how" layoutKey={key} onPress={() => setMaking(true)}>
        how to make them
      </Pad>
      <Pad kind="lesser" look={look} className="ask-cup-eye" layoutKey={key} onPress={byEye}>
        by eye
      </Pad>
    </div>
  )
}

/** Common practice, no source. Halves of halves are 12.5, 6.25 and 3.125 %. */
function HowToMake(): preact.JSX.Element {
  return (
    <ol class="ask-cups-how">
      <li>Start liquor is a cup of this bath from before the yarn went in. Without one, judge by eye.</li>
      <li>
        Half a cup of it, filled up with water, is {'50\u00a0%'}. Half of that, filled up, {'25\u00a0%'}. So on to 12,
        6, {'3\u00a0%'}, and a cup of water.
      </li>
      <li>Fill the bath to its first level, stir, cool a cup of it, filled as high. See all on white, from above.</li>
    </ol>
  )
}
