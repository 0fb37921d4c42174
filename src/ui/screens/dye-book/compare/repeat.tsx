// How well a set of batches repeats, step by step.
import { useMemo } from 'preact/hooks'
import { showDose, showDuration, type Units } from '../../../../core/quantity/index.ts'
import type { BatchRecord } from '../../../../core/record/record.ts'
import { repeatability, type StepSpread } from '../../../../core/record/repeatability.ts'
import type { Spread } from '../../../../core/record/spread.ts'
import type { Kitchen } from '../../../kitchen.ts'
import { Pad } from '../../../parts/pad.tsx'
import { Page } from '../../../parts/page.tsx'
import { unitsOf } from '../../../parts/units-of.ts'
import { Scroll } from './scroll.tsx'
import { unreadWords, useRecords } from './use-records.ts'
import './style.css'

export function RepeatPage({ kitchen, potIds }: { kitchen: Kitchen; potIds: string[] }): preact.JSX.Element {
  const units = unitsOf(kitchen.settings.value)
  const read = useRecords(kitchen, potIds, units)
  return (
    <div class="book-wide">
      <Page title="How well they repeat" actions={<Pad onPress={() => kitchen.go('#/dye-book')}>All records</Pad>}>
        {read === null ? <p>Opening the records.</p> : null}
        {read && read.unread > 0 ? <p role="alert">{unreadWords(read.unread)}</p> : null}
        {read && read.records.length < 2 ? <p>Choose two batches or more in the Dye book.</p> : null}
        {read && read.records.length >= 2 ? <Repeated records={read.records} units={units} /> : null}
      </Page>
    </div>
  )
}

function Repeated({ records, units }: { records: readonly BatchRecord[]; units: Units }): preact.JSX.Element {
  const { batches, sameText, steps, tookMs } = useMemo(() => repeatability(records), [records])
  const usual = steps.filter((step) => step.usuallyLate)
  return (
    <>
      <p>
        {`${batches} batches${sameText ? ' of the same protocol, word for word' : ' of different texts: steps meet by their names'}.`}
        {tookMs ? ` In all: ${spreadWords(tookMs, showDuration)}.` : ''}
      </p>
      <section class="book-part" aria-labelledby="repeat-late">
        <h2 id="repeat-late">Usually late</h2>
        {usual.length === 0 ? (
          <p>{batches < 3 ? 'Two batches are too few to say.' : 'No step is late in more than half of them.'}</p>
        ) : (
          <ul class="book-late">
            {usual.map(({ key, label, lateIn, done, lateMs }) => (
              <li
                key={key}
              >{`${label}: late in ${lateIn} of ${done}, by ${showDuration(lateMs?.most ?? 0)} at most.`}</li>
            ))}
          </ul>
        )}
      </section>
      <div class="book-part">
        <h2 id="repeat-steps">Step by step</h2>
        <Scroll label="repeat-steps">
          <table class="book-table">
            <thead>
              <tr>
                <th scope="col">Step</th>
                <th scope="col">Took</th>
                <th scope="col">Late</th>
                <th scope="col">Added</th>
              </tr>
            </thead>
            <tbody>
              {steps.map((step) => (
                <StepRow key={step.key} step={step} batches={batches} units={units} />
              ))}
            </tbody>
          </table>
        </Scroll>
        <p class="soft">The middle one, then the least and the most. Lateness counts those on time as none.</p>
      </div>
    </>
  )
}

function StepRow({ step, batches, units }: { step: StepSpread; batches: number; units: Units }): preact.JSX.Element {
  const { label, done, tookMs, lateMs, lateIn, added } = step
  return (
    <tr>
      <th scope="row">
        {label}
        {done === batches ? null : <span class="soft">{`in ${done} of ${batches}`}</span>}
      </th>
      <td>{tookMs ? spreadWords(tookMs, showDuration) : '–'}</td>
      <td>{lateMs && lateIn > 0 ? `${lateIn} of ${done}: ${spreadWords(lateMs, showDuration)}` : 'never'}</td>
      <td>
        {added ? spreadWords(added, (value) => showDose({ value, unit: added.unit }, units)) : '–'}
        {added ? <span class="soft">{added.of}</span> : null}
      </td>
    </tr>
  )
}

function spreadWords({ least, median, most }: Spread, show: (value: number) => string): string {
  return show(least) === show(most) ? show(median) : `${show(median)} (${show(least)} to ${show(most)})`
}
