// One question, answered with a knuckle. What comes out is an Answer; where it goes is for the caller.

import { hasStartLiquor } from '../../../../core/pot/cups.ts'
import type { Answer } from '../../../../core/pot/events.ts'
import type { Question } from '../../../../core/protocol/model.ts'
import type { Settings } from '../../../kitchen.ts'
import { Pad } from '../../../parts/pad.tsx'
import { GradePads } from './grade-pads.tsx'
import { NumberPads } from './number-pads.tsx'
import { PhPads } from './ph-pads.tsx'
import { TemperaturePads } from './temperature-pads.tsx'
import { TextAnswer } from './text-answer.tsx'
import './ask.css'

export type AskLook = 'bath' | 'plain'

export type AskPanelProps = {
  question: Question
  expectedC: number
  settings: Settings
  look: AskLook
  /** What the pads stand for: they are dead for a moment when it changes. */
  layoutKey: string
  onAnswer: (answer: Answer) => void
}

export function AskPanel(props: AskPanelProps): preact.JSX.Element {
  const { question, look, layoutKey, onAnswer } = props
  switch (question.kind) {
    case 'temperature':
      return (
        <TemperaturePads
          expectedC={props.expectedC}
          unit={props.settings.temperature}
          look={look}
          layoutKey={layoutKey}
          onRead={(tempC) => onAnswer({ kind: 'temperature', tempC })}
        />
      )
    case 'grade':
      return (
        <GradePads
          look={look}
          layoutKey={layoutKey}
          cups={hasStartLiquor(question.of)}
          onJudge={(judged) => onAnswer({ kind: 'grade', ...judged })}
        />
      )
    case 'ph':
      return (
        <PhPads
          middle={phMiddle(question.low, question.high)}
          look={look}
          layoutKey={layoutKey}
          strip={props.settings.strip}
          onRead={(reading) => onAnswer({ kind: 'ph', reading, ...lotOf(props.settings) })}
        />
      )
    case 'number':
      return (
        <NumberPads
          first={question.low ?? question.high ?? 0}
          unit={question.unit}
          look={look}
          layoutKey={layoutKey}
          onNumber={(value) => onAnswer({ kind: 'number', value, unit: question.unit })}
        />
      )
    case 'choice':
      return (
        <div class="ask-choices">
          {question.answers.map((each) => (
            <Pad
              key={each.id}
              kind="main"
              look={look}
              layoutKey={layoutKey}
              onPress={() => onAnswer({ kind: 'choice', answer: each.id })}
            >
              {each.label}
            </Pad>
          ))}
        </div>
      )
    case 'text':
      return <TextAnswer ask={question.ask} onText={(text) => onAnswer({ kind: 'text', text })} />
  }
}

function lotOf({ strip }: Settings): { lot?: string } {
  return strip.lot === '' ? {} : { lot: strip.lot }
}

function phMiddle(low: number | null, high: number | null): number {
  if (low !== null && high !== null) return (low + high) / 2
  return low ?? high ?? 5
}
