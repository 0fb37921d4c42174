// The answer: its figures where they stay in sight, and under the form all that belongs to them.
import { useState } from 'preact/hooks'
import { about } from '../../../core/chemistry/index.ts'
import { closingLine } from '../../../core/safety/caution.ts'
import type { Kitchen } from '../../kitchen.ts'
import { CautionBox } from '../../parts/caution-box.tsx'
import { Pad } from '../../parts/pad.tsx'
import { ByHand } from '../../parts/share-text.tsx'
import { asText } from './as-text.ts'
import type { Typed } from './field.ts'
import { type Answer, uncapital } from './reading.ts'
import type { Result, Sum, Table } from './sum.ts'

/** The rest of a long series stands in its table: the form must stay in sight as well. */
const FIGURES_MOST = 4

export function Head({ answer }: { answer: Answer }): preact.JSX.Element {
  return (
    <div role="status" class="sum-head" data-kind={answer.kind}>
      {answer.kind === 'worked' ? <Figures {...answer.result} /> : <p>{notYet(answer)}</p>}
    </div>
  )
}

function Figures({ figures, alike, doubt }: Result): preact.JSX.Element {
  return (
    <>
      <dl class="sum-figures" data-alike={alike ? '' : undefined}>
        {figures.slice(0, FIGURES_MOST).map(({ what, figure, also }, i) => (
          <div key={i}>
            <dt>{what}</dt>
            <dd>
              {figure}
              {also ? <span class="sum-also"> ({also})</span> : null}
            </dd>
          </div>
        ))}
      </dl>
      {doubt ? <p class="sum-doubt">{doubt}</p> : null}
    </>
  )
}

function notYet(answer: Exclude<Answer, { kind: 'worked' }>): string {
  return answer.kind === 'wanted'
    ? `Still wanted: ${inWords(answer.missing)}.`
    : `Not worked out yet. Look at: ${inWords(answer.labels)}.`
}

/** A long form is not read out whole. */
function inWords(labels: readonly string[]): string {
  const most = 3
  const shown = labels.slice(0, most).map(uncapital)
  return shown.join(', ') + (labels.length > most ? ` and ${labels.length - most} more` : '')
}

type RestProps = { kitchen: Pick<Kitchen, 'sharing'>; sum: Sum; typed: Typed; answer: Answer }

export function Rest({ kitchen, sum, typed, answer }: RestProps): preact.JSX.Element {
  return (
    <div class="sum-rest">
      {answer.kind === 'worked' ? <Told result={answer.result} /> : null}
      <How sum={sum} put={answer.kind === 'worked' ? answer.result.put : []} />
      {answer.kind === 'worked' ? (
        <Copy kitchen={kitchen} title={sum.title} text={asText(sum, typed, answer.result)} />
      ) : null}
    </div>
  )
}

function Told({ result }: { result: Result }): preact.JSX.Element {
  const { say = [], table, cautions = [] } = result
  return (
    <>
      {cautions.map((each) => (
        <CautionBox key={each.id} title={each.title} say={each.say} source={each.source} />
      ))}
      {cautions.length > 0 ? <p class="sum-closing">{closingLine}</p> : null}
      {say.map((each, i) => (
        <p key={i}>{each}</p>
      ))}
      {table ? <TableOf {...table} /> : null}
    </>
  )
}

function TableOf({ caption, head, rows }: Table): preact.JSX.Element {
  return (
    <div class="sum-table">
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            {head.map((each, i) => (
              <th key={i} scope="col">
                {each}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((cells, i) => (
            <tr key={i}>
              {cells.map((cell, at) => (
                <td key={at}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

/** Formula and source, and with an answer the numbers put in. */
function How({ sum, put }: { sum: Sum; put: readonly string[] }): preact.JSX.Element {
  const lines = sum.uses.flatMap((name) => about[name].formula.split('\n'))
  const sources = [...new Set(sum.uses.map((name) => about[name].source))]
  return (
    <details class="sum-how">
      <summary>How this is worked out</summary>
      <ul>
        {[...new Set(lines)].map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {put.length > 0 ? (
        <>
          <h2>With your numbers</h2>
          <ul>
            {put.map((line, i) => (
              <li key={i}>{line}</li>
            ))}
          </ul>
        </>
      ) : null}
      <p class="sum-source">Source: {sources.join('; ')}.</p>
    </details>
  )
}

type CopyProps = { kitchen: Pick<Kitchen, 'sharing'>; title: string; text: string }

function Copy({ kitchen, title, text }: CopyProps): preact.JSX.Element {
  /** What was last tried, and how it went: another answer is not copied yet. */
  const [tried, setTried] = useState<{ text: string; done: boolean } | null>(null)
  const copy = async (): Promise<void> => {
    const done = (await kitchen.sharing.value?.copy(text)) ?? false
    setTried({ text, done })
  }
  const now = tried?.text === text ? tried : null
  return (
    <div class="sum-copy">
      <Pad onPress={() => void copy()}>Copy the result</Pad>
      <p role="status">
        {now === null
          ? ''
          : now.done
            ? 'Copied.'
            : 'Not copied: the browser refused it. The text is below, chosen: copy it by hand.'}
      </p>
      {now && !now.done ? <ByHand title={title} text={text} /> : null}
    </div>
  )
}
