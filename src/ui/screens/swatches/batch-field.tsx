// Which batch the skein is of, or none.
import type { Signal } from '@preact/signals'
import { useEffect, useState } from 'preact/hooks'
import type { BookLine, Kitchen } from '../../kitchen.ts'
import { SelectField } from '../../parts/field.tsx'
import type { Draft } from './draft.ts'

/** More than these are found from the Dye book, whose records lead here. */
export const LISTED_MOST = 100

export function BatchField({ kitchen, draft }: { kitchen: Kitchen; draft: Signal<Draft> }): preact.JSX.Element {
  const [lines, setLines] = useState<BookLine[]>([])
  const [problem, setProblem] = useState<string | null>(null)
  useEffect(() => {
    kitchen.book(0, Number.MAX_SAFE_INTEGER, LISTED_MOST).then(setLines, (error: unknown) => {
      setProblem(`The Dye book can’t be read (${error instanceof Error ? error.message : String(error)}).`)
    })
  }, [kitchen])
  const { batchId } = draft.value
  const options = lines.map((line) => ({ value: line.potId, label: `${line.colourway}, ${dayOf(line)}` }))
  const listed = batchId === null || options.some(({ value }) => value === batchId)
  return (
    <SelectField
      label="Batch"
      hint="What is found goes into its record."
      value={batchId ?? ''}
      problem={problem}
      options={[
        { value: '', label: 'No batch' },
        ...(listed ? [] : [{ value: batchId, label: 'The batch you came from' }]),
        ...options
      ]}
      onChange={(value) => (draft.value = { ...draft.value, batchId: value === '' ? null : value })}
    />
  )
}

export function dayOf({ startedAtMs }: BookLine): string {
  return new Date(startedAtMs).toLocaleDateString(undefined, { day: 'numeric', month: 'short', year: 'numeric' })
}
