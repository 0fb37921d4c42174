// A judgement in two taps: how much is left, then the hue of it. A clear bath has no hue to name.
import { useEffect, useState } from 'preact/hooks'
import type { CupsRead } from '../../../../core/pot/events.ts'
import { type Grade, grades } from '../../../../core/protocol/model.ts'
import { later } from '../../../parts/later.tsx'
import { Pad } from '../../../parts/pad.tsx'
import type { AskLook } from './ask-panel.tsx'

/** What each grade looks like in a white spoon. Common practice, no source. */
const looks: Record<Grade, string> = {
  clear: 'as water',
  trace: 'beside water only',
  tint: 'pale colour',
  half: 'about half',
  strong: 'as it began'
}

const hues = ['yellow', 'orange', 'red', 'pink', 'purple', 'blue', 'green', 'brown', 'grey'] as const

const CupPads = later(() => import('./cup-pads.tsx'))

/** How much is left, by the eye alone or beside cups. */
export type Seen = { grade: Grade; cups?: CupsRead }

type Props = {
  look: AskLook
  layoutKey: string
  /** May it be seen beside cups of its start liquor? */
  cups: boolean
  onJudge: (judged: Seen & { hue: string | null }) => void
}

export function GradePads({ look, layoutKey, cups, onJudge }: Props): preact.JSX.Element {
  const [seen, setSeen] = useState<Seen | null>(null)
  const [beside, setBeside] = useState(false)
  useEffect(() => {
    if (cups) CupPads.fetchNow()
  }, [cups])
  const see = (now: Seen): void => (now.grade === 'clear' ? onJudge({ ...now, hue: null }) : setSeen(now))
  if (seen !== null) {
    const again = (): void => setSeen(null)
    return <HuePads look={look} layoutKey={`${layoutKey} hue`} seen={seen} onJudge={onJudge} again={again} />
  }
  if (beside) {
    return (
      <div class="ask-cups">
        <CupPads look={look} layoutKey={`${layoutKey} cups`} onSee={see} byEye={() => setBeside(false)} />
      </div>
    )
  }
  return (
    <div class="ask-grades">
      {grades.map((each, i) => (
        <Pad
          key={each}
          kind="lesser"
          look={look}
          className="ask-grade"
          layoutKey={layoutKey}
          onPress={() => see({ grade: each })}
        >
          <span class="ask-grade-no" aria-hidden="true">
            {i + 1}
          </span>
          <span class="ask-grade-word">{each}</span>
          <span class="ask-grade-look">{looks[each]}</span>
        </Pad>
      ))}
      {cups ? (
        <Pad kind="lesser" look={look} className="ask-grade" layoutKey={layoutKey} onPress={() => setBeside(true)}>
          <span class="ask-grade-no" aria-hidden="true" />
          <span class="ask-grade-word">cups</span>
          <span class="ask-grade-look">of the start liquor</span>
        </Pad>
      ) : null}
    </div>
  )
}

type HueProps = Pick<Props, 'look' | 'layoutKey' | 'onJudge'> & { seen: Seen; again: () => void }

function HuePads({ look, layoutKey, seen, onJudge, again }: HueProps): preact.JSX.Element {
  const pad = (say: string, onPress: () => void): preact.JSX.Element => (
    <Pad key={say} kind="lesser" look={look} layoutKey={layoutKey} onPress={onPress}>
      {say}
    </Pad>
  )
  return (
    <div class="ask-hues">
      <p class="ask-say">{seen.grade}. What hue is left?</p>
      <div class="ask-grid">
        {hues.map((hue) => pad(hue, () => onJudge({ ...seen, hue })))}
        {pad('can’t tell', () => onJudge({ ...seen, hue: null }))}
        {pad(seen.cups ? 'other cup' : 'other grade', again)}
      </div>
    </div>
  )
}
