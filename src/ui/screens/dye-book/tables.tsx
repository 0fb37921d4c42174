// The parts of a record that are lists: amounts, readings, judgements, notes and what went otherwise.
import { showDose, showDuration, showNumber, type Units } from '../../../core/quantity/index.ts'
import { localClock } from '../../../core/record/local-time.ts'
import type { AmountRecord, BatchRecord, Said } from '../../../core/record/record.ts'
import { judgedLines, noteLines, otherwiseLines, readingLines, type SaidLine } from './record-words.ts'

/** When, by whom where it was not the dyer, and whether it is the time of a cue or was written later. */
export function When({ said }: { said: Said }): preact.JSX.Element {
  const cue = said.atCue ? ', at its cue' : ''
  const late = said.writtenLateMs === null ? '' : `, written ${showDuration(said.writtenLateMs)} later`
  return (
    <span class="book-when">
      <time dateTime={said.at}>{localClock(said.atMs, said.tzOffsetMin)}</time>
      {said.by === 'person' ? `${cue}${late}` : ` ${said.who}`}
    </span>
  )
}

const fates: Record<AmountRecord['fate'], string> = {
  added: '',
  unplanned: 'unplanned',
  elsewhere: 'into another pot',
  'not-added': 'not added',
  'to-come': 'to come'
}

export function Amounts({ record, units }: { record: BatchRecord; units: Units }): preact.JSX.Element | null {
  if (record.amounts.length === 0) return null
  return (
    <section class="book-part" aria-labelledby="book-amounts">
      <h2 id="book-amounts">Amounts</h2>
      <table class="book-table">
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">Planned</th>
            <th scope="col">Added</th>
            <th scope="col">When</th>
          </tr>
        </thead>
        <tbody>
          {record.amounts.map((amount) => (
            <AmountRow key={`${amount.path} ${amount.fate} ${amount.said?.entry.seq}`} amount={amount} units={units} />
          ))}
        </tbody>
      </table>
    </section>
  )
}

export function AmountRow({ amount, units }: { amount: AmountRecord; units: Units }): preact.JSX.Element {
  return (
    <tr>
      <th scope="row">
        {amount.label} <span class="soft">{amount.of}</span>
      </th>
      <td>{amount.planned ? showDose(amount.planned, units) : '–'}</td>
      <td>
        {amount.added ? showDose(amount.added, units) : fates[amount.fate]}
        {amount.added && amount.fate !== 'added' ? <span class="soft">{fates[amount.fate]}</span> : null}
        {offWords(amount.offPercent)}
      </td>
      <td>{amount.said ? <When said={amount.said} /> : ''}</td>
    </tr>
  )
}

function offWords(offPercent: number | null): preact.JSX.Element | null {
  if (offPercent === null || Math.abs(offPercent) < 0.5) return null
  const words = `${showNumber(Math.abs(offPercent), 0)} % ${offPercent > 0 ? 'more' : 'less'}`
  return <span class="soft">{words}</span>
}

export function Lines({ record }: { record: BatchRecord }): preact.JSX.Element {
  return (
    <>
      <Listed id="book-otherwise" title="Otherwise than planned" lines={otherwiseLines(record)} none="Nothing." />
      <Listed id="book-readings" title="Readings" lines={readingLines(record)} none="None taken." />
      <Listed id="book-judged" title="Judged" lines={judgedLines(record)} none="Nothing judged." />
      <Listed id="book-notes" title="Notes" lines={noteLines(record)} none="No notes." />
    </>
  )
}

type ListedProps = { id: string; title: string; lines: SaidLine[]; none: string | null }

export function Listed({ id, title, lines, none }: ListedProps): preact.JSX.Element | null {
  if (lines.length === 0 && none === null) return null
  return (
    <section class="book-part" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {lines.length === 0 ? (
        <p class="soft">{none}</p>
      ) : (
        <ul class="book-said">
          {lines.map(({ said, words }, i) => (
            <li key={`${said.entry.writerId} ${said.entry.seq} ${i}`}>
              <When said={said} />
              <span>{words}</span>
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}
