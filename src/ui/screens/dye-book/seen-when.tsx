// When something was seen that is written after the fact. What was seen earlier is marked late in the record.
import { useState } from 'preact/hooks'
import type { Kitchen } from '../../kitchen.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { TextField } from '../../parts/field.tsx'
import { readSeenAt, typedFrom } from './seen-at.ts'

type When = 'now' | 'hour' | 'end' | 'other'

const HOUR_MS = 3_600_000

/** `endedAtMs` null: it goes on. */
export type BatchTimes = { startedAtMs: number; endedAtMs: number | null }

type Asked = {
  row: preact.JSX.Element
  /** How long ago that was; null: the time given is refused, and its field says why. */
  agoMs(): number | null
}

export function useSeenWhen(kitchen: Kitchen, { startedAtMs, endedAtMs }: BatchTimes): Asked {
  const [when, setWhen] = useState<When>('now')
  const [typed, setTyped] = useState('')
  const [problem, setProblem] = useState<string | null>(null)
  const choices: { value: When; label: string }[] = [
    { value: 'now', label: 'Now' },
    { value: 'hour', label: 'An hour ago' },
    ...(endedAtMs === null ? [] : [{ value: 'end' as const, label: 'When the batch ended' }]),
    { value: 'other', label: 'Another time' }
  ]
  const choose = (next: When): void => {
    if (next === 'other' && typed === '') setTyped(typedFrom(kitchen.now.peek()))
    setProblem(null)
    setWhen(next)
  }
  const row = (
    <>
      <ChoiceRow legend="When was it seen?" choices={choices} value={when} onChoose={choose} />
      {when === 'other' ? (
        <TextField
          label="Day and time"
          kind="datetime"
          value={typed}
          onInput={(next) => {
            setTyped(next)
            setProblem(null)
          }}
          problem={problem}
        />
      ) : null}
    </>
  )
  const agoMs = (): number | null => {
    const nowMs = kitchen.now.peek()
    if (when === 'hour') return HOUR_MS
    if (when === 'end') return Math.max(0, nowMs - (endedAtMs ?? nowMs))
    if (when === 'now') return 0
    const seen = readSeenAt(typed, startedAtMs, nowMs)
    setProblem(seen.ok ? null : seen.say)
    return seen.ok ? nowMs - seen.atMs : null
  }
  return { row, agoMs }
}
