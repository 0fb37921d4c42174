// How fast a rehearsal goes, who answers in it, and whether it sounds.
import type { Kitchen } from '../../kitchen.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { rehearsalSpeeds } from '../../parts/rehearsal-route.ts'
import { Sheet } from '../../parts/sheet.tsx'
import type { RehearsalAnswers, RehearsalRun } from '../../rehearsing.ts'

type RowProps<T> = { value: T; onChoose: (value: T) => void }

export function SpeedRow(props: RowProps<number>): preact.JSX.Element {
  const choices = rehearsalSpeeds.map((value) => ({ value, label: `${value}×` }))
  return (
    <div class="rehearse-speed">
      <ChoiceRow legend="How fast" choices={choices} {...props} />
    </div>
  )
}

const people: { value: RehearsalAnswers; label: string }[] = [
  { value: 'own', label: 'I do' },
  { value: 'prompt', label: 'Somebody prompt' },
  { value: 'slow', label: 'Somebody slow' },
  { value: 'forgetful', label: 'Somebody forgetful' }
]

const manners: Record<RehearsalAnswers, string> = {
  own: 'While a pot calls you the clock goes no faster than at the stove.',
  prompt: 'Each act is done at its call, as soon as the hands are free.',
  slow: 'Each act is done two minutes after its call.',
  forgetful: 'One act in four or so is forgotten for twelve minutes.'
}

export function AnswersRow(props: RowProps<RehearsalAnswers>): preact.JSX.Element {
  return (
    <div class="rehearse-answers">
      <ChoiceRow legend="Who answers" choices={people} {...props} />
      <p class="soft">{manners[props.value]}</p>
    </div>
  )
}

const onOff = [
  { value: 1, label: 'With sound' },
  { value: 0, label: 'Silent' }
]

export function Pace({
  kitchen,
  run,
  onClose
}: {
  kitchen: Kitchen
  run: RehearsalRun
  onClose: () => void
}): preact.JSX.Element {
  const real = kitchen.pots.value.length > 0
  return (
    <Sheet title="This rehearsal" onClose={onClose}>
      <SpeedRow value={run.speed.value} onChoose={(speed) => run.setSpeed(speed)} />
      <AnswersRow value={run.answers.value} onChoose={(answers) => run.setAnswers(answers)} />
      <ChoiceRow
        legend="Calls"
        choices={onOff}
        value={run.sounds.value ? 1 : 0}
        onChoose={(on) => run.setSounds(on === 1)}
      />
      <p class="soft">
        {real
          ? 'A real pot is on, so the rehearsal stays silent: what sounds is meant. The real pot still calls you.'
          : 'Nothing of a rehearsal enters the Dye book.'}
      </p>
    </Sheet>
  )
}
