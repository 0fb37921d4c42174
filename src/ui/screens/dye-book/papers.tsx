// What stands behind a record: the start, the cautions, corrections, what was undone, every step and every entry.

import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import type { Units } from '../../../core/quantity/index.ts'
import { localClock } from '../../../core/record/local-time.ts'
import type { BatchRecord } from '../../../core/record/record.ts'
import type { Kitchen } from '../../kitchen.ts'
import { ShareText } from '../../parts/share-text.tsx'
import { NumbersKept } from './numbers-kept.tsx'
import { cautionLine, checkLines, correctionLines, givenFacts, undoneLines } from './record-words.ts'
import { Listed, When } from './tables.tsx'

type Props = { kitchen: Kitchen; record: BatchRecord; units: Units }

export function Papers({ kitchen, record, units }: Props): preact.JSX.Element {
  return (
    <>
      <Listed id="book-corrections" title="Corrections" lines={correctionLines(record)} none={null} />
      <Listed id="book-undone" title="Undone" lines={undoneLines(record)} none={null} />
      <Goods record={record} units={units} />
      {record.numbers ? <NumbersKept numbers={record.numbers} units={units} /> : null}
      <BeforeTheHeat record={record} />
      <div>
        <Opened summary="Every step in words">
          <ol class="book-said">
            {record.steps.map((step) => (
              <li key={`${step.path} ${step.startMs}`}>
                <span class="book-when">
                  {step.planned ? `${localClock(step.planned.endMs, step.said.tzOffsetMin)} planned` : 'not planned'}
                  <br />
                  {step.endMs === null ? 'open' : `${localClock(step.endMs, step.said.tzOffsetMin)} done`}
                </span>
                <span>{step.sentence}</span>
              </li>
            ))}
          </ol>
        </Opened>
        <Opened summary="Every entry">
          <ul class="book-said">
            {record.journal.map((line) => (
              <li key={`${line.said.entry.writerId} ${line.said.entry.seq}`}>
                <When said={line.said} />
                <span>
                  {line.withdrawn ? <s>{line.words}</s> : line.words}
                  {line.withdrawn ? ' (undone)' : ''}
                  {line.corrected ? ' (corrected)' : ''}
                </span>
              </li>
            ))}
          </ul>
        </Opened>
        <Opened summary="The protocol it ran by, as it was">
          <p class="book-ran">{`${record.protocol.title}, version ${record.protocol.version}`}</p>
          <ShareText kitchen={kitchen} title={record.protocol.title} text={record.protocol.text} />
          <pre class="book-text">{record.protocol.text}</pre>
        </Opened>
      </div>
    </>
  )
}

/** Long papers are written out only when they are opened. */
function Opened({ summary, children }: { summary: string; children: ComponentChildren }): preact.JSX.Element {
  const [open, setOpen] = useState(false)
  return (
    <details class="book-more" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{summary}</summary>
      {open ? children : null}
    </details>
  )
}

function Goods({ record, units }: { record: BatchRecord; units: Units }): preact.JSX.Element {
  return (
    <section class="book-part" aria-labelledby="book-goods">
      <h2 id="book-goods">Given at the start</h2>
      <dl class="book-facts">
        {givenFacts(record, units).map(({ key, label, value, sum }) => (
          <div key={key}>
            <dt>{label}</dt>
            <dd>
              {value}
              {sum === '' ? null : <span class="soft">{sum}</span>}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  )
}

function BeforeTheHeat({ record }: { record: BatchRecord }): preact.JSX.Element {
  return (
    <section class="book-part" aria-labelledby="book-before">
      <h2 id="book-before">Before the heat</h2>
      <ul>
        {checkLines(record).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <p>{cautionLine(record)}</p>
    </section>
  )
}
