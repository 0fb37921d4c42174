// A correction: which entry, what it should have said, and why. The old value stays in the record.
import { useMemo, useState } from 'preact/hooks'
import type { Entry } from '../../../core/pot/entry.ts'
import type { PotEvent } from '../../../core/pot/events.ts'
import { type Correctable, correctableFields, keyOf, withCorrections } from '../../../core/record/corrected.ts'
import { localClock } from '../../../core/record/local-time.ts'
import type { BatchRecord } from '../../../core/record/record.ts'
import type { Kitchen } from '../../kitchen.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { SelectField, TextField } from '../../parts/field.tsx'
import { Pad } from '../../parts/pad.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import { Strip } from '../../parts/strip.tsx'

type Props = {
  kitchen: Kitchen
  potId: string
  record: BatchRecord
  entries: readonly Entry<PotEvent>[]
  /** The slot that is wrong, where it is known already. */
  chosen?: string
  close: (corrected: boolean) => void
}

type Slot = { key: string; label: string; entry: Entry<PotEvent>; field: Correctable }

export function CorrectSheet({ kitchen, potId, record, entries, chosen = '', close }: Props): preact.JSX.Element {
  const slots = useMemo(() => slotsOf(record, entries), [record, entries])
  const [key, setKey] = useState(chosen)
  const [now, setNow] = useState('')
  const [why, setWhy] = useState('')
  const [asked, setAsked] = useState(false)
  const [failed, setFailed] = useState<string | null>(null)
  const slot = slots.find((each) => each.key === key)
  if (slots.length === 0) {
    return (
      <Sheet title="Correct" onClose={() => close(false)}>
        <p>Nothing in this record can be corrected.</p>
      </Sheet>
    )
  }
  const wrong = slot ? valueProblem(slot.field, now) : null
  const correct = async (): Promise<void> => {
    setAsked(true)
    setFailed(null)
    if (!slot || wrong !== null || why.trim() === '') return
    const { entry, field } = slot
    const ref = { writerId: entry.writerId, seq: entry.seq }
    const said = { field: field.field, was: field.was, now: now.trim(), why: why.trim() }
    const sent = await kitchen.send(potId, { type: 'Correct', entry: ref, ...said })
    if (sent.ok) close(true)
    else setFailed(sent.say)
  }
  return (
    <Sheet title="Correct" onClose={() => close(false)}>
      <SelectField
        label="Which entry"
        options={[{ value: '', label: 'Choose it' }, ...slots.map((each) => ({ value: each.key, label: each.label }))]}
        value={key}
        onChange={(next) => {
          setKey(next)
          setNow('')
        }}
        problem={asked && !slot ? 'Choose the entry that is wrong.' : null}
      />
      {slot ? <NewValue field={slot.field} now={now} setNow={setNow} problem={asked ? wrong : null} /> : null}
      <TextField
        label="Why"
        hint="The old value and the reason stay in the record."
        value={why}
        onInput={setWhy}
        problem={asked && why.trim() === '' ? 'Say why, for example: misread.' : null}
      />
      {failed === null ? null : (
        <Strip tone="bad" urgent>
          {failed}
        </Strip>
      )}
      <Pad kind="lesser" look="solid" onPress={correct}>
        Correct it
      </Pad>
    </Sheet>
  )
}

type NewValueProps = { field: Correctable; now: string; setNow: (now: string) => void; problem: string | null }

function NewValue({ field, now, setNow, problem }: NewValueProps): preact.JSX.Element {
  const unit = field.unit === '' ? undefined : field.unit
  return (
    <>
      <p>{`It says: ${field.was === '' ? 'nothing' : `${field.was} ${unit ?? ''}`}`}</p>
      {field.choices ? (
        <ChoiceRow
          legend="It should say"
          choices={field.choices.map((choice) => ({ value: choice, label: choice }))}
          value={now}
          onChoose={setNow}
        />
      ) : (
        <TextField
          label="It should say"
          kind={field.kind === 'number' ? 'decimal' : 'text'}
          unit={unit}
          value={now}
          onInput={setNow}
          problem={problem}
        />
      )}
      {field.choices && problem ? (
        <p class="field-problem" role="alert">
          {problem}
        </p>
      ) : null}
    </>
  )
}

function valueProblem(field: Correctable, now: string): string | null {
  const text = now.trim()
  if (text === '') return 'Write what it should say.'
  if (text === field.was) return 'It says so already.'
  if (field.kind === 'number' && !Number.isFinite(Number(text))) return 'Write a number, for example 82.5.'
  return null
}

/** Every value that can be said anew, as it reads now; newest first. */
function slotsOf(record: BatchRecord, entries: readonly Entry<PotEvent>[]): Slot[] {
  const words = new Map(record.journal.map((line) => [keyOf(line.said.entry), line]))
  return withCorrections(entries)
    .entries.flatMap((entry): Slot[] => {
      const line = words.get(keyOf(entry))
      if (!line || line.withdrawn) return []
      const clock = localClock(entry.atMs, entry.tzOffsetMin)
      return correctableFields(entry.event).map((field) => ({
        key: `${keyOf(entry)} ${field.field}`,
        label:
          entry.event.type === 'PotStarted'
            ? `${clock} Start: ${field.label}`
            : `${clock} ${field.label}: ${line.words}`,
        entry,
        field
      }))
    })
    .reverse()
}
