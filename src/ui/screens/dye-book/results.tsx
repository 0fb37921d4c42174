// What came of the batch: what holds of each result, when it was found, and the way to tell or correct one.
import { useState } from 'preact/hooks'
import type { Entry } from '../../../core/pot/entry.ts'
import type { PotEvent } from '../../../core/pot/events.ts'
import { showDuration } from '../../../core/quantity/index.ts'
import { keyOf } from '../../../core/record/corrected.ts'
import type { BatchRecord, ResultRecord } from '../../../core/record/record.ts'
import { latestResults } from '../../../core/record/results.ts'
import type { Kitchen } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import { CorrectSheet } from './correct.tsx'
import { ResultSheet } from './result-sheet.tsx'
import './results.css'

type Props = {
  kitchen: Kitchen
  potId: string
  record: BatchRecord
  entries: readonly Entry<PotEvent>[]
  changed: () => void
}

/** An answer given this soon after the end was found at the end. */
const AT_END_MS = 60_000

export function Results({ kitchen, potId, record, entries, changed }: Props): preact.JSX.Element {
  const [open, setOpen] = useState<{ correct: string } | 'tell' | null>(null)
  const closed = (acted: boolean): void => {
    setOpen(null)
    if (acted) changed()
  }
  const latest = latestResults(record.results)
  const earlier = record.results.filter((result) => !latest.includes(result))
  return (
    <section class="book-part" aria-labelledby="book-results">
      <h2 id="book-results">Results</h2>
      {latest.length === 0 ? <p class="soft">None yet. They can be written whenever they can be seen.</p> : null}
      <dl class="book-results">
        {latest.map((result) => (
          <div key={`${result.own} ${result.what}`}>
            <dt>{result.label}</dt>
            <dd>
              <strong>{result.words}</strong>
              <span class="soft">{foundWords(result)}</span>
              {earlierOf(result, earlier)}
            </dd>
            <Pad label={`Correct ${result.label}`} onPress={() => setOpen({ correct: slotKey(result) })}>
              Correct
            </Pad>
          </div>
        ))}
      </dl>
      <div class="book-acts">
        <Pad onPress={() => setOpen('tell')}>Write a result</Pad>
      </div>
      {open === 'tell' ? <ResultSheet kitchen={kitchen} potId={potId} times={record.identity} close={closed} /> : null}
      {open !== null && open !== 'tell' ? (
        <CorrectSheet
          kitchen={kitchen}
          potId={potId}
          record={record}
          entries={entries}
          chosen={open.correct}
          close={closed}
        />
      ) : null}
    </section>
  )
}

function slotKey({ said, value }: ResultRecord): string {
  return `${keyOf(said.entry)} ${value.kind === 'number' ? 'value.value' : 'value.text'}`
}

/** "2031-06-15 08:30, 14 h after the end; written 2 h later" */
function foundWords({ said, afterEndMs }: ResultRecord): string {
  const at = said.at.slice(0, 16).replace('T', ' ')
  const after = afterEndMs === null || afterEndMs < AT_END_MS ? '' : `, ${showDuration(afterEndMs)} after the end`
  const late = said.writtenLateMs === null ? '' : `; late entry, written ${showDuration(said.writtenLateMs)} later`
  return `${at}${after}${late}`
}

function earlierOf(result: ResultRecord, earlier: readonly ResultRecord[]): preact.JSX.Element | null {
  const before = earlier.filter(({ own, what }) => own === result.own && what === result.what)
  return before.length === 0 ? null : (
    <span class="soft">{`before: ${before.map(({ words }) => words).join(', ')}`}</span>
  )
}
