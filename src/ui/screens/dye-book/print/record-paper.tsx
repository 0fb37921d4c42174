// A batch record on one to three pages: what it was, planned and done, then all of it in tables. What does not fit is
// said to be left out; the file has it.
import { useMemo, useRef } from 'preact/hooks'
import type { Units } from '../../../../core/quantity/index.ts'
import { batchCode } from '../../../../core/record/batch-code.ts'
import { cutWords, type Room, rooms } from '../../../../core/record/condensed.ts'
import { localClock } from '../../../../core/record/local-time.ts'
import { planOf } from '../../../../core/record/plan.ts'
import type { BatchRecord, StepRecord } from '../../../../core/record/record.ts'
import type { Judgement } from '../../../../core/record/swatch.ts'
import type { Kitchen } from '../../../kitchen.ts'
import { LyingStrand } from '../../../parts/lying-strand.tsx'
import { Qr } from '../../../parts/qr.tsx'
import { recordItems } from '../../../parts/strand-items.ts'
import {
  cautionLine,
  checkLines,
  correctionLines,
  givenFacts,
  headFacts,
  judgedLines,
  noteLines,
  otherwiseLines,
  readingLines,
  statusLine,
  undoneLines
} from '../record-words.ts'
import { AmountRow } from '../tables.tsx'
import { MM, Paper, type PaperSize, pageHeight } from './paper.tsx'
import { Photos } from './photos.tsx'
import { Rows, SaidRows } from './rows.tsx'
import { SkeinRows } from './skein-rows.tsx'
import { useFitted } from './use-fitted.ts'

const PAGES_MOST = 3
/** What a page may lose at its end beside the row that did not fit: the head of its table again, and a title kept with it. */
const LOST_MM = 16

/** Does it print on three pages at most, wherever they break? What is kept whole may move to the next page as one. */
function fitsPages(body: HTMLElement, size: PaperSize): boolean {
  const page = pageHeight(size)
  // The head and the strand stand at the top of the first page, where nothing breaks.
  const whole = [...body.querySelectorAll<HTMLElement>('tr, .print-facts > div, .print-photos > li, .print-end')]
  const tallest = Math.max(0, ...whole.map((each) => each.offsetHeight))
  const lost = (PAGES_MOST - 1) * (tallest + LOST_MM * MM)
  return body.offsetHeight <= page || (tallest < page / 2 && body.offsetHeight + lost <= PAGES_MOST * page)
}

type Props = {
  kitchen: Kitchen
  record: BatchRecord
  judgements: readonly Judgement[]
  units: Units
  size: PaperSize
  /** Is a photo still being opened? */
  opening: (still: boolean) => void
}

export function RecordPaper({ kitchen, record, judgements, units, size, opening }: Props): preact.JSX.Element {
  const body = useRef<HTMLDivElement>(null)
  const { potId, colourway } = record.identity
  const drawn = `${potId} ${record.journal.length} ${judgements.length} ${size} ${JSON.stringify(units)}`
  const room = rooms[useFitted(body, drawn, rooms.length, (node) => fitsPages(node, size))] as Room
  return (
    <Paper kind="sheet" size={size} label={`Record of ${colourway}, as it prints`} body={body}>
      <Head record={record} units={units} room={room} />
      <Strand record={record} />
      <SkeinRows judgements={judgements} room={room} />
      <Given record={record} units={units} room={room} />
      <Rows
        title="Amounts"
        what="amounts"
        look="amounts"
        heads={['What', 'Planned', 'Added', 'When']}
        all={record.amounts}
        room={room}
        row={(amount) => (
          <AmountRow key={`${amount.path} ${amount.fate} ${amount.said?.entry.seq}`} amount={amount} units={units} />
        )}
      />
      <SaidRows title="Otherwise than planned" what="deviations" lines={otherwiseLines(record)} room={room} />
      <SaidRows title="Readings" what="readings" lines={readingLines(record)} room={room} />
      <SaidRows title="Judged" what="judgements" lines={judgedLines(record)} room={room} />
      <Photos kitchen={kitchen} record={record} room={room} opening={opening} />
      <SaidRows title="Notes" what="notes" lines={noteLines(record)} room={room} />
      <SaidRows title="Corrections" what="corrections" lines={correctionLines(record)} room={room} />
      <SaidRows title="Undone" what="undone acts" lines={undoneLines(record)} room={room} />
      <Steps record={record} room={room} />
      <End record={record} room={room} />
    </Paper>
  )
}

