// Two to eight batches side by side, differences first.
import { useMemo } from 'preact/hooks'
import type { Units } from '../../../../core/quantity/index.ts'
import { COMPARE_LEAST, COMPARE_MOST, type CompareRow, compareRecords } from '../../../../core/record/compare.ts'
import type { BatchRecord } from '../../../../core/record/record.ts'
import { latestByBatch } from '../../../../core/record/skein-verdict.ts'
import type { Judgement } from '../../../../core/record/swatch.ts'
import type { Kitchen } from '../../../kitchen.ts'
import { Pad } from '../../../parts/pad.tsx'
import { Page } from '../../../parts/page.tsx'
import { unitsOf } from '../../../parts/units-of.ts'
import { useJudgements } from '../use-judgements.ts'
import { Aligned } from './aligned.tsx'
import { repeatRoute } from './routes.ts'
import { Scroll } from './scroll.tsx'
import { unreadWords, useRecords } from './use-records.ts'
import './style.css'

export function ComparePage({ kitchen, potIds }: { kitchen: Kitchen; potIds: string[] }): preact.JSX.Element {
  const units = unitsOf(kitchen.settings.value)
  const chosen = potIds.slice(0, COMPARE_MOST)
  const read = useRecords(kitchen, chosen, units)
  const skeins = useJudgements(kitchen, chosen)
  const actions = (
    <>
      <Pad onPress={() => kitchen.go('#/dye-book')}>All records</Pad>
      <Pad onPress={() => kitchen.go(repeatRoute(potIds))}>How well they repeat</Pad>
    </>
  )
  return (
    <div class="book-wide">
      <Page title="Side by side" actions={actions}>
        {read === null ? <p>Opening the records.</p> : null}
        {read && read.unread > 0 ? <p role="alert">{unreadWords(read.unread)}</p> : null}
        {potIds.length > COMPARE_MOST ? <p>{`The first ${COMPARE_MOST} are shown.`}</p> : null}
        {read && read.records.length < COMPARE_LEAST ? <p>Choose two to eight batches in the Dye book.</p> : null}
        {skeins?.problem ? <p role="alert">{skeins.problem}</p> : null}
        {read && skeins && read.records.length >= COMPARE_LEAST ? (
          <Compared records={read.records} judgements={skeins.judgements} units={units} />
        ) : null}
      </Page>
    </div>
  )
}

type ComparedProps = { records: readonly BatchRecord[]; judgements: readonly Judgement[]; units: Units }

function Compared({ records, judgements, units }: ComparedProps): preact.JSX.Element {
  const compared = useMemo(() => compareRecords(records, units, latestByBatch(judgements)), [records, judgements])
  const { startDiffers } = compared
  return (
    <>
      <section class="book-part" aria-labelledby="compare-start">
        <h2 id="compare-start">Were the starting conditions the same?</h2>
        <p class="compare-answer">{startDiffers.length === 0 ? 'Yes.' : 'No. These differed:'}</p>
        {startDiffers.length === 0 ? null : (
          <ul>
            {startDiffers.map((row) => (
              <li key={row.key}>{row.label}</li>
            ))}
          </ul>
        )}
      </section>
      <Rows title="What differed" compared={compared} records={records} same={false} />
      <Aligned records={records} />
      <details class="book-more">
        <summary>What was the same</summary>
        <Rows title="The same in all" compared={compared} records={records} same />
      </details>
    </>
  )
}

type RowsProps = {
  title: string
  compared: { start: CompareRow[]; steps: CompareRow[]; result: CompareRow[] }
  records: readonly BatchRecord[]
  same: boolean
}

function Rows({ title, compared, records, same }: RowsProps): preact.JSX.Element {
  const parts = [
    { name: 'At the start', rows: compared.start },
    { name: 'Step by step', rows: compared.steps },
    { name: 'What came of it', rows: compared.result }
  ].map(({ name, rows }) => ({ name, rows: rows.filter((row) => row.same === same) }))
  const none = parts.every(({ rows }) => rows.length === 0)
  const id = same ? 'compare-same' : 'compare-differs'
  return (
    <div class="book-part">
      <h2 id={id}>{title}</h2>
      {none ? (
        <p>{same ? 'Nothing.' : 'Nothing differed.'}</p>
      ) : (
        <Scroll label={id}>
          <table class="book-table compare-table">
            <thead>
              <tr>
                <td />
                {records.map(({ identity }, i) => (
                  <th key={identity.potId} scope="col">
                    <a href={`#/dye-book/${encodeURIComponent(identity.potId)}`}>{`${i + 1}. ${identity.batchName}`}</a>
                  </th>
                ))}
              </tr>
            </thead>
            {parts.map(({ name, rows }) =>
              rows.length === 0 ? null : (
                <tbody key={name}>
                  <tr>
                    <th class="compare-part" scope="rowgroup" colSpan={records.length + 1}>
                      {name}
                    </th>
                  </tr>
                  {rows.map((row) => (
                    <tr key={row.key}>
                      <th scope="row">{row.label}</th>
                      {row.values.map((value, i) => (
                        <td key={records[i]?.identity.potId}>{value}</td>
                      ))}
                    </tr>
                  ))}
                </tbody>
              )
            )}
          </table>
        </Scroll>
      )}
    </div>
  )
}
