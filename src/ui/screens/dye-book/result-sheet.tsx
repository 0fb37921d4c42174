// A result told after the fact: one of the usual ones, or a field of the dyer's own.
import { useState } from 'preact/hooks'
import { RESULT_NAME_MOST } from '../../../core/pot/result.ts'
import { readResult, resultKind, resultKinds } from '../../../core/record/results.ts'
import type { Kitchen } from '../../kitchen.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { SelectField, TextField } from '../../parts/field.tsx'
import { Pad } from '../../parts/pad.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import { type BatchTimes, useSeenWhen } from './seen-when.tsx'

type Props = { kitchen: Kitchen; potId: string; times: BatchTimes; close: (told: boolean) => void }

const OWN = 'own'
const options = [
  ...resultKinds.map(({ what, label }) => ({ value: what, label })),
  { value: OWN, label: 'A field of my own' }
]

export function ResultSheet({ kitchen, potId, times, close }: Props): preact.JSX.Element {
  const [what, setWhat] = useState(resultKinds[0]?.what ?? OWN)
  const [name, setName] = useState('')
  const [typed, setTyped] = useState('')
  const seen = useSeenWhen(kitchen, times)
  const [asked, setAsked] = useState(false)
  const [failed, setFailed] = useState<string | null>(null)
  const own = what === OWN
  const kind = own ? { what: name.trim(), label: name.trim() || 'The field' } : resultKind(what, false)
  const read = readResult(kind, own, typed)
  const nameless = own ? nameProblem(name.trim()) : null
  const tell = async (): Promise<void> => {
    setAsked(true)
    setFailed(null)
    // Asked even where something else is refused: all that is wrong is said at once.
    const agoMs = seen.agoMs()
    if (!read.ok || nameless !== null || agoMs === null) return
    const sent = await kitchen.send(potId, { type: 'TellResult', what: kind.what, own, value: read.value }, { agoMs })
    if (sent.ok) close(true)
    else setFailed(sent.say)
  }
  const problem = failed ?? (asked && !read.ok ? read.say : null)
  return (
    <Sheet title="Result" onClose={() => close(false)}>
      <SelectField
        label="What"
        options={options}
        value={what}
        onChange={(next) => {
          setWhat(next)
          setTyped('')
          setAsked(false)
        }}
      />
      {own ? <TextField label="Its name" value={name} onInput={setName} problem={asked ? nameless : null} /> : null}
      {kind.choices ? (
        <>
          <ChoiceRow
            legend={kind.label}
            choices={kind.choices.map((value) => ({ value, label: value }))}
            value={typed}
            onChoose={setTyped}
          />
          {kind.hint ? <p class="field-hint">{kind.hint}</p> : null}
          {problem === null ? null : (
            <p class="field-problem" role="alert">
              {problem}
            </p>
          )}
        </>
      ) : (
        <TextField
          label={own ? 'What came of it' : kind.label}
          hint={own ? 'Words, or a number with its unit.' : undefined}
          kind={kind.number ? 'decimal' : 'text'}
          unit={kind.unit}
          value={typed}
          onInput={setTyped}
          problem={problem}
        />
      )}
      {seen.row}
      <Pad kind="lesser" look="solid" onPress={() => void tell()}>
        Write it down
      </Pad>
    </Sheet>
  )
}

function nameProblem(name: string): string | null {
  if (name === '') return 'Give it a name, for example: Handle.'
  return name.length > RESULT_NAME_MOST ? `At most ${RESULT_NAME_MOST} letters.` : null
}
