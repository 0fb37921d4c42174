// What stands behind a record: the start, the cautions, corrections, what was undone, every step and every entry.

import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { showDose, showMass, type Units } from '../../../core/quantity/index.ts'
import { fieldWords } from '../../../core/record/event-words.ts'
import { localClock } from '../../../core/record/local-time.ts'
import type { BatchRecord } from '../../../core/record/record.ts'
import { general, rules } from '../../../core/safety/rules.ts'
import type { Kitchen } from '../../kitchen.ts'
import { ShareText } from '../../parts/share-text.tsx'
import { NumbersKept } from './numbers-kept.tsx'
import { Listed, When } from './tables.tsx'

type Props = { kitchen: Kitchen; record: BatchRecord; units: Units }

export function Papers({ kitchen, record, units }: Props): preact.JSX.Element {
  const corrections = record.corrections.map((correction) => ({
    said: correction.said,
    words: `${correction.what} Corrected ${fieldWords(correction.field)}: ${correction.was || 'nothing'} becomes ${correction.now || 'nothing'}. ${correction.why}${correction.applied ? '' : ' (could not be said anew)'}`
  }))
  const undone = record.withdrawn.map((withdrawn) => ({ said: withdrawn.said, words: withdrawn.what }))
  return (
    <>
      <Listed id="book-corrections" title="Corrections" lines={corrections} none={null} />
      <Listed id="book-undone" title="Undone" lines={undone} none={null} />
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
  const { skeins } = record.substrate
  const { inputs, setOut } = record.programme
  return (
    <section class="book-part" aria-labelledby="book-goods">
      <h2 id="book-goods">Given at the start</h2>
      <dl class="book-facts">
        <div>
          <dt>Skeins</dt>
          <dd>{skeins.map((skein) => `${skein.tag} ${showMass(skein.massG, units)}`).join(', ')}</dd>
        </div>
        <div>
          <dt>Burner</dt>
          <dd>{record.identity.burner}</dd>
        </div>
        {inputs.map((input) => (
          <div key={input.id}>
            <dt>{input.label}</dt>
            <dd>{input.shown}</dd>
          </div>
        ))}
        {setOut.map((item) => (
          <div key={item.id}>
            <dt>{item.label}</dt>
            <dd>
              {`${showDose(item.amount, units)} of ${item.amount.of}`}
              {item.sum === '' ? null : <span class="soft">{item.sum}</span>}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  )
}

function BeforeTheHeat({ record }: { record: BatchRecord }): preact.JSX.Element {
  const titles = new Map([...rules, ...general].map((caution) => [caution.id, caution.title]))
  const shown = [
    ...new Set(record.cautions.map((caution) => titles.get(caution.id) ?? caution.id.replace(/^own: /, '')))
  ]
  return (
    <section class="book-part" aria-labelledby="book-before">
      <h2 id="book-before">Before the heat</h2>
      <ul>
        {record.checks.map((check) => (
          <li key={check.what}>{`${check.ok ? 'Ready' : 'Not ready'}: ${check.say}`}</li>
        ))}
        {record.checks.length === 0 ? <li>No checks were made.</li> : null}
      </ul>
      <p>{shown.length === 0 ? 'No caution was shown.' : `Cautions shown: ${shown.join(', ')}.`}</p>
    </section>
  )
}
