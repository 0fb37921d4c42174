// The moment of an act is not the moment of the tap: beside each answer stands when it was.
import { ChoiceRow } from '../../parts/choice-row.tsx'
import type { Stage } from './stage.ts'
import './ago-row.css'

const MINUTE_MS = 60_000
const choices = [
  { value: 0, label: 'now' },
  { value: MINUTE_MS, label: '1' },
  { value: 2 * MINUTE_MS, label: '2' },
  { value: 5 * MINUTE_MS, label: '5' }
] as const

/** Beside the rest where the act had a cue. */
const cue = { value: -1, label: 'cue' } as const

/** `cued`: the act had a cue, and that is when it was done if nothing else is said. */
export function AgoRow({
  stage,
  look = 'bath',
  cued = false
}: {
  stage: Stage
  look?: 'bath' | 'plain'
  cued?: boolean
}): preact.JSX.Element {
  const offered = cued ? [cue, ...choices] : choices
  const said = stage.agoMs.value
  return (
    <div class="ago" data-cued={cued ? '' : undefined}>
      <ChoiceRow
        legend={cued ? 'When it was done: at its cue, now, or minutes ago' : 'When it was done, minutes ago'}
        quiet
        kind="lesser"
        look={look}
        choices={offered}
        value={said ?? offered[0].value}
        onChoose={(chosen) => {
          stage.agoMs.value = chosen === cue.value ? null : chosen
        }}
      />
      <span class="ago-tail" aria-hidden="true">
        min ago
      </span>
    </div>
  )
}
