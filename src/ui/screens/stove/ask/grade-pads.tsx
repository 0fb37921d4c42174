// A judgement in two taps: how much is left, then the hue of it. A clear bath has no hue to name.
import { useState } from 'preact/hooks'
import { type Grade, grades } from '../../../../core/protocol/model.ts'
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

type Props = { look: AskLook; layoutKey: string; onJudge: (grade: Grade, hue: string | null) => void }

export function GradePads({ look, layoutKey, onJudge }: Props): preact.JSX.Element {
  const [grade, setGrade] = useState<Grade | null>(null)
  if (grade === null) {
    return (
      <div class="ask-grades">
        {grades.map((each, i) => (
          <Pad
            key={each}
            kind="lesser"
            look={look}
            className="ask-grade"
            layoutKey={layoutKey}
            onPress={() => (each === 'clear' ? onJudge(each, null) : setGrade(each))}
          >
            <span class="ask-grade-no" aria-hidden="true">
              {i + 1}
            </span>
            <span class="ask-grade-word">{each}</span>
            <span class="ask-grade-look">{looks[each]}</span>
          </Pad>
        ))}
      </div>
    )
  }
  return (
    <div class="ask-hues">
      <p class="ask-say">{grade}. What hue is left?</p>
      <div class="ask-grid">
        {hues.map((hue) => (
          <Pad key={hue} kind="lesser" look={look} layoutKey={`${layoutKey} hue`} onPress={() => onJudge(grade, hue)}>
            {hue}
          </Pad>
        ))}
        <Pad kind="lesser" look={look} layoutKey={`${layoutKey} hue`} onPress={() => onJudge(grade, null)}>
          can’t tell
        </Pad>
        <Pad kind="lesser" look={look} layoutKey={`${layoutKey} hue`} onPress={() => setGrade(null)}>
          other grade
        </Pad>
      </div>
    </div>
  )
}
