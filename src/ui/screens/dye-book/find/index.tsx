// Finds batches by word, date, stock, yarn, protocol and verdict.
import { useEffect, useId, useMemo, useRef, useState } from 'preact/hooks'
import { anything, choicesIn, findAmong, type Wanted } from '../../../../core/record/find.ts'
import type { BookLine, Kitchen } from '../../../kitchen.ts'
import { SelectField, TextField } from '../../../parts/field.tsx'
import { Pad } from '../../../parts/pad.tsx'
import { openByCode } from './by-code.ts'
import { useWholeBook } from './use-found.ts'
import './style.css'

/** `show` gets what fits, newest first, or null where nothing is asked. */
type Props = { kitchen: Kitchen; show: (found: BookLine[] | null) => void }

export function FindBatches({ kitchen, show }: Props): preact.JSX.Element {
  const [wanted, setWanted] = useState(anything)
  const [open, setOpen] = useState(false)
  const [ofCode, setOfCode] = useState<string | null>(null)
  const asked = JSON.stringify(wanted) !== JSON.stringify(anything)
  const book = useWholeBook(kitchen, open || asked)
  const found = useMemo(() => (book && asked ? findAmong(book.all, wanted) : null), [book, wanted, asked])
  useEffect(() => show(found), [found])
  const change = (part: Partial<Wanted>): void => setWanted({ ...wanted, ...part })
  const latest = useRef('')
  const type = (words: string): void => {
    latest.current = words
    change({ words })
    void openByCode(kitchen, words).then((say) => latest.current === words && setOfCode(say))
  }
  const all = (): void => {
    latest.current = ''
    setWanted(anything)
    setOfCode(null)
  }
  return (
    <search class="book-search">
      <TextField
        label="Find a batch"
        hint="Words of the name, the yarn, a stock, a note, a result; or the code on its tag."
        value={wanted.words}
        onInput={type}
      />
      <details onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>By date, stock, yarn, protocol, verdict, skein</summary>
        {book ? (
          <Filters wanted={wanted} change={change} choices={choicesIn(book.all)} />
        ) : (
          <p>Opening the whole book.</p>
        )}
      </details>
      {book?.skeinProblem ? <p role="alert">{book.skeinProblem}</p> : null}
      <div class="book-search-says">
        <p role="status">
          {ofCode ?? (found === null ? '' : foundWords(found.length))}
          {book?.failed !== undefined
            ? ` The book could not be looked through to its end (${book.failed}). Open it again.`
            : ''}
          {book && book.unread > 0 && book.failed === undefined && (open || asked)
            ? ` ${book.unread} journals are still being looked through for notes, stocks and yarns.`
            : ''}
        </p>
        {asked ? <Pad onPress={all}>Show all</Pad> : null}
      </div>
    </search>
  )
}

function foundWords(count: number): string {
  if (count === 0) return 'Nothing fits.'
  return count === 1 ? 'One batch fits.' : `${count} batches fit.`
}

type FiltersProps = {
  wanted: Wanted
  change: (part: Partial<Wanted>) => void
  choices: ReturnType<typeof choicesIn>
}

function Filters({ wanted, change, choices }: FiltersProps): preact.JSX.Element {
  const select = (key: keyof typeof choices, label: string): preact.JSX.Element => (
    <SelectField
      label={label}
      options={[{ value: '', label: 'Any' }, ...choices[key].map((value) => ({ value, label: value }))]}
      value={wanted[key]}
      onChange={(value) => change({ [key]: value })}
    />
  )
  return (
    <div class="book-filters">
      <DayField label="From" onDay={(day) => change({ fromMs: day === null ? null : midnight(day, 0) })} />
      <DayField label="To" onDay={(day) => change({ toMs: day === null ? null : midnight(day, 1) })} />
      {select('stock', 'Stock')}
      {select('yarn', 'Yarn')}
      {select('protocol', 'Protocol')}
      {select('verdict', 'Verdict')}
      {select('skein', 'Skein')}
    </div>
  )
}

function DayField({ label, onDay }: { label: string; onDay: (day: string | null) => void }): preact.JSX.Element {
  const id = useId()
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <div class="field-box">
        <input id={id} type="date" onInput={(event) => onDay(event.currentTarget.value || null)} />
      </div>
    </div>
  )
}

/** The dyer's own midnight that begins the day so many days after. */
function midnight(day: string, later: number): number {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number)
  return new Date(year, month - 1, date + later).getTime()
}
