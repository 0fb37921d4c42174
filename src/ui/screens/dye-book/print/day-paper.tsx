// All pots of a day on one page: what each is and what to set out for it, then every act of all of them in time, with a
// box to tick by hand.
import { useEffect, useRef, useState } from 'preact/hooks'
import type { SetOut } from '../../../../core/protocol/model.ts'
import { showDose, showMass, type Units } from '../../../../core/quantity/index.ts'
import { cutWords } from '../../../../core/record/condensed.ts'
import { dayActs } from '../../../../core/record/day-acts.ts'
import type { BatchRecord } from '../../../../core/record/record.ts'
import { recordOf } from '../../../../core/record/record-of.ts'
import type { Kitchen } from '../../../kitchen.ts'
import { clockOf, dateName } from '../../../parts/day-name.ts'
import { dayBounds } from '../days.ts'
import { actsOfDay, type DayLine } from './day-lines.ts'
import { Paper, type PaperSize, pageHeight } from './paper.tsx'
import { Heads } from './rows.tsx'
import { useFitted } from './use-fitted.ts'
import './day-paper.css'

type Level = { gather: boolean; small: boolean; done: boolean; acts: number; letters: number }
const full: Level = { gather: false, small: false, done: true, acts: Number.POSITIVE_INFINITY, letters: 600 }
const tight: Level = { ...full, gather: true, small: true }

/** From all there is down to what fits one page: acts in a row that differ only in their number share a line, then the
 * type is smaller and in three columns, then what is done already is left out, then the last acts; each is counted. */
const levels: readonly Level[] = [
  full,
  { ...full, gather: true },
  tight,
  { ...tight, done: false },
  ...[150, 120, 100, 80, 60, 45, 30, 20, 10].map((acts) => ({ ...tight, done: false, acts, letters: acts * 4 }))
]

type Props = { kitchen: Kitchen; day: string; units: Units; size: PaperSize }

export function DayPaper({ kitchen, day, units, size }: Props): preact.JSX.Element {
  const body = useRef<HTMLDivElement>(null)
  const read = useDay(kitchen, day, units)
  const drawn = `${day} ${size} ${read?.records.length ?? 0} ${JSON.stringify(units)}`
  // Two columns may come out a line longer on paper than they were measured.
  const level = levels[
    useFitted(body, drawn, levels.length, (node) => node.offsetHeight <= pageHeight(size) * 0.98)
  ] as Level
  if (read === null) return <p>Opening the day.</p>
  const { records, unread } = read
  if (records.length === 0) {
    return <p>{unread > 0 ? 'The records of this day can’t be read.' : 'No pot was on that day.'}</p>
  }
  return (
    <Paper kind="sheet" size={size} label={`Day sheet of ${day}, as it prints`} body={body}>
      <div class="print-day" data-small={level.small ? '' : undefined}>
        <h2>{dateName(day)}</h2>
        {unread > 0 ? <p>{`${unread} more of this day can’t be read.`}</p> : null}
        <DayPots records={records} units={units} letters={level.letters} />
        <DayActs records={records} day={day} units={units} level={level} />
        <p class="print-end">
          Times as planned from each start; what moves on the Stove later does not move here. ✓: done, and when.
        </p>
      </div>
    </Paper>
  )
}

type Read = { records: BatchRecord[]; unread: number }

/** The records of all pots that were on that day, in the order of their start. */
function useDay(kitchen: Kitchen, day: string, units: Units): Read | null {
  const [read, setRead] = useState<Read | null>(null)
  useEffect(() => {
    let here = true
    const readAll = async (): Promise<void> => {
      const { fromMs, toMs } = dayBounds(day)
      const lines = (await kitchen.book(0, toMs)).filter((line) => (line.endedAtMs ?? toMs) >= fromMs)
      const made = await Promise.all(
        lines.map(async ({ potId }) => {
          const { entries, damaged } = await kitchen.entries(potId)
          return recordOf(entries, { units, damaged })
        })
      )
      const read = made.filter((record) => record !== null)
      // A pot that nobody ended long ago has nothing of this day.
      const records = read.filter(
        ({ identity, ...record }) =>
          identity.startedAtMs >= fromMs || dayActs({ identity, ...record }).some(({ atMs }) => atMs >= fromMs)
      )
      records.sort((a, b) => a.identity.startedAtMs - b.identity.startedAtMs)
      if (here) setRead({ records, unread: made.length - read.length })
    }
    void readAll()
    return () => {
      here = false
    }
  }, [kitchen, day, units.mass, units.temperature, units.volume])
  return read
}

type PotsProps = { records: readonly BatchRecord[]; units: Units; letters: number }

function DayPots({ records, units, letters }: PotsProps): preact.JSX.Element {
  return (
    <table class="print-pots">
      <Heads names={['Pot', 'Method', 'Start', 'Burner', 'Set out']} />
      <tbody>
        {records.map(({ identity, substrate, protocol, programme }) => (
          <tr key={identity.potId}>
            <th scope="row">
              {cutWords(`${identity.letter}  ${identity.colourway}`, { letters })}
              <span class="soft">{`${cutWords(substrate.fibre, { letters })}, ${showMass(substrate.goodsMassG, units)}`}</span>
            </th>
            <td>{cutWords(protocol.title, { letters })}</td>
            <td>{clockOf(identity.startedAtMs)}</td>
            <td>{cutWords(identity.burner, { letters })}</td>
            <td>{cutWords(programme.setOut.map((item) => setOutWords(item, units)).join('; '), { letters })}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** "20 mL acid 1 of 3"; what it is of is said where the label does not. */
function setOutWords({ label, amount }: SetOut, units: Units): string {
  const of = label.includes(amount.of) ? '' : ` (${amount.of})`
  return `${showDose(amount, units)} ${label}${of}`
}

type ActsProps = { records: readonly BatchRecord[]; day: string; units: Units; level: Level }

function DayActs({ records, day, units, level }: ActsProps): preact.JSX.Element {
  const all = actsOfDay(records, dayBounds(day), units, level.gather)
  const wanted = all.filter((line) => level.done || line.done === null)
  const shown = wanted.slice(0, level.acts)
  const over = all.length - wanted.length
  return (
    <ul class="print-acts">
      {shown.map((line) => (
        <li key={line.key}>
          <Act line={line} letters={level.letters} />
        </li>
      ))}
      {shown.length < wanted.length ? (
        <li class="print-left">{`and ${wanted.length - shown.length} more acts: see the Stove`}</li>
      ) : null}
      {over > 0 ? <li class="print-left">{`${over} acts are done already: see the records`}</li> : null}
    </ul>
  )
}

function Act({ line, letters }: { line: DayLine; letters: number }): preact.JSX.Element {
  return (
    <>
      <span class="print-act-time">{line.time}</span>
      <strong class="print-act-pot">{line.letter}</strong>
      <span>{cutWords(line.words, { letters })}</span>
      {line.done === null ? (
        <span class="print-tick" role="img" aria-label="not done yet" />
      ) : (
        <span class="print-act-done">{`✓ ${line.done}`}</span>
      )}
    </>
  )
}
