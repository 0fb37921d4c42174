// The same again with something other: scaled, one thing changed, its yarn dyed over, or its bath gone on in.
import { useState } from 'preact/hooks'
import { readMass, showMass, type Units } from '../../../../core/quantity/index.ts'
import type { BatchRecord } from '../../../../core/record/record.ts'
import type { Kitchen } from '../../../kitchen.ts'
import { ChoiceRow } from '../../../parts/choice-row.tsx'
import { SelectField, TextField } from '../../../parts/field.tsx'
import { Pad } from '../../../parts/pad.tsx'
import { Sheet } from '../../../parts/sheet.tsx'
import { startAgain } from '../same-again.ts'
import { type Again, againChange, changeable, scaleOf } from './change.ts'

const ways: { value: Again['way']; label: string; say: string }[] = [
  {
    value: 'scaled',
    label: 'Scaled',
    say: 'What is worked out from the weight follows. What was typed stays: look it over.'
  },
  { value: 'changed', label: 'One thing changed', say: 'All else is filled in as it was.' },
  {
    value: 'overdye',
    label: 'Dye its yarn over',
    say: 'The new batch names this one as the one it was dyed in before.'
  },
  {
    value: 'bath',
    label: 'Go on in its bath',
    say: 'The bath keeps its number. How much dye is left in it is not known.'
  }
]

type Props = { kitchen: Kitchen; record: BatchRecord; units: Units; close: () => void }

export function AgainSheet({ kitchen, record, units, close }: Props): preact.JSX.Element {
  const [way, setWay] = useState<Again['way']>('scaled')
  const [mass, setMass] = useState('')
  const [field, setField] = useState('')
  const [value, setValue] = useState('')
  const [asked, setAsked] = useState(false)
  const [failed, setFailed] = useState<string | null>(null)
  const read = readMass(mass, { bareUnit: units.mass === 'us' ? 'oz' : 'g' })
  const heavy = read.ok && read.value > 0 ? null : 'Write a weight, for example 250 g.'
  const go = async (): Promise<void> => {
    setAsked(true)
    if (way === 'scaled' && heavy !== null) return
    if (way === 'changed' && (field === '' || value.trim() === '')) return
    const again: Again = { way, factor: scaleOf(record, read.ok ? read.value : 0), field, value: value.trim() }
    setFailed(await startAgain(kitchen, record, againChange(record, again)))
  }
  const fields = changeable(record)
  return (
    <Sheet title="Again, but…" onClose={close}>
      <ChoiceRow legend="What is other?" choices={ways} value={way} onChoose={setWay} />
      <p>{ways.find((each) => each.value === way)?.say}</p>
      {way === 'scaled' ? (
        <TextField
          label="Yarn in all"
          hint={`It was ${showMass(record.substrate.goodsMassG, units)}.`}
          value={mass}
          onInput={setMass}
          problem={asked ? heavy : null}
        />
      ) : null}
      {way === 'changed' ? (
        <>
          <SelectField
            label="Which"
            options={[
              { value: '', label: 'Choose it' },
              ...fields.map((each) => ({ value: each.field, label: `${each.label}: ${each.was}` }))
            ]}
            value={field}
            onChange={setField}
            problem={asked && field === '' ? 'Choose what is to be other.' : null}
          />
          <TextField
            label="Now"
            value={value}
            onInput={setValue}
            problem={asked && value.trim() === '' ? 'Write what it is to be.' : null}
          />
        </>
      ) : null}
      {failed === null ? null : (
        <p class="field-problem" role="alert">
          {failed}
        </p>
      )}
      <Pad kind="lesser" look="solid" onPress={() => void go()}>
        Fill in the start
      </Pad>
    </Sheet>
  )
}