function Head({ record, units, room }: { record: BatchRecord; units: Units; room: Room }): preact.JSX.Element {
  const { identity } = record
  const times = [identity.startedAt, identity.endedAt].map((at) => at?.slice(0, 16).replace('T', ' '))
  return (
    <header class="print-head">
      <div>
        <h2>{cutWords(identity.colourway, room)}</h2>
        <p>{cutWords(headFacts(record, units).join(' · '), room)}</p>
        <p>{`Pot ${identity.letter}. Begun ${times[0]}${times[1] ? `, ended ${times[1]}` : ''}.`}</p>
        <p>
          <strong>{cutWords(statusLine(record), room)}</strong>
        </p>
      </div>
      <Qr text={batchCode(identity.potId)} label={`Code of batch ${identity.batchName}`} />
    </header>
  )
}

function Strand({ record }: { record: BatchRecord }): preact.JSX.Element {
  const items = useMemo(() => recordItems(record, planOf(record.programme, record.identity.startedAtMs)), [record])
  return (
    <div class="print-strand">
      <LyingStrand items={items} title="Planned above, done below, in time; the same in words further down." />
    </div>
  )
}

function Given({ record, units, room }: { record: BatchRecord; units: Units; room: Room }): preact.JSX.Element {
  const facts = givenFacts(record, units)
  const shown = facts.slice(0, room.lines)
  return (
    <section>
      <h3>Given at the start</h3>
      <dl class="print-facts">
        {shown.map(({ key, label, value, sum }) => (
          <div key={key}>
            <dt>{cutWords(label, room)}</dt>
            <dd>
              {cutWords(value, room)}
              {sum === '' ? null : <span class="soft">{cutWords(sum, room)}</span>}
            </dd>
          </div>
        ))}
      </dl>
      {shown.length < facts.length ? (
        <p class="print-left">{`and ${facts.length - shown.length} more: see the file`}</p>
      ) : null}
    </section>
  )
}

function Steps({ record, room }: { record: BatchRecord; room: Room }): preact.JSX.Element {
  return (
    <Rows
      title="Every step"
      what="steps"
      look="dense"
      heads={['Planned', 'Done', 'Step']}
      all={record.steps}
      room={room}
      row={(step: StepRecord) => (
        <tr key={`${step.path} ${step.startMs}`}>
          <td class="print-narrow">{clock(step.planned?.endMs ?? null, step, 'not planned')}</td>
          <td class="print-narrow">{clock(step.endMs, step, 'open')}</td>
          <td>{cutWords(step.sentence, room)}</td>
        </tr>
      )}
    />
  )
}

function clock(atMs: number | null, { said }: StepRecord, none: string): string {
  return atMs === null ? none : localClock(atMs, said.tzOffsetMin)
}

function End({ record, room }: { record: BatchRecord; room: Room }): preact.JSX.Element {
  const { journal, identity, damaged } = record
  const lines = [
    `Before the heat: ${checkLines(record).join('; ')}`,
    cautionLine(record),
    ...(damaged.length > 0 ? [`${damaged.length} damaged entries could not be read.`] : []),
    `${journal.length} entries in all; the file of the record has every one. Code: ${batchCode(identity.potId)}`,
    'Kept in the manner of a batch record. It certifies nothing.'
  ]
  return (
    <footer class="print-end">
      {lines.map((line) => (
        <p key={line}>{cutWords(line, { letters: Math.max(room.letters, 200) })}</p>
      ))}
    </footer>
  )
}
