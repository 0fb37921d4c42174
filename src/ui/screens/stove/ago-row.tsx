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

export function AgoRow({ stage, look = 'bath' }: { stage: Stage; look?: 'bath' | 'plain' }): preact.JSX.Element {
  return (
    <div class="ago">
      <ChoiceRow
        legend="When it was done, minutes ago"
        quiet
        kind="lesser"
        look={look}
        choices={choices}
        value={stage.agoMs.value}
        onChoose={(agoMs) => {
          stage.agoMs.value = agoMs
        }}
      />
      <span class="ago-tail" aria-hidden="true">
        min ago
      </span>
    </div>
  )
}
