// What the protocol asks at the start, with its presumed answers and limits.
import type { Input, InputProblem, Protocol } from '../../../core/protocol/model.ts'
import type { Units } from '../../../core/quantity/index.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { TextField } from '../../parts/field.tsx'
import type { StartDraft } from '../../parts/start-draft.ts'
import { shownValue } from './fresh-draft.ts'
import { problemAt } from './given.ts'

type Props = {
  protocol: Protocol
  draft: StartDraft
  change: (change: Partial<StartDraft>) => void
  problems: readonly InputProblem[]
  units: Units
}

export function Questions({ protocol, draft, change, problems, units }: Props): preact.JSX.Element {
  return (
    <section class="start-part" aria-labelledby="start-questions">
      <h2 id="start-questions">Method</h2>
      <div class="start-grid">
        {protocol.inputs.map((input) => (
          <Question
            key={input.id}
            input={input}
            units={units}
            value={draft.values[input.id] ?? ''}
            answer={(value) => change({ values: { ...draft.values, [input.id]: value } })}
            problem={problemAt(problems, `values.${input.id}`)}
          />
        ))}
        <TextField
          label="Room temperature"
          hint={`Presumed ${shownTemperature(protocol.roomC, units)}. The cool-down counts on it.`}
          value={draft.room}
          onInput={(room) => change({ room })}
          id="start-room"
          problem={problemAt(problems, 'roomC')}
        />
      </div>
    </section>
  )
}

type QuestionProps = {
  input: Input
  units: Units
  value: string
  answer: (value: string) => void
  problem: string | null
}

function Question({ input, units, value, answer, problem }: QuestionProps): preact.JSX.Element {
  if (input.kind === 'choice') {
    const choices = input.choices.map((choice) => ({ value: choice, label: choice }))
    return (
      <div>
        <ChoiceRow legend={input.ask} choices={choices} value={value} onChoose={answer} />
        {problem ? (
          <p class="field-problem" role="alert">
            {problem}
          </p>
        ) : null}
      </div>
    )
  }
  const numeric = input.kind === 'count' || input.kind === 'number'
  return (
    <TextField
      label={input.ask}
      hint={limitsOf(input, units)}
      kind={numeric ? 'decimal' : 'text'}
      value={value}
      onInput={answer}
      id={`start-value-${input.id}`}
      problem={problem}
    />
  )
}

function limitsOf(input: Input, units: Units): string | undefined {
  const { least, most } = input
  if (least !== null && most !== null) return `${shownValue(input, least, units)} to ${shownValue(input, most, units)}`
  if (least !== null) return `at least ${shownValue(input, least, units)}`
  return most === null ? undefined : `at most ${shownValue(input, most, units)}`
}

function shownTemperature(tempC: number, units: Units): string {
  return shownValue(
    { id: '', ask: '', kind: 'temperature', default: null, least: null, most: null, choices: [] },
    tempC,
    units
  )
}
