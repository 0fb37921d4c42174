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
    <>
      <div class="ask-grid ask-cup-grid">
        {usualLadder.map((rung, i) => {
          const paler = usualLadder[i + 1]
          if (between && paler === undefined) return null
          return (
            <Pad
              key={rung}
              kind="lesser"
              look={look}
              className="ask-cup"
              layoutKey={key}
              label={between ? `Between ${rung} and ${paler} %` : `Like the cup of ${rung} %`}
              onPress={() => (between ? like(rung, paler as number) : like(rung))}
            >
              <span class="ask-reading">{between ? `${rung} – ${paler}` : `${rung} %`}</span>
              {between || !ends[rung] ? null : <span class="ask-grade-look">{ends[rung]}</span>}
            </Pad>
          )
        })}
      </div>
      <div class="ask-grid">
        <Pad kind="lesser" look={look} selected={between} onPress={() => setBetween(!between)}>
          between
        </Pad>
        <Pad kind="lesser" look={look} layoutKey={key} onPress={() => setMaking(true)}>
          how to make them
        </Pad>
        <Pad kind="lesser" look={look} layoutKey={key} onPress={byEye}>
          by eye
        </Pad>
      </div>
    </>
  )
}

/** Common practice, no source. Halves of halves are 12.5, 6.25 and 3.125 %. */
function HowToMake(): preact.JSX.Element {
  return (
    <ol class="ask-cups-how">
      <li>Start liquor: a cup of this bath, kept from before the yarn went in. Without one, judge by eye.</li>
      <li>Half a cup of it, filled up with water, is 50 %. Half of that, filled up, 25 %. So on to 12, 6, 3 %.</li>
      <li>The last cup is water.</li>
      <li>A cup of the bath, stirred, cooled, filled as high. The bath at its first level, or it looks too deep.</li>
      <li>On white, seen from above.</li>
    </ol>
  )
}
