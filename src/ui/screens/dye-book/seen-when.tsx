// When something was seen that is written after the fact. What was seen earlier is marked late in the record.
import type { Kitchen } from '../../kitchen.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'

export type SeenWhen = 'now' | 'hour' | 'end'

const HOUR_MS = 3_600_000

/** How long ago that was. `endedAtMs` null: the batch goes on. */
export function seenAgoMs(kitchen: Kitchen, when: SeenWhen, endedAtMs: number | null): number {
  if (when === 'hour') return HOUR_MS
  return when === 'end' && endedAtMs !== null ? Math.max(0, kitchen.now.peek() - endedAtMs) : 0
}

type Props = { value: SeenWhen; onChoose: (when: SeenWhen) => void; ended: boolean }

export function SeenWhenRow({ value, onChoose, ended }: Props): preact.JSX.Element {
  const choices: { value: SeenWhen; label: string }[] = [
    { value: 'now', label: 'Now' },
    { value: 'hour', label: 'An hour ago' }
  ]
  if (ended) choices.push({ value: 'end', label: 'When the batch ended' })
  return <ChoiceRow legend="When was it seen?" choices={choices} value={value} onChoose={onChoose} />
}
