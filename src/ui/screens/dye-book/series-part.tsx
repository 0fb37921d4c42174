// Of a batch that dyed a series: its tabs, and the skeins that were judged by it. Which those are lies with the skeins.
import { useEffect, useState } from 'preact/hooks'
import { showNumber } from '../../../core/quantity/index.ts'
import type { BatchRecord } from '../../../core/record/record.ts'
import { seriesTabs } from '../../../core/record/series.ts'
import { foundSay, judgedBy } from '../../../core/record/skein-verdict.ts'
import type { Judgement } from '../../../core/record/swatch.ts'
import type { BookLine, Kitchen } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import { whenSay } from '../../parts/swatch-words.ts'
import { readJudgements } from './use-judgements.ts'

type Props = { kitchen: Kitchen; record: BatchRecord }

export function SeriesPart({ kitchen, record }: Props): preact.JSX.Element | null {
  const tabs = seriesTabs(record)
  if (tabs.length === 0 || !kitchen.swatches) return null
  const { potId } = record.identity
  return (
    <section class="book-part" aria-labelledby="book-series">
      <h2 id="book-series">A series</h2>
      <table class="book-table">
        <thead>
          <tr>
            <th scope="col">Tab</th>
            <th scope="col">Dyed</th>
            <th scope="col">Left in the jar</th>
          </tr>
        </thead>
        <tbody>
          {tabs.map(({ jar, depthPercent, of, left }) => (
            <tr key={jar}>
              <th scope="row">{jar}</th>
              <td>
                {depthPercent === null ? `strength not known, ${of}` : `${showNumber(depthPercent, 3)} % owf, ${of}`}
              </td>
              <td>{left ?? 'not judged'}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <Judged kitchen={kitchen} potId={potId} />
      <div class="book-acts">
        <Pad onPress={() => kitchen.go(`#/swatches/series/${encodeURIComponent(potId)}`)}>Judge a skein by it</Pad>
      </div>
    </section>
  )
}

type Read = { judged: Judgement[]; names: ReadonlyMap<string, string>; problem: string | null }

function Judged({ kitchen, potId }: { kitchen: Kitchen; potId: string }): preact.JSX.Element | null {
  const [read, setRead] = useState<Read | null>(null)
  useEffect(() => {
    let here = true
    readJudged(kitchen, potId).then((found) => here && setRead(found))
    return () => {
      here = false
    }
  }, [kitchen, potId])
  if (read === null) return null
  const { judged, names, problem } = read
  return (
    <>
      {problem === null ? null : <p role="alert">{problem}</p>}
      {judged.length === 0 ? (
        <p class="soft">No skein was judged by it yet.</p>
      ) : (
        <ul class="book-lineage" aria-label="Judged by this series">
          {judged.map((one) => (
            <li key={one.key}>
              {`${whenSay(one)}: `}
              {one.found.batchId === null ? (
                'a skein of no batch'
              ) : (
                <a href={`#/dye-book/${encodeURIComponent(one.found.batchId)}`}>
                  {names.get(one.found.batchId) ?? 'a batch that is not in this book'}
                </a>
              )}
              {`. ${foundSay(one)}.`}
            </li>
          ))}
        </ul>
      )}
    </>
  )
}

async function readJudged(kitchen: Kitchen, potId: string): Promise<Read> {
  const { judgements, problem } = await readJudgements(kitchen, null)
  const judged = judgedBy(judgements, potId)
  // Without the book's lines the skeins are told all the same, only not by name.
  const lines = judged.length === 0 ? [] : await kitchen.book(0, Number.MAX_SAFE_INTEGER).catch((): BookLine[] => [])
  return { judged, names: new Map(lines.map((line) => [line.potId, line.batchName])), problem }
}
